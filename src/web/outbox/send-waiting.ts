import type { QueryClient } from '@tanstack/react-query'
import type { Problem } from '../../base/problem.ts'
import type { MachineDocument } from '../../bench/contract.ts'
import { addNote, getMachine, Refusal, type Answer } from '../api.ts'
import { machineKey, machinesKey } from '../queries.ts'
import { markRefused, takeOut, waitingNotes, type WaitingNote } from './outbox.ts'
import { withWaiting } from './with-waiting.ts'

/** Another hand may write between looking and sending; so often it is looked again before the note waits on. */
const triesAgainstOthers = 5

let sending: Promise<boolean> | null = null

/**
 * Sends what waits, in the order it was made; what the bench refuses stays with its reason and does not hold up the rest. One run at a
 * time: a second call waits for the first.
 * @returns false when the bench did not answer, so that some still wait
 */
export const sendWaiting = (client: QueryClient): Promise<boolean> => {
  sending ??= sendAll(client).finally(() => (sending = null))
  return sending
}

const sendAll = async (client: QueryClient): Promise<boolean> => {
  for (;;) {
    const next = waitingNotes().find(({ refused }) => refused === null)
    if (next === undefined) return true
    const outcome = await sendOne(next)
    if (outcome.kind === 'no-answer') return false
    if (outcome.kind === 'kept') takeOut(next.id)
    else markRefused(next.id, outcome.problems)
    if (outcome.kind === 'kept') await show(client, next, outcome.document)
  }
}

type Sent =
  | { readonly kind: 'kept'; readonly document: MachineDocument }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'no-answer' }

const sendOne = async (note: WaitingNote): Promise<Sent> => {
  let version = await versionOf(note)
  for (let tries = 0; tries < triesAgainstOthers; tries++) {
    if (typeof version !== 'number') return version
    const { id, madeAt, content } = note
    const answer = await addNote(note.bench, note.machine, { id, version, madeAt, content })
    if (answer.kind === 'ok') return { kind: 'kept', document: answer.value }
    if (isUnanswered(answer)) return { kind: 'no-answer' }
    if (answer.document === null) return { kind: 'refused', problems: answer.problems }
    version = answer.document.state.version
  }
  return { kind: 'no-answer' }
}

const isUnanswered = ({ problems }: Extract<Answer<unknown>, { kind: 'refused' }>): boolean =>
  problems.some(({ code }) => code === 'no-answer')

/** How many notes the bench has of the machine now. */
const versionOf = async (note: WaitingNote): Promise<number | Sent> => {
  try {
    return (await getMachine(note.bench, note.machine, new AbortController().signal)).state.version
  } catch (fault) {
    if (!(fault instanceof Refusal)) throw fault
    const unanswered = fault.problems.some(({ code }) => code === 'no-answer')
    return unanswered ? { kind: 'no-answer' } : { kind: 'refused', problems: fault.problems }
  }
}

/** Shows the machine as the bench has it, with what still waits. */
const show = async (client: QueryClient, { bench, machine }: WaitingNote, document: MachineDocument): Promise<void> => {
  client.setQueryData(machineKey(bench, machine), await withWaiting(client, bench, document))
  void client.invalidateQueries({ queryKey: machinesKey(bench) })
}
