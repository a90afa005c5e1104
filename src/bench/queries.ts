import { problem } from '../base/problem.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { FindBlueprint } from './blueprints.ts'
import type { BenchId, MachineDocument, MachineList } from './contract.ts'
import { fittedTo } from './fitted.ts'
import { foldNotes } from './fold.ts'
import { noteLines } from './lines.ts'
import type { Note } from './note.ts'
import type { BookStore, LogStore, NoteStore } from './ports.ts'

/** What the queries need: where notes are kept, and the blueprints. */
export type QueryDeps = {
  readonly store: NoteStore
  readonly logs: LogStore
  readonly books: BookStore
  readonly bench: BenchId
  readonly blueprintById: FindBlueprint
}

type Found = readonly (Blueprint | undefined)[]

/** What was made of notes before, and the blueprints it was made with. A log with nothing new is often asked for again. */
const kept = new WeakMap<readonly Note[], { readonly found: Found; readonly document: MachineDocument }>()

/** A machine as it is given out: what its notes add up to, the notes, and how they read. */
export const documentOf = async (notes: readonly Note[], blueprintById: FindBlueprint): Promise<MachineDocument> => {
  const named = blueprintsNamed(notes)
  const found = await Promise.all(named.map(async (id) => blueprintById(id)))
  const before = kept.get(notes)
  if (before !== undefined && before.found.every((one, i) => one === found[i])) return before.document
  const document = makeDocument(notes, named, found)
  kept.set(notes, { found, document })
  return document
}

const makeDocument = (notes: readonly Note[], named: readonly string[], found: Found): MachineDocument => {
  const state = foldNotes(notes)
  const blueprint = found[named.indexOf(state.blueprint)]
  const lines = noteLines(
    notes,
    blueprint ?? null,
    found.filter((one): one is Blueprint => one !== undefined && one !== blueprint),
  )
  return { state: blueprint === undefined ? state : fittedTo(state, blueprint), notes, lines }
}

/** Ids of all the blueprints that a machine was ever read by, the last first. */
const blueprintsNamed = (notes: readonly Note[]): readonly string[] => [
  ...new Set(
    notes
      .flatMap(({ content }) =>
        content.kind === 'added' || content.kind === 'described-by' ? [content.blueprint] : [],
      )
      .reverse(),
  ),
]

/** One machine, or null when there is none of this id. */
export const machineDocument = async (
  deps: Pick<QueryDeps, 'store' | 'blueprintById'>,
  machine: string,
): Promise<MachineDocument | null> => {
  const notes = await deps.store.notes(machine)
  return notes.length === 0 ? null : documentOf(notes, deps.blueprintById)
}

/** Machines in hand are given out all at once; those that left by so many. */
const mostInHand = 1000
export const leftAtOnce = 30

export type MachinesAsked = {
  /** Where the stretch of those that left begins; given, those in hand are left out. */
  readonly after?: number | undefined
  readonly limit?: number | undefined
  /** Only machines whose name holds these words. */
  readonly text?: string | undefined
}

/** The machines of the bench: those in hand, then those that left, the one that came in last first. */
export const machineList = async (
  { books, bench }: Pick<QueryDeps, 'books' | 'bench'>,
  { after, limit = leftAtOnce, text }: MachinesAsked = {},
): Promise<MachineList> => {
  const [hand, left] = await Promise.all([
    books.machines(bench, { open: true, limit: after === undefined ? mostInHand : 1, text }),
    books.machines(bench, { open: false, limit, after, text }),
  ])
  return {
    machines: [...(after === undefined ? hand.items : []), ...left.items],
    inHand: hand.total,
    left: left.total,
    after: left.after,
  }
}

/** The refusal of a machine that is not there. */
export const noSuchMachine = (machine: string) =>
  problem('unknown-machine', '', `There is no machine “${machine}” on this bench`, 'Look at the list of machines')
