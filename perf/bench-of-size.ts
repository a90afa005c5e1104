import { fillDemoBench } from '../src/bench/demo.ts'
import type { Entry } from '../src/bench/logs/entry.ts'
import type { Note } from '../src/bench/note.ts'
import type { LogStore, LogWrite } from '../src/bench/ports.ts'
import { blueprintById } from '../src/blueprint/library.ts'
import { memoryBench } from '../src/store/memory/bench.ts'

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
    left: machines.filter(hasLeft),
    inHand: machines.filter((log) => !hasLeft(log)),
    parts: await stores.logs.list('demo', 'part'),
    expenses: await stores.logs.list('demo', 'expense'),
  }
}

/** Writes so many machines, two parts of the shelf for each, and spending, through the port, spread over five years. */
export const fillBench = async (logs: LogStore, machines: number): Promise<void> => {
  const { left, inHand, parts, expenses } = await templates()
  let batch: LogWrite[] = []
  const flush = async (): Promise<void> => {
    const outcome = await logs.write('own', batch)
    if (outcome.kind !== 'appended') throw new Error(`the bench could not be filled: ${outcome.kind}`)
    batch = []
  }
  for (let i = 0; i < machines; i++) {
    const stands = i >= machines - Math.min(mostInHand, machines / 5)
    const log = stands ? inHand[i % inHand.length] : left[i % left.length]
    batch.push({
      kind: 'machine',
      id: `m${i}`,
      expectedVersion: 0,
      entries: log.map((note) => copyOf(note, `m${i}`, i)),
    })
    for (let k = 0; k < partsPerMachine; k++) {
      const n = i * partsPerMachine + k
      batch.push(logCopy('part', `p${n}`, parts[n % parts.length], i))
    }
    if (i % machinesPerExpense === 0) {
      batch.push(logCopy('expense', `e${i}`, expenses[(i / machinesPerExpense) % expenses.length], i))
    }
    if (batch.length >= atOnce) await flush()
  }
  await flush()
}

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
