import { noteSchema, type Note } from '../../src/bench/note.ts'
import type { Entry } from '../../src/bench/logs/entry.ts'

/** What a life writes, known to both sides: the one that is ended and the one that looks afterwards. */
export const machineOf = (seed: number, turn: number): string => `m-${seed}-${turn}`

const at = '2026-03-14T10:00:00.000Z'

/** Long enough that a note takes more than a page of the file now and then. */
const textOf = (seq: number): string => `${seq} `.repeat(1 + ((seq * 37) % 400)).trim()

export const noteAt = (machine: string, seq: number): Note =>
  noteSchema.parse({ id: `n${seq}`, machine, seq, at, content: contentAt(machine, seq) })

const plate = { voltageV: 230, frequencyHz: 50, powerW: 400, protectionClass: 'II' }

const contentAt = (machine: string, seq: number): unknown => {
  if (seq === 1) return { kind: 'added', name: machine, blueprint: 'tiny', plate, paidMinor: 500, currency: 'GBP' }
  const text = textOf(seq)
  return seq % 3 === 0 ? { kind: 'spent', costMinor: seq, minutes: 0.1, text } : { kind: 'said', text }
}

const notesInAll = 12

/** Numbers of notes after each writing of a turn: one to four are written at a time. */
export const stepsOf = (turn: number): readonly number[] => {
  const steps = [1]
  for (let seq = 1; seq < notesInAll; steps.push(seq)) seq += 1 + ((seq + turn) % 4)
  return steps
}

export const expenseOf = (machine: string): Entry => ({
  id: 'a',
  log: machine,
  seq: 1,
  at,
  content: { kind: 'spent', day: '2026-03-14', what: 'tape', costMinor: 5, currency: 'GBP', minutes: 0 },
})
