import { problem, type Problem } from '../base/problem.ts'
import { checkNote } from './append.ts'
import { canonical } from './canonical.ts'
import type { MachineDocument } from './contract.ts'
import { foldNotes } from './fold.ts'
import type { Note, NoteContent } from './note.ts'
import type { AppendOutcome, Clock, Ids, LogWrite, SettingsStore } from './ports.ts'
import { documentOf, noSuchMachine, type QueryDeps } from './queries.ts'
import { currentSettings } from './settings.ts'
import { shelfSide } from './shelf/shelf-moves.ts'
import { unknownId } from './unknown.ts'

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

/**
 * Adds a machine. The same id with the same content again changes nothing and answers `done`, so it can be sent again. Where
 * no worth of an hour is given, that of the settings is taken over.
 * @param machine its id; a new one when left out
 */
export const addMachine = async (
  deps: CommandDeps,
  content: NoteContent,
  machine: string = deps.newId(),
): Promise<CommandOutcome> => {
  const present = await deps.store.notes(machine)
  if (present.length > 0) return addedBefore(deps, present, content)
  const problems = await checked(deps, [], content)
  if (problems.length > 0) return { kind: 'refused', problems }
  const note: Note = { id: deps.newId(), machine, seq: 1, at: deps.now(), content: await withHour(deps, content) }
  const outcome = await deps.store.add(deps.bench, machine, [note])
  if (outcome.kind === 'conflict') return addedBefore(deps, await deps.store.notes(machine), content)
  return settled(deps, machine, outcome)
}

const addedBefore = async (
  deps: CommandDeps,
  present: readonly Note[],
  content: NoteContent,
): Promise<CommandOutcome> => {
  const document = await documentOf(present, deps.blueprintById)
  const first = present.find((note) => note.content.kind === 'added')
  if (first !== undefined && sameContent(first.content, sentAs(first.content, content)))
    return { kind: 'done', document }
  return { kind: 'conflict', problems: [idTaken('machine', document.state.id)], document }
}

const withHour = async (deps: CommandDeps, content: NoteContent): Promise<NoteContent> => {
  if (content.kind !== 'added' || content.hourMinor !== undefined) return content
  return { ...content, hourMinor: (await currentSettings(deps.settings)).hourMinor }
}

/** What was sent, with the hour that was filled in for it when it first came. */
const sentAs = (kept: NoteContent, content: NoteContent): NoteContent =>
  content.kind === 'added' && kept.kind === 'added' && content.hourMinor === undefined
    ? { ...content, hourMinor: kept.hourMinor }
    : content

/**
 * Adds a note to a machine. Sending the same note again, by id, changes nothing and answers `done`.
 * @param version the version of the machine that the writer had before them
 * @param id the note's id; a new one when left out
 */
export const addNote = async (
  deps: CommandDeps,
  machine: string,
  version: number,
  content: NoteContent,
  id: string = deps.newId(),
): Promise<CommandOutcome> => {
  const quickly = await addToKnown(deps, machine, version, content, id)
  if (quickly !== null) return quickly
  const notes = await deps.store.notes(machine)
  if (notes.length === 0) return { kind: 'missing', problems: [noSuchMachine(machine)] }
  const before = notes.find((note) => note.id === id)
  if (before !== undefined) return sentBefore(deps, notes, before, content)
  if (version !== notes.length) return conflict(deps, notes)
  if (content.kind === 'took-off') return { kind: 'refused', problems: [takenWithPart] }
  const problems = await checked(deps, notes, content)
  if (problems.length > 0) return { kind: 'refused', problems }
  const note: Note = { id, machine, seq: version + 1, at: deps.now(), content }
  const side = await shelfSide(deps, notes, note)
  if (side.kind === 'refused') return { kind: 'refused', problems: side.problems }
  if (side.kind === 'none') return settled(deps, machine, await deps.store.append(machine, version, [note]))
  return settledTogether(deps, machine, notes, [
    { kind: 'machine', id: machine, expectedVersion: version, entries: [note] },
    side.write,
  ])
}

/**
 * Adds a note to a log that the store knows by heart, without asking for it once more. Null where anything stands in the way, which the
 * log as it is now then decides.
 */
const addToKnown = async (
  deps: CommandDeps,
  machine: string,
  version: number,
  content: NoteContent,
  id: string,
): Promise<CommandOutcome | null> => {
  const { store } = deps
  const notes = store.atHand?.(machine, version) ?? []
  if (notes.length === 0 || notes.some((note) => note.id === id) || content.kind === 'took-off') return null
  if ((await checked(deps, notes, content)).length > 0) return null
  const note: Note = { id, machine, seq: version + 1, at: deps.now(), content }
  if ((await shelfSide(deps, notes, note)).kind !== 'none') return null
  const outcome = await store.append(machine, version, [note])
  if (outcome.kind === 'not-kept') return settled(deps, machine, outcome)
  if (outcome.kind !== 'appended') return null
  const after = store.atHand?.(machine, version + 1) ?? (await store.notes(machine))
  // It may have been there already, under this id but with other words.
  const written = after.find((one) => one.id === id)
  if (written === undefined || !sameContent(written.content, content)) return null
  return { kind: 'done', document: await documentOf(after, deps.blueprintById) }
}

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

const sentBefore = async (
  deps: CommandDeps,
  notes: readonly Note[],
  before: Note,
  content: NoteContent,
): Promise<CommandOutcome> => {
  if (sameContent(before.content, content)) {
    return { kind: 'done', document: await documentOf(notes, deps.blueprintById) }
  }
  return { kind: 'refused', problems: [idTaken('note', before.id)] }
}

const conflict = async (deps: CommandDeps, notes: readonly Note[]): Promise<CommandOutcome> => ({
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

const takenWithPart = problem(
  'taken-with-part',
  'kind',
  'A part is taken off and put on the shelf in one go',
  'Say what the part is when taking it off',
)

const idTaken = (what: 'machine' | 'note', id: string): Problem =>
  problem('id-taken', 'id', `There is another ${what} with the id “${id}”`, 'Send it with a new id')

/** The rules at the door, with the blueprint looked up that the machine is read by now. */
const checked = async (
  deps: CommandDeps,
  notes: readonly Note[],
  content: NoteContent,
): Promise<readonly Problem[]> => {
  const id = notes.length > 0 ? foldNotes(notes).blueprint : content.kind === 'added' ? content.blueprint : undefined
  if (id === undefined) return [notAdded]
  const blueprint = await deps.blueprintById(id)
  if (blueprint === undefined) return [unknownId('blueprint', 'blueprint', id, await deps.blueprintIds())]
  const result = checkNote(notes, content, blueprint)
  if (result.kind === 'refused') return result.problems
  if (content.kind !== 'described-by' || (await deps.blueprintById(content.blueprint)) !== undefined) return []
  return [unknownId('blueprint', 'blueprint', content.blueprint, await deps.blueprintIds())]
}

const notAdded = problem(
  'first-note',
  'kind',
  'The first note of a machine says that it came in',
  'Send a note of the kind “added”',
)

const settled = async (deps: CommandDeps, machine: string, outcome: AppendOutcome): Promise<CommandOutcome> => {
  if (outcome.kind === 'not-kept') return { kind: 'not-kept', problems: [outcome.problem] }
  const notes = await deps.store.notes(machine)
  if (outcome.kind === 'missing' || notes.length === 0) return { kind: 'missing', problems: [noSuchMachine(machine)] }
  if (outcome.kind === 'conflict') return conflict(deps, notes)
  return { kind: 'done', document: await documentOf(notes, deps.blueprintById) }
}

/** The same entry, whatever the order of its fields. */
const sameContent = (a: NoteContent, b: NoteContent): boolean => canonical(a) === canonical(b)
