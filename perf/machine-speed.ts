import { blueprints } from '../src/blueprint/library.ts'
import { suspectSets } from '../src/engines/belief/index.ts'
import { electricalStates } from '../src/machine/electrical-state.ts'
import { meterTable } from '../src/machine/meter-table.ts'
import { machineView } from '../src/machine/index.ts'
import type { Job } from '../src/machine/job.ts'

const repeats = 5
const readingsBarMs = 100

const timeMs = (work: () => void): number => {
  const start = performance.now()
  work()
  return performance.now() - start
}

const best = (work: () => void): number => Math.min(...Array.from({ length: repeats }, () => timeMs(work)))

/** Full readings table of each blueprint (all single and double faults × all meter checks) against its bar, and a whole view. */
export const run = (): { name: string; ours: number; theirs: number; ratio: number }[] =>
  blueprints.flatMap((blueprint) => {
    const sets = suspectSets(blueprint.faults, 2)
    const table = best(() => meterTable(blueprint, blueprint.plate, electricalStates(blueprint, sets).states))
    const job: Job = {
      blueprint,
      plate: blueprint.plate,
      complaints: ['dead'],
      missing: [],
      events: [],
      off: [],
      hourMinor: 800,
    }
    const first = timeMs(() => machineView(job))
    const again = best(() => machineView(job))
    const size = `${sets.length} suspects × ${blueprint.checks.filter((c) => c.kind === 'meter').length} meter checks`
    return [
      {
        name: `readings table of ${blueprint.id}, ${size}, against the bar`,
        ours: table,
        theirs: readingsBarMs,
        ratio: readingsBarMs / table,
      },
      {
        name: `view of ${blueprint.id} after a change, against its first view`,
        ours: again,
        theirs: first,
        ratio: first / again,
      },
    ]
  })
