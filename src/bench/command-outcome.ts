import { problem, type Problem } from '../base/problem.ts'
import { canonical } from './canonical.ts'
import type { MachineDocument } from './contract.ts'
import type { Note, NoteContent } from './note.ts'
import type { AppendOutcome, Clock, Ids, LogWrite, SettingsStore } from './ports.ts'
import { documentOf, noSuchMachine, type QueryDeps } from './queries.ts'

export type CommandDeps = QueryDeps & {
  readonly settings: SettingsStore
  readonly now: Clock
  readonly newId: Ids
  /** Ids of the blueprints there are, to name in a refusal. */
  readonly blueprintIds: () => readonly string[] | Promise<readonly string[]>
}

/** What became of a command. Nothing was written unless it is `done`; the caller keeps what was entered. */
export type CommandOutcome =
  | { readonly kind: 'done'; readonly document: MachineDocument }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'missing'; readonly problems: readonly Problem[] }
  /** Someone else wrote first; the document as it is now comes with it. */
  | { readonly kind: 'conflict'; readonly problems: readonly Problem[]; readonly document: MachineDocument }
  /** The store could not keep it. */
  | { readonly kind: 'not-kept'; readonly problems: readonly Problem[] }

/** The machine as it is: the answer to what was sent before. */
export const documentNow = async (deps: CommandDeps, notes: readonly Note[]): Promise<CommandOutcome> => ({
  kind: 'done',
  document: await documentOf(notes, deps.blueprintById),
})

/** Writes to a machine and the shelf, all or nothing; answers with the machine. */
export const settledTogether = async (
  deps: CommandDeps,
  machine: string,
  notes: readonly Note[],
  writes: readonly LogWrite[],
): Promise<CommandOutcome> => {
  const outcome = await deps.logs.write(deps.bench, writes)
  if (outcome.kind === 'appended' || outcome.kind === 'not-kept') return settled(deps, machine, outcome)
  return conflict(deps, outcome.at === 0 ? await deps.store.notes(machine) : notes)
}

/** What became of a write to one machine. */
export const settled = async (deps: CommandDeps, machine: string, outcome: AppendOutcome): Promise<CommandOutcome> => {
  if (outcome.kind === 'not-kept') return { kind: 'not-kept', problems: [outcome.problem] }
  const notes = await deps.store.notes(machine)
  if (outcome.kind === 'missing' || notes.length === 0) return { kind: 'missing', problems: [noSuchMachine(machine)] }
  if (outcome.kind === 'conflict') return conflict(deps, notes)
  return { kind: 'done', document: await documentOf(notes, deps.blueprintById) }
}

/** Somebody else wrote first. */
export const conflict = async (deps: CommandDeps, notes: readonly Note[]): Promise<CommandOutcome> => ({
  kind: 'conflict',
  problems: [changedMeanwhile],
  document: await documentOf(notes, deps.blueprintById),
})

const changedMeanwhile = problem(
  'changed-meanwhile',
  'version',
  'Something else was written about this machine meanwhile',
  'Look at what is new, then enter it again if it still holds',
)

/** The id belongs to something else. */
export const idTaken = (what: 'machine' | 'note', id: string): Problem =>
  problem('id-taken', 'id', `There is another ${what} with the id “${id}”`, 'Send it with a new id')

/** The same entry, whatever the order of its fields. */
export const sameContent = (a: NoteContent, b: NoteContent): boolean => canonical(a) === canonical(b)
