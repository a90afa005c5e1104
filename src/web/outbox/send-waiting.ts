import type { QueryClient } from '@tanstack/react-query'
import { problem, type Problem } from '../../base/problem.ts'
import type { MachineDocument } from '../../bench/contract.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import { addNote, getMachine, Refusal, type Answer } from '../api.ts'
import { machineKey, machinesKey } from '../queries.ts'
import { photoInBox } from '../photos/photo-box.ts'
import { named, sendPhoto } from '../photos/send-photo.ts'
import { markRefused, setHeld, takeOut, waitingNotes, type WaitingNote } from './outbox.ts'
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
    setHeld(outcome.kind === 'no-answer' ? (outcome.why ?? []) : [])
    if (outcome.kind === 'no-answer') return false
    if (outcome.kind === 'kept') takeOut(next.id)
    else refuse(client, next, outcome.problems)
    if (outcome.kind === 'kept') await show(client, next, outcome.document)
  }
}

/** It waits for a decision, and the machine is shown without it. */
const refuse = (client: QueryClient, { id, bench, machine }: WaitingNote, problems: readonly Problem[]): void => {
  markRefused(id, problems)
  void client.invalidateQueries({ queryKey: machineKey(bench, machine) })
}

type Sent =
  | { readonly kind: 'kept'; readonly document: MachineDocument }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  /** `why`: what the bench said where it answers but cannot take it now. */
  | { readonly kind: 'no-answer'; readonly why?: readonly Problem[] }

const sendOne = async (note: WaitingNote): Promise<Sent> => {
  const found = await machineOf(note)
  if ('kind' in found) return found
  // An answer that got lost, or another tab of this device: the bench has it already.
  if (found.notes.some(({ id }) => id === note.id)) return { kind: 'kept', document: found }
  const content = await withPhotoSent(note)
  if ('problems' in content || content.kind === 'no-answer') return content
  let { version } = found.state
  for (let tries = 0; tries < triesAgainstOthers; tries++) {
    const { id, madeAt } = note
    const answer = await addNote(note.bench, note.machine, { id, version, madeAt, content })
    if (answer.kind === 'ok') return { kind: 'kept', document: answer.value }
    if (isUnanswered(answer)) return { kind: 'no-answer' }
    if (answer.document === null) return { kind: 'refused', problems: answer.problems }
    version = answer.document.state.version
  }
  return { kind: 'no-answer' }
}

/** Nothing is wrong with the note: the bench is out of reach, asks for a sign-in first, or was asked too often. */
const isForNow = (problems: readonly Problem[]): boolean =>
  problems.some(({ code }) => ['no-answer', 'sign-in-needed', 'too-many'].includes(code))

const isUnanswered = ({ problems }: Extract<Answer<unknown>, { kind: 'refused' }>): boolean => isForNow(problems)

/** The machine as the bench has it now. */
const machineOf = async (note: WaitingNote): Promise<MachineDocument | Sent> => {
  try {
    return await getMachine(note.bench, note.machine, new AbortController().signal)
  } catch (fault) {
    if (!(fault instanceof Refusal)) throw fault
    return isForNow(fault.problems) ? { kind: 'no-answer' } : { kind: 'refused', problems: fault.problems }
  }
}

type NotSent = Exclude<Sent, { readonly kind: 'kept' }>

/** What the note says once its photograph is on the bench; a note without one as it is. */
const withPhotoSent = async ({ content, file }: WaitingNote): Promise<NoteContentInput | NotSent> => {
  if (file === undefined || content.kind !== 'photo') return content
  const blob = await photoInBox(file.key)
  if (blob === null) return { kind: 'refused', problems: [named(file.name, lostHere)] }
  const sent = await sendPhoto(blob, file.name)
  switch (sent.kind) {
    case 'kept':
      return { ...content, photo: sent.id }
    case 'refused':
      return sent
    case 'waits':
      return { kind: 'no-answer', why: sent.problems }
  }
}

const lostHere = problem(
  'photograph-lost',
  'photo',
  'This browser does not have it any more',
  'Leave this out, and add it again from the pictures of the device',
)

/** Shows the machine as the bench has it, with what still waits. */
const show = async (client: QueryClient, { bench, machine }: WaitingNote, document: MachineDocument): Promise<void> => {
  client.setQueryData(machineKey(bench, machine), await withWaiting(client, bench, document))
  void client.invalidateQueries({ queryKey: machinesKey(bench) })
}
