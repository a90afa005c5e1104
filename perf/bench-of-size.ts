import { fillDemoBench } from '../src/bench/demo.ts'
import type { Entry } from '../src/bench/logs/entry.ts'
import type { Note } from '../src/bench/note.ts'
import type { LogStore, LogWrite } from '../src/bench/ports.ts'
import { blueprintById } from '../src/blueprint/library.ts'
import { memoryBench } from '../src/store/memory/bench.ts'
import type { OpenStore } from '../src/store/sql/stores-on.ts'
import { cloneLogs } from './clone-logs.ts'

/** Machines standing about at any size of the bench: nobody has room for more. */
const mostInHand = 200
const partsPerMachine = 2
const machinesPerExpense = 5
/** Logs in one transaction. */
const atOnce = 100
const monthsBack = 60
const monthMs = 30 * 24 * 3600e3

/** The logs that a large bench is copied from: those of the demonstration's year. */
type Templates = {
  readonly left: readonly (readonly Note[])[]
  readonly inHand: readonly (readonly Note[])[]
  readonly parts: readonly (readonly Entry[])[]
  readonly expenses: readonly (readonly Entry[])[]
}

const templates = async (): Promise<Templates> => {
  const stores = memoryBench()
  await fillDemoBench({ stores, blueprintById })
  const machines = await stores.notes.list('demo')
  const hasLeft = (log: readonly Note[]): boolean => log.some(({ content }) => content.kind === 'left')
  return {
    left: machines.filter(hasLeft).map(withAfterwords),
    inHand: machines.filter((log) => !hasLeft(log)),
    parts: await stores.logs.list('demo', 'part'),
    expenses: await stores.logs.list('demo', 'expense'),
  }
}

/** What buyers write afterwards: with it a bench has some thirty notes for each machine. */
const afterwords = ['The buyer wrote that it runs well', 'The buyer asked where to get bags']

const withAfterwords = (log: readonly Note[]): readonly Note[] => {
  const last = log.at(-1)
  if (last === undefined) return log
  const more = afterwords.map((text, i): Note => {
    const seq = last.seq + 1 + i
    return { id: `${last.machine}.${seq}`, machine: last.machine, seq, at: last.at, content: { kind: 'said', text } }
  })
  return [...log, ...more]
}

/** Logs of machines that left which a bench larger than that many is copied from inside the database. */
const setSize = 800

/**
 * Fills an empty bench with so many machines, two parts of the shelf for each, and spending, spread over five years. The first are written
 * through the port; of a large bench most are copies of those that left, made inside the database together with all that is kept beside.
 */
export const fillBench = async ({ logs, db }: OpenStore, machines: number): Promise<void> => {
  const copies = Math.max(0, Math.floor((machines - mostInHand) / setSize) - 1)
  if (copies === 0) return fillThrough(logs, 0, machines, machines)
  await fillThrough(logs, 0, setSize, machines)
  await cloneLogs(db, [{ kind: 'machine', step: setSize }, { kind: 'part', step: partsPerMachine * setSize }, { kind: 'expense', step: setSize }], copies) // prettier-ignore
  await fillThrough(logs, (copies + 1) * setSize, machines, machines)
}

/** Writes the machines from a number up to another, of so many in all; the last of all stand about. */
const fillThrough = async (logs: LogStore, from: number, to: number, machines: number): Promise<void> => {
  const { left, inHand, parts, expenses } = await templates()
  let batch: LogWrite[] = []
  const flush = async (): Promise<void> => {
    const outcome = await logs.write('own', batch)
    if (outcome.kind !== 'appended') throw new Error(`the bench could not be filled: ${outcome.kind}`)
    batch = []
  }
  for (let i = from; i < to; i++) {
    const stands = i >= machines - Math.min(mostInHand, machines / 5)
    const log = stands ? inHand[i % inHand.length] : left[i % left.length]
    const id = idOf('m', i)
    batch.push({ kind: 'machine', id, expectedVersion: 0, entries: log.map((note) => copyOf(note, id, i)) })
    for (let k = 0; k < partsPerMachine; k++) {
      const n = i * partsPerMachine + k
      batch.push(logCopy('part', idOf('p', n), parts[n % parts.length], i))
    }
    if (i % machinesPerExpense === 0) {
      batch.push(logCopy('expense', idOf('e', i), expenses[(i / machinesPerExpense) % expenses.length], i))
    }
    if (batch.length >= atOnce) await flush()
  }
  if (batch.length > 0) await flush()
}

const idOf = (letter: string, number: number): string => `${letter}${String(number).padStart(7, '0')}`

/** Under other ids, some months earlier. */
const copyOf = ({ seq, at, content }: Note, machine: string, i: number): Note => ({
  id: `${machine}.${seq}`,
  machine,
  seq,
  at: earlier(at, i),
  content: content.kind === 'struck' ? { ...content, note: `${machine}.${content.note.split('.').at(-1)}` } : content,
})

const logCopy = (kind: 'part' | 'expense', id: string, log: readonly Entry[], i: number): LogWrite => ({
  kind,
  id,
  expectedVersion: 0,
  entries: log.map(({ seq, at, content }) => ({
    id: `${id}.${seq}`,
    log: id,
    seq,
    at: earlier(at, i),
    content: 'day' in content ? { ...content, day: earlier(at, i).slice(0, 10) } : content,
  })),
})

const earlier = (at: string, i: number): string =>
  new Date(Date.parse(at) - (monthsBack - 1 - (i % monthsBack)) * monthMs).toISOString()
