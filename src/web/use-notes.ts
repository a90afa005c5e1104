import { useQueryClient, type QueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { problem, type Problem } from '../base/problem.ts'
import type { BenchId, MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { addNote, newId } from './api.ts'
import { blueprintQuery } from './blueprint-query.ts'
import { putInOutbox, waitingOf, type WaitingFile } from './outbox/outbox.ts'
import { applyNotes } from './outbox/with-waiting.ts'
import { machineKey, machinesKey } from './queries.ts'

export type NoteWriter = {
  /** Adds the notes one after another. False when one was refused; `problems` then says why, and what came before it stands. */
  readonly write: (contents: readonly NoteContentInput[]) => Promise<boolean>
  /** Keeps a note on this device together with its photograph, to be sent later. */
  readonly writeWithFile: (content: NoteContentInput, file: WaitingFile) => Promise<boolean>
  readonly busy: boolean
  readonly problems: readonly Problem[]
}

const movedOn = problem(
  'written-meanwhile',
  '',
  'Someone else wrote about this machine meanwhile, so this was not entered',
  'Look at what was added, then enter it again if it still holds',
)

/**
 * Writes notes about one machine. Each form has its own writer, so that a refusal stands beside what was refused. Where the bench does not
 * answer, a note is kept on this device and sent later; the page shows it at once.
 */
export const useNotes = (bench: BenchId, machine: string): NoteWriter => {
  const client = useQueryClient()
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const write = async (contents: readonly NoteContentInput[]): Promise<boolean> => {
    setBusy(true)
    let refusal: readonly Problem[] = []
    for (const content of contents) {
      refusal = await writeOne({ client, bench, machine }, content)
      if (refusal.length > 0) break
    }
    setProblems(refusal)
    setBusy(false)
    return refusal.length === 0
  }
  const writeWithFile = async (content: NoteContentInput, file: WaitingFile): Promise<boolean> => {
    const note = { id: newId('note'), madeAt: new Date().toISOString(), content, file }
    const refusal = await writeHere({ client, bench, machine }, note)
    setProblems(refusal)
    return refusal.length === 0
  }
  return { write, writeWithFile, busy, problems }
}

type Place = { readonly client: QueryClient; readonly bench: BenchId; readonly machine: string }

/** Writes one note, on the bench or on this device. Gives what is wrong with it. */
const writeOne = async (place: Place, content: NoteContentInput): Promise<readonly Problem[]> => {
  const { bench, machine } = place
  const note = { id: newId('note'), madeAt: new Date().toISOString(), content }
  // What waits goes first: notes arrive in the order they were made.
  if (waitingOf(bench, machine).length > 0) return writeHere(place, note)
  const version = documentHere(place)?.state.version ?? 0
  const answer = await addNote(bench, machine, { ...note, version })
  if (answer.kind === 'ok') {
    await keep(place, answer.value)
    return []
  }
  if (answer.problems.some(({ code }) => code === 'no-answer')) return writeHere(place, note, answer.problems)
  if (answer.document === null) return answer.problems
  await keep(place, answer.document)
  return [movedOn]
}

const documentHere = ({ client, bench, machine }: Place): MachineDocument | undefined =>
  client.getQueryData<MachineDocument>(machineKey(bench, machine))

// The note may have it read by another blueprint: that one is fetched first, so that nothing on the page is taken down.
const keep = async ({ client, bench, machine }: Place, document: MachineDocument): Promise<void> => {
  await client.prefetchQuery(blueprintQuery(document.state.blueprint))
  client.setQueryData(machineKey(bench, machine), document)
  void client.invalidateQueries({ queryKey: machinesKey(bench) })
}

type Made = {
  readonly id: string
  readonly madeAt: string
  readonly content: NoteContentInput
  readonly file?: WaitingFile
}

/**
 * Keeps a note on this device, by the same rules as the bench. A machine that this device does not know, or one that is to be read by another
 * blueprint, has to wait for the bench: `otherwise` says so.
 */
const writeHere = async (
  place: Place,
  note: Made,
  otherwise: readonly Problem[] = [waitsForTheBench],
): Promise<readonly Problem[]> => {
  const { client, bench, machine } = place
  const document = documentHere(place)
  if (document === undefined || note.content.kind === 'described-by') return otherwise
  const { document: after, refused } = await applyNotes(client, document, [{ ...note, bench, machine, refused: null }])
  const [first] = refused
  if (first !== undefined) return first.problems
  putInOutbox({ ...note, bench, machine })
  client.setQueryData(machineKey(bench, machine), after)
  return []
}

const waitsForTheBench = problem(
  'waits-for-the-bench',
  '',
  'This needs the bench, which does not answer',
  'Try again when the notes that wait are sent',
)
