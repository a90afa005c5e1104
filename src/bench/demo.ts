import { problemText } from '../base/problem.ts'
import type { FindBlueprint } from './blueprints.ts'
import { addMachine, addNote, type CommandDeps, type CommandOutcome } from './commands.ts'
import { demoMachines, type DemoMachine } from './demo-machines.ts'
import { noteContentSchema } from './note.ts'
import type { BenchStores, SettingsStore } from './ports.ts'

/**
 * Fills an empty store with the demonstration: invented machines, each note passed through the same door as any other.
 * Throws when the rules refuse one of its notes, for then the demonstration itself is wrong.
 */
export const fillDemoBench = async (deps: {
  readonly stores: BenchStores
  readonly blueprintById: FindBlueprint
}): Promise<void> => {
  for (const machine of demoMachines) await replay(deps, machine)
}

/** The demonstration is reckoned with the settings that a new bench has. */
const untouched: SettingsStore = {
  changes: () => Promise.resolve([]),
  add: () => Promise.reject(new Error('the demonstration changes no settings')),
}

const replay = async (
  { stores: { notes: store, logs, books }, blueprintById }: Parameters<typeof fillDemoBench>[0],
  machine: DemoMachine,
): Promise<void> => {
  for (const [index, [minutesLater, input]] of machine.notes.entries()) {
    const id = `${machine.id}.${index + 1}`
    const at = new Date(Date.parse(machine.cameInAt) + minutesLater * 60_000).toISOString()
    const deps: CommandDeps = {
      store,
      logs,
      books,
      bench: 'demo',
      blueprintById,
      blueprintIds: () => [],
      settings: untouched,
      now: () => at,
      newId: () => id,
    }
    const content = noteContentSchema.parse(input)
    settled(id, await (index === 0 ? addMachine(deps, content, machine.id) : addNote(deps, machine.id, index, content)))
  }
}

const settled = (id: string, outcome: CommandOutcome): void => {
  if (outcome.kind === 'done') return
  throw new Error(`demonstration, note ${id}: ${outcome.problems.map(problemText).join(' ')}`)
}
