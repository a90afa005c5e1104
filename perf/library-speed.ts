import { blueprints } from '../src/blueprint/library.ts'
import { blueprintSchema, type Blueprint } from '../src/blueprint/schema.ts'
import { suspectSets } from '../src/engines/belief/index.ts'
import { electricalStates } from '../src/machine/electrical-state.ts'
import { meterTable } from '../src/machine/meter-table.ts'

const loadBarMs = 50
const tablesBarMs = 1000

const timed = (work: () => unknown): number => {
  const start = performance.now()
  work()
  return performance.now() - start
}

const tableOf = (blueprint: Blueprint): unknown =>
  meterTable(blueprint, blueprint.plate, electricalStates(blueprint, suspectSets(blueprint.faults, 2)).states)

/** One blueprint of each architecture. */
const architectures = blueprints.filter(({ id }) => !/-(120-v|moulded-plug|earthed)/.test(id))

/**
 * The slowest blueprint to load from its file against JavaScript only reading the file (JSON.parse), and the readings tables
 * of all architectures together, single and double faults, against the time allowed. Throws when a bar is missed.
 */
export const run = () => {
  const files = blueprints.map((blueprint) => JSON.stringify(blueprint))
  const loads = files.map((file) => timed(() => blueprintSchema.parse(JSON.parse(file))))
  const reads = files.map((file) => timed(() => JSON.parse(file)))
  const slowest = Math.max(...loads)
  const tables = Math.min(...[1, 2, 3].map(() => timed(() => architectures.map(tableOf))))
  if (slowest > loadBarMs) throw new Error(`a blueprint took ${slowest.toFixed(0)} ms to load, more than ${loadBarMs}`)
  if (tables > tablesBarMs)
    throw new Error(`the readings tables took ${tables.toFixed(0)} ms, more than ${tablesBarMs}`)
  return [
    {
      name: 'loading the slowest blueprint, against reading its JSON',
      ours: slowest,
      theirs: Math.max(...reads),
      ratio: Math.max(...reads) / slowest,
    },
    {
      name: `readings tables of ${architectures.length} architectures, against the bar`,
      ours: tables,
      theirs: tablesBarMs,
      ratio: tablesBarMs / tables,
    },
  ]
}
