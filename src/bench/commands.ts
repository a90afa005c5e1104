import { problem } from '../base/problem.ts'
import { checked } from './checked-note.ts'
import {
  conflict,
  idTaken,
  sameContent,
  settled,
  settledTogether,
  type CommandDeps,
  type CommandOutcome,
} from './command-outcome.ts'
import type { Note, NoteContent } from './note.ts'
import { documentOf, noSuchMachine } from './queries.ts'
import { currentSettings } from './settings.ts'
import { shelfSide } from './shelf/shelf-moves.ts'

export type { CommandDeps, CommandOutcome } from './command-outcome.ts'

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

const takenWithPart = problem(
  'taken-with-part',
  'kind',
  'A part is taken off and put on the shelf in one go',
  'Say what the part is when taking it off',
)
