import type { FindBlueprint } from './blueprints.ts'
import { addMachine, addNote, type CommandDeps } from './commands.ts'
import { demoMachines, type DemoMachine } from './demo-machines.ts'
import { fillYear } from './demo/fill-year.ts'
import { settled } from './demo/turns.ts'
import { noteContentSchema } from './note.ts'
import type { BenchStores, SettingsStore } from './ports.ts'

export type DemoDeps = {
  readonly stores: BenchStores
  readonly blueprintById: FindBlueprint
  /** Called between two entries, so that other work gets its turn. */
  readonly pause?: () => Promise<void>
}

/**
 * Fills an empty store with the demonstration: an invented trade of a year, then five machines at different stages, each note passed
 * through the same door as any other. Throws when the rules refuse one of its notes, for then the demonstration itself is wrong.
 */
export const fillDemoBench = async (deps: DemoDeps): Promise<void> => {
  const { blueprintById, pause = () => Promise.resolve() } = deps
  await fillYear((at, newId) => depsAt(deps, at, newId), blueprintById, pause)
  for (const machine of demoMachines) await replay(deps, machine)
}

/** The clock of the demonstration stands on the morning after its last note, so that its books and days to sell always show the same. */
export const demoNow = '2026-03-17T09:00:00.000Z'

/** The demonstration is reckoned with the settings that a new bench has. */
const untouched: SettingsStore = {
  changes: () => Promise.resolve([]),
  add: () => Promise.reject(new Error('the demonstration changes no settings')),
}

const depsAt = (
  { stores: { notes: store, logs, books }, blueprintById }: DemoDeps,
  at: string,
  newId: () => string,
): CommandDeps => ({
  store,
  logs,
  books,
  bench: 'demo',
  blueprintById,
  blueprintIds: () => [],
  settings: untouched,
  now: () => at,
  newId,
})

const replay = async (demo: DemoDeps, machine: DemoMachine): Promise<void> => {
  for (const [index, [minutesLater, input]] of machine.notes.entries()) {
    const id = `${machine.id}.${index + 1}`
    const at = new Date(Date.parse(machine.cameInAt) + minutesLater * 60_000).toISOString()
    const deps = depsAt(demo, at, () => id)
    const content = noteContentSchema.parse(input)
    settled(id, await (index === 0 ? addMachine(deps, content, machine.id) : addNote(deps, machine.id, index, content)))
  }
}
