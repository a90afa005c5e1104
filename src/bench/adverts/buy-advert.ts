import { z } from 'zod'
import { problem, type Problem } from '../../base/problem.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { sourceIds } from '../../facts/where-from.ts'
import { checkNote } from '../append.ts'
import type { CommandDeps } from '../commands.ts'
import type { MachineDocument } from '../contract.ts'
import { costsOf } from '../costs.ts'
import { noSuchLog, type LogDocument } from '../logs/log-commands.ts'
import type { Note, NoteContent } from '../note.ts'
import { machineDocument } from '../queries.ts'
import { currentSettings } from '../settings.ts'
import { unknownId } from '../unknown.ts'
import type { AdvertContent } from './advert-note.ts'
import { advertProblems, adverts } from './adverts.ts'
import { foldAdvert, type AdvertEntry, type AdvertState } from './advert-state.ts'
import { notesOfAdvert } from './machine-of-advert.ts'

const minor = z.number().int().min(0).max(100_000_000)

/** The machine of an advert is bought. What is left out is taken from the advert. */
export const buyAdvertSchema = z.strictObject({
  /** Of the machine; chosen by the writer, so that sending it again does no harm. */
  id: z.string().max(100).regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/, 'an id is letters, digits and . _ -').optional(), // prettier-ignore
  /** Of the advert that the writer had before them. */
  version: z.number().int().min(0),
  paidMinor: minor,
  name: z.string().trim().min(1).max(2000).optional(),
  model: z.string().trim().max(120).optional(),
  source: z.enum(sourceIds).optional(),
  travelMinor: minor.optional(),
  travelMin: z.number().min(0).max(10_000).optional(),
})
export type BuyAdvert = z.infer<typeof buyAdvertSchema>

type AdvertDocument = LogDocument<AdvertContent, AdvertState>

/** What became of it. Nothing was written unless it is `done`. */
export type BuyOutcome =
  | { readonly kind: 'done'; readonly machine: MachineDocument; readonly advert: AdvertDocument }
  | { readonly kind: 'refused' | 'missing' | 'not-kept'; readonly problems: readonly Problem[] }
  | { readonly kind: 'conflict'; readonly problems: readonly Problem[]; readonly advert: AdvertDocument }

/**
 * The machine of an advert comes on the bench with all that was said, answered and seen before, and the advert is decided: both
 * are written or neither. Sending the same again, by the machine's id, changes nothing and answers `done`.
 */
export const buyAdvert = async (deps: CommandDeps, advert: string, asked: BuyAdvert): Promise<BuyOutcome> => {
  const entries = await adverts.entries(deps, advert)
  if (entries.length === 0) return { kind: 'missing', problems: [noSuchLog('advert', advert)] }
  const state = foldAdvert(entries)
  const machine = asked.id ?? deps.newId()
  if (state.decided?.kind === 'bought' && state.decided.machine === machine) return done(deps, advert, machine)
  if (asked.version !== entries.length) return conflict(deps, advert)
  // Notes are told by their ids, so those of another machine under this id would count as sent before.
  if ((await deps.store.notes(machine)).length > 0) return { kind: 'refused', problems: [idTaken(machine)] }
  const blueprint = await deps.blueprintById(state.advert.blueprint)
  if (blueprint === undefined) {
    return { kind: 'refused', problems: [unknownId('blueprint', 'blueprint', state.advert.blueprint, [])] }
  }
  const decision: AdvertContent = { kind: 'bought', machine, paidMinor: asked.paidMinor }
  const notes = await machineNotes(deps, state, blueprint, machine, asked)
  const problems = [...advertProblems(entries, decision), ...noteProblems(notes, blueprint)]
  if (problems.length > 0) return { kind: 'refused', problems }
  const entry: AdvertEntry = { id: `${machine}.bought`, log: advert, seq: entries.length + 1, at: deps.now(), content: decision } // prettier-ignore
  const outcome = await deps.logs.write(deps.bench, [
    { kind: 'advert', id: advert, expectedVersion: entries.length, entries: [entry] },
    { kind: 'machine', id: machine, expectedVersion: 0, entries: notes },
  ])
  if (outcome.kind === 'appended') return done(deps, advert, machine)
  if (outcome.kind === 'not-kept') return { kind: 'not-kept', problems: [outcome.problem] }
  return outcome.at === 0 ? conflict(deps, advert) : { kind: 'refused', problems: [idTaken(machine)] }
}

const machineNotes = async (
  deps: CommandDeps,
  { id, name, advert }: AdvertState,
  blueprint: Blueprint,
  machine: string,
  asked: BuyAdvert,
): Promise<readonly Note[]> => {
  const settings = await currentSettings(deps.settings)
  const bought = { ...asked, advert: id, name: asked.name ?? name }
  const contents = notesOfAdvert(advert, blueprint, costsOf(settings, advert.currency), bought)
  const at = deps.now()
  return contents.map((content, i) => ({
    id: `${machine}.${i + 1}`,
    machine,
    seq: i + 1,
    at,
    content: withHour(content, settings.hourMinor),
  }))
}

const withHour = (content: NoteContent, hourMinor: number): NoteContent =>
  content.kind === 'added' ? { ...content, hourMinor: content.hourMinor ?? hourMinor } : content

/** The rules of the machine, note by note. */
const noteProblems = (notes: readonly Note[], blueprint: Blueprint): readonly Problem[] =>
  notes.flatMap(({ content }, i) => {
    const checked = checkNote(notes.slice(0, i), content, blueprint)
    return checked.kind === 'refused' ? checked.problems : []
  })

const done = async (deps: CommandDeps, advert: string, id: string): Promise<BuyOutcome> => {
  const [machine, document] = [await machineDocument(deps, id), await adverts.document(deps, advert)]
  if (machine === null || document === null) return { kind: 'missing', problems: [noSuchLog('advert', advert)] }
  return { kind: 'done', machine, advert: document }
}

const conflict = async (deps: CommandDeps, id: string): Promise<BuyOutcome> => {
  const advert = await adverts.document(deps, id)
  if (advert === null) return { kind: 'missing', problems: [noSuchLog('advert', id)] }
  return { kind: 'conflict', problems: [changedMeanwhile], advert }
}

const changedMeanwhile = problem(
  'changed-meanwhile',
  'version',
  'Something else was written about this advert meanwhile',
  'Look at what is new, then enter it again if it still holds',
)

const idTaken = (id: string): Problem =>
  problem('id-taken', 'id', `There is another machine with the id “${id}”`, 'Send it with a new id')
