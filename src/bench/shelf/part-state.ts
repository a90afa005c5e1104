import type { Currency } from '../../base/money.ts'
import type { PartKind } from '../../facts/part-kinds.ts'
import type { EntryOf } from '../logs/entry.ts'
import { standingEntries } from '../logs/standing-entries.ts'
import type { PartCondition, PartContent, PartOrigin, PartSpec } from './part-note.ts'

export type PartEntry = EntryOf<PartContent>

/** What the entries of one part add up to. Money in minor units. */
export type PartState = {
  readonly id: string
  readonly name: string
  readonly partKind: PartKind
  readonly spec: PartSpec
  readonly condition: PartCondition
  readonly origin: PartOrigin
  readonly currency: Currency
  readonly place: string
  /** What one would fetch, as somebody set it. */
  readonly fetchesMinor: number | null
  readonly putAt: string
  readonly version: number
  /** How many are there now, and what they stand at together. */
  readonly count: number
  readonly costMinor: number
  /** The machine that it is kept for. */
  readonly reservedFor: string | null
  readonly used: readonly {
    readonly note: string
    readonly machine: string
    readonly costMinor: number
    readonly at: string
  }[]
  readonly receivedMinor: number
  readonly feesMinor: number
  /** What was written off: scrapped, or gone when counted. */
  readonly writtenOffMinor: number
  readonly minutes: number
}

/** What so many out of a stock take with them: the last takes what is left, so that nothing is lost to rounding. Whole minor units. */
export const shareOfStock = (costMinor: number, count: number, taken: number): number =>
  taken >= count ? costMinor : Math.floor((costMinor * taken) / count)

/** Folds a part's log. Order of arrival and repeats change nothing. Throws when it has no `put`: a programmer's mistake. */
export const foldPart = (entries: readonly PartEntry[]): PartState => {
  const first = entries.find(({ content }) => content.kind === 'put')
  if (first?.content.kind !== 'put') throw new Error('the log of a part has no first entry')
  const { content } = first
  const start: PartState = {
    id: first.log,
    name: content.name,
    partKind: content.partKind,
    spec: content.spec,
    condition: content.condition,
    origin: content.origin,
    currency: content.currency,
    place: content.place,
    fetchesMinor: content.fetchesMinor ?? null,
    putAt: first.at,
    version: new Set(entries.map(({ id }) => id)).size,
    count: content.count,
    costMinor: content.costMinor,
    reservedFor: null,
    used: [],
    receivedMinor: 0,
    feesMinor: 0,
    writtenOffMinor: 0,
    minutes: 0,
  }
  return isGone(entries, first.id) ? { ...start, count: 0, costMinor: 0 } : standingEntries(entries).reduce(step, start)
}

/** A `put` that was struck out: the part never came to the shelf. */
const isGone = (entries: readonly PartEntry[], put: string): boolean =>
  entries.some(({ content }) => content.kind === 'struck' && content.note === put)

const step = (state: PartState, { id, at, content }: PartEntry): PartState => {
  switch (content.kind) {
    case 'put':
    case 'said':
    case 'struck':
      return state
    case 'described':
      return {
        ...state,
        name: content.name ?? state.name,
        spec: content.spec ?? state.spec,
        condition: content.condition ?? state.condition,
        place: content.place ?? state.place,
        fetchesMinor: content.fetchesMinor ?? state.fetchesMinor,
      }
    case 'reserved':
      return { ...state, reservedFor: content.machine }
    case 'released':
      return { ...state, reservedFor: null }
    case 'used': {
      const { machine, costMinor } = content
      return {
        ...fewer(state, 1, costMinor),
        used: [...state.used, { note: id, machine, costMinor, at }],
        reservedFor: null,
      }
    }
    case 'sold': {
      const sold = fewer(state, content.count, shareOfStock(state.costMinor, state.count, content.count))
      return {
        ...sold,
        receivedMinor: state.receivedMinor + content.receivedMinor,
        feesMinor: state.feesMinor + content.feeMinor + content.postageMinor,
        minutes: state.minutes + content.minutes,
      }
    }
    case 'scrapped':
      return writeOff(state, content.count)
    case 'counted':
      return content.count < state.count
        ? writeOff(state, state.count - content.count)
        : { ...state, count: content.count }
  }
}

const fewer = (state: PartState, taken: number, costMinor: number): PartState => ({
  ...state,
  count: Math.max(0, state.count - taken),
  costMinor: state.costMinor - costMinor,
})

const writeOff = (state: PartState, taken: number): PartState => {
  const costMinor = shareOfStock(state.costMinor, state.count, taken)
  return { ...fewer(state, taken, costMinor), writtenOffMinor: state.writtenOffMinor + costMinor }
}
