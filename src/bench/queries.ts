import { problem } from '../base/problem.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { BenchId, MachineDocument, MachineList } from './contract.ts'
import { foldNotes } from './fold.ts'
import { noteLines } from './lines.ts'
import type { Note } from './note.ts'
import type { NoteStore } from './ports.ts'

/** What the queries need: where notes are kept, and the blueprints. */
export type QueryDeps = {
  readonly store: NoteStore
  readonly bench: BenchId
  readonly blueprintById: (id: string) => Blueprint | undefined
}

/** A machine as it is given out: what its notes add up to, the notes, and how they read. */
export const documentOf = (
  notes: readonly Note[],
  blueprintById: (id: string) => Blueprint | undefined,
): MachineDocument => {
  const state = foldNotes(notes)
  return { state, notes, lines: noteLines(notes, blueprintById(state.blueprint) ?? null) }
}

/** One machine, or null when there is none of this id. */
export const machineDocument = async (
  deps: Pick<QueryDeps, 'store' | 'blueprintById'>,
  machine: string,
): Promise<MachineDocument | null> => {
  const notes = await deps.store.notes(machine)
  return notes.length === 0 ? null : documentOf(notes, deps.blueprintById)
}

/** All machines of the bench, the one that came in last first. */
export const machineList = async (deps: Pick<QueryDeps, 'store' | 'bench'>): Promise<MachineList> => {
  const logs = await deps.store.list(deps.bench)
  return { machines: logs.map(foldNotes).reverse() }
}

/** The refusal of a machine that is not there. */
export const noSuchMachine = (machine: string) =>
  problem('unknown-machine', '', `There is no machine “${machine}” on this bench`, 'Look at the list of machines')
