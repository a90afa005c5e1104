import { z } from 'zod'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, type Result } from '../../base/result.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { partKindIds } from '../../facts/part-kinds.ts'
import { partKindOf } from '../../blueprint/part-kind-of.ts'
import { checkNote } from '../append.ts'
import { documentNow, settledTogether, type CommandDeps, type CommandOutcome } from '../command-outcome.ts'
import { costLeft, foldNotes } from '../fold.ts'
import { jobOf } from '../job.ts'
import { noteContentSchema, type Note, type NoteContent } from '../note.ts'
import type { LogWrite } from '../ports.ts'
import { noSuchMachine } from '../queries.ts'
import { unknownId } from '../unknown.ts'
import { takeOffShares } from './take-off-shares.ts'
import { partConditions, partSpecSchema, type PartContent } from './part-note.ts'
import { partProblems } from './part-rules.ts'
import { virtualMachine } from './shelf-moves.ts'

const id = z.string().min(1).max(120)
const minor = z.number().int().min(0).max(100_000_000)

/** A part that is taken off a machine and put on the shelf. What is left out is taken from the blueprint. */
export const takenPartSchema = z.strictObject({
  part: id,
  name: z.string().trim().min(1).max(2000).optional(),
  partKind: z.enum(partKindIds).optional(),
  spec: partSpecSchema.default({}),
  condition: z.enum(partConditions).default('untested'),
  place: z.string().trim().max(2000).default(''),
  /** What it would fetch; left out, what the plan reckons with. */
  fetchesMinor: minor.optional(),
  /** Its share of what the machine has cost; left out, by what it fetches. */
  costMinor: minor.optional(),
  minutes: z.number().min(0).max(10_000).default(0),
})

/** Parts taken off in one go; with `breaks` the rest of the machine leaves as broken for parts. */
export const takeOffSchema = z.strictObject({
  /** Chosen by the writer, so that sending it again does no harm. */
  id: id.regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/, 'an id is letters, digits and . _ -').optional(),
  version: z.number().int().min(0),
  taken: z.array(takenPartSchema).min(1, 'name at least one part').max(100),
  breaks: z
    .strictObject({ receivedMinor: minor.default(0), minutes: z.number().min(0).max(10_000).default(0) })
    .optional(),
})
export type TakeOff = z.infer<typeof takeOffSchema>
export type TakeOffInput = z.input<typeof takeOffSchema>

/**
 * Takes parts off a machine and puts them on the shelf, each with its share of the cost; all of it is written or nothing.
 * Breaking shares the whole cost out over the parts by what they fetch; a part taken off a machine that stays takes its share beside
 * what the rest would fetch for spares.
 */
export const takeOff = async (deps: CommandDeps, machine: string, asked: TakeOff): Promise<CommandOutcome> => {
  const notes = await deps.store.notes(machine)
  if (notes.length === 0) return { kind: 'missing', problems: [noSuchMachine(machine)] }
  const group = asked.id ?? deps.newId()
  if (notes.some((note) => note.id === `${group}.1`)) return documentNow(deps, notes)
  const state = foldNotes(notes)
  if (state.practiceSeed !== null) return { kind: 'refused', problems: [virtualMachine('taken')] }
  const blueprint = await deps.blueprintById(state.blueprint)
  if (blueprint === undefined)
    return { kind: 'refused', problems: [unknownId('blueprint', 'blueprint', state.blueprint, [])] }
  const problems = takenProblems(asked, blueprint)
  if (problems.length > 0) return { kind: 'refused', problems }
  const shares = takeOffShares(asked, jobOf(state, notes, blueprint), costLeft(state))
  const written = machineNotes(deps, machine, group, notes, asked, shares)
  const checked = checkAll(notes, written, blueprint)
  if (checked.kind === 'refused') return { kind: 'refused', problems: checked.problems }
  const parts = written.flatMap((note, i) => partWrite(note, asked.taken[i], blueprint, state.currency))
  const wrong = parts.flatMap(({ problems: own }) => own)
  if (wrong.length > 0) return { kind: 'refused', problems: wrong }
  return settledTogether(deps, machine, notes, [
    { kind: 'machine', id: machine, expectedVersion: asked.version, entries: written },
    ...parts.map(({ write }) => write),
  ])
}

const takenProblems = ({ taken }: TakeOff, { parts }: Blueprint): readonly Problem[] => {
  const known = parts.map((part) => part.id)
  return taken.flatMap(({ part }, index) => {
    if (!known.includes(part)) return [unknownId('part', `taken[${index}].part`, part, known)]
    if (taken.findIndex((one) => one.part === part) === index) return []
    return [problem('named-twice', `taken[${index}].part`, `“${part}” is taken off twice`, 'Name it once')]
  })
}

const machineNotes = (
  deps: CommandDeps,
  machine: string,
  group: string,
  notes: readonly Note[],
  { taken, breaks }: TakeOff,
  shares: readonly number[],
): readonly Note[] => {
  const contents: readonly NoteContent[] = [
    ...taken.map(({ part, minutes }, i) => ({
      kind: 'took-off' as const,
      part,
      shelfPart: `${group}.${i + 1}`,
      costMinor: shares[i] ?? 0,
      minutes,
    })),
    ...(breaks === undefined ? [] : [noteContentSchema.parse({ kind: 'left', exit: 'break-for-parts', ...breaks })]),
  ]
  const at = deps.now()
  return contents.map((content, i) => ({ id: `${group}.${i + 1}`, machine, seq: notes.length + i + 1, at, content }))
}

/** The rules of the machine, note by note. */
const checkAll = (notes: readonly Note[], written: readonly Note[], blueprint: Blueprint): Result<null> => {
  for (const [i, note] of written.entries()) {
    const checked = checkNote([...notes, ...written.slice(0, i)], note.content, blueprint)
    if (checked.kind === 'refused') return checked
  }
  return ok(null)
}

type PartWrite = { readonly problems: readonly Problem[]; readonly write: LogWrite }

const partWrite = (
  note: Note,
  taken: TakeOff['taken'][number] | undefined,
  blueprint: Blueprint,
  currency: Extract<PartContent, { kind: 'put' }>['currency'],
): readonly PartWrite[] => {
  if (note.content.kind !== 'took-off' || taken === undefined) return []
  const { shelfPart, costMinor, part } = note.content
  const known = blueprint.parts.find((one) => one.id === part)
  const content: PartContent = {
    kind: 'put',
    name: taken.name ?? known?.name ?? part,
    partKind: taken.partKind ?? partKindOf(part),
    spec: taken.spec,
    condition: taken.condition,
    origin: { kind: 'machine', machine: note.machine, part },
    currency,
    costMinor,
    count: 1,
    place: taken.place,
    fetchesMinor: taken.fetchesMinor,
  }
  const entry = { id: note.id, log: shelfPart, seq: 1, at: note.at, content }
  return [
    {
      problems: partProblems([], content),
      write: { kind: 'part', id: shelfPart, expectedVersion: 0, entries: [entry] },
    },
  ]
}
