import type { Currency } from '../base/money.ts'
import type { Problem } from '../base/problem.ts'
import type { BookLine } from './books/book-line.ts'
import type { BenchId, MachineState } from './contract.ts'
import type { Entry, LogKind } from './logs/entry.ts'
import type { Note } from './note.ts'
import type { OwnBlueprint } from './own-blueprint.ts'
import type { KeptChange } from './settings-change.ts'

/** What became of notes handed to the store. They are kept as a whole or not at all. */
export type AppendOutcome =
  | { readonly kind: 'appended' }
  /** Someone else wrote first; `version` is the number of notes the machine has now. */
  | { readonly kind: 'conflict'; readonly version: number }
  | { readonly kind: 'missing' }
  /** The store could not keep them: the disk is full or cannot be written. */
  | { readonly kind: 'not-kept'; readonly problem: Problem }

/**
 * Where the logs of machines are kept. A note is never changed or removed.
 * Version means the number of notes a machine has; notes are numbered from 1 in `seq`.
 */
export type NoteStore = {
  /** The logs of all machines of a bench, each in order; machines in the order in which they came in. */
  readonly list: (bench: BenchId) => Promise<readonly (readonly Note[])[]>
  /** One machine's log in order; empty when there is no such machine. */
  readonly notes: (machine: string) => Promise<readonly Note[]>
  /**
   * A machine's log where it is known to have had just this version and nothing later is known; else null, or where the store knows
   * nothing by heart. Others may have added to it since: an append then tells.
   */
  readonly atHand?: (machine: string, version: number) => readonly Note[] | null
  /**
   * Starts a machine's log with these notes. When the machine is there already: `appended` if it holds them all
   * (a resend), else `conflict`.
   */
  readonly add: (bench: BenchId, machine: string, notes: readonly Note[]) => Promise<AppendOutcome>
  /**
   * Adds notes to a machine whose version is still `expectedVersion`. Of two that append to the same version exactly
   * one wins. Notes the machine holds already, by id, are not added again; when it holds them all the answer is
   * `appended` whatever the version, so a resend does no harm.
   */
  readonly append: (machine: string, expectedVersion: number, notes: readonly Note[]) => Promise<AppendOutcome>
}

/** Entries for one log. `expectedVersion` 0 begins it. */
export type LogWrite =
  | {
      readonly kind: 'machine'
      readonly id: string
      readonly expectedVersion: number
      readonly entries: readonly Note[]
    }
  | {
      readonly kind: LogKind
      readonly id: string
      readonly expectedVersion: number
      readonly entries: readonly Entry[]
    }

/** What became of writes to several logs: all of them were kept, or none. `at`: the place of the write that was in the way. */
export type WriteOutcome =
  | { readonly kind: 'appended' }
  | { readonly kind: 'conflict'; readonly at: number; readonly version: number }
  | { readonly kind: 'missing'; readonly at: number }
  | { readonly kind: 'not-kept'; readonly problem: Problem }

/**
 * Where the logs of everything else are kept: parts of the shelf, adverts, prices, spending. By the same rules as the logs of machines: an
 * entry is never changed or removed, versions count entries, and sending entries again does no harm.
 */
export type LogStore = {
  /** One log in order; empty when there is none. */
  readonly entries: (kind: LogKind, id: string) => Promise<readonly Entry[]>
  /** All logs of a kind on a bench, in the order they were begun. */
  readonly list: (bench: BenchId, kind: LogKind) => Promise<readonly (readonly Entry[])[]>
  /** Writes to several logs at once, machines among them: what moves a part from the shelf into a machine is kept whole or not at all. */
  readonly write: (bench: BenchId, writes: readonly LogWrite[]) => Promise<WriteOutcome>
}

/** A stretch of a list. `after`: what to ask for to get the next one; null at the end. */
export type Page<T> = { readonly items: readonly T[]; readonly total: number; readonly after: number | null }

/** Which stretch of a list. The newest come first. */
export type PageAsked = {
  readonly open: boolean
  readonly limit: number
  readonly after?: number | undefined
  /** Only of this group: a blueprint, a kind of part. */
  readonly group?: string | undefined
  /** Only those whose name holds these words, whatever their case. */
  readonly text?: string | undefined
}

/** Months as the calendar has them, or running from the 6th to the 5th as the tax months of the United Kingdom do. */
export type MonthKind = 'calendar' | 'from-6th'
export type MonthLine = {
  readonly month: string
  readonly currency: Currency
  readonly account: BookLine['account']
  readonly minor: number
  readonly minutes: number
}
export type GroupLine = {
  readonly group: string
  readonly currency: Currency
  readonly logs: number
  readonly count: number
  readonly stockMinor: number
}
/** What the machines that left have brought, by one thing known of them. */
export type ResultLine = {
  readonly key: string
  readonly currency: Currency
  readonly machines: number
  readonly soldWorking: number
  readonly receivedMinor: number
  readonly costMinor: number
  readonly profitMinor: number
  readonly minutes: number
  /** Machines that brought less than they cost. */
  readonly atLoss: number
  /** Sum of the squares of their profits, minor units squared: how far they lie apart. */
  readonly profitSquares: number
}
/** How many machines came and left in a month, and what was paid for those that came. */
export type TrafficLine = {
  readonly month: string
  readonly currency: Currency
  readonly came: number
  readonly paidMinor: number
  readonly left: number
}
/** A line of the books with what it belongs to: a machine, a part of the shelf, spending; `what`: the kind of its note. */
export type LedgerLine = BookLine & {
  readonly kind: LogKind | 'machine'
  readonly log: string
  readonly label: string
  readonly currency: Currency
  readonly what: string
}

/** Which lines of a month; all of them where nothing is said. */
export type LinesAsked = {
  readonly currency?: Currency | undefined
  /** One day of the month. */
  readonly day?: string | undefined
  /** So many from the beginning. */
  readonly limit?: number | undefined
}
/** A machine that was sold, as the stock book has it. */
export type SoldMachine = Pick<MachineState, 'id' | 'name' | 'currency' | 'paidMinor' | 'receivedMinor'> & {
  readonly boughtDay: string
  readonly soldDay: string
}

/** What the lists and the books ask of the store; made from the logs, so it can be made again from them. Virtual machines are in no sum. */
export type BookStore = {
  readonly machines: (bench: BenchId, asked: PageAsked) => Promise<Page<MachineState>>
  /** Summaries of other logs; the use-case that the kind belongs to knows their form. */
  readonly logs: (bench: BenchId, kind: LogKind, asked: PageAsked) => Promise<Page<unknown>>
  /** How many open logs there are of each group and what they stand at. */
  readonly groups: (bench: BenchId, kind: LogKind | 'machine') => Promise<readonly GroupLine[]>
  readonly months: (bench: BenchId, kind: MonthKind) => Promise<readonly MonthLine[]>
  readonly results: (bench: BenchId, by: 'blueprint' | 'complaint' | 'source') => Promise<readonly ResultLine[]>
  /** How many machines came and left, by the month of the day; the earliest first. */
  readonly traffic: (bench: BenchId, kind: MonthKind) => Promise<readonly TrafficLine[]>
  /** Lines of one month, by day. */
  readonly lines: (bench: BenchId, kind: MonthKind, month: string, asked?: LinesAsked) => Promise<readonly LedgerLine[]>
  /** How many lines there are of a month; of one currency where it is named. */
  readonly lineCount: (bench: BenchId, kind: MonthKind, month: string, currency?: Currency) => Promise<number>
  /** Machines sold from the one day to the other, both within, and not brought back since; by day. */
  readonly sold: (bench: BenchId, from: string, to: string) => Promise<readonly SoldMachine[]>
}

/** Something that was written to a bench, by whomever. */
export type Change =
  | { readonly kind: LogKind | 'machine'; readonly id: string; readonly version: number }
  /** What was written is not known, so everything may have changed. */
  | { readonly kind: 'everything' }

/** Tells of what is written, by this program and by others on the same store. What is told may be told twice, and nothing is left untold. */
export type Changes = {
  /** Has the listener told of each change of a bench until the function that is given back is called. */
  readonly subscribe: (bench: BenchId, listener: (change: Change) => void) => () => void
}

/** Where everything of the machines, the shelf and the books is kept. */
export type BenchStores = { readonly notes: NoteStore; readonly logs: LogStore; readonly books: BookStore }

/** What became of a blueprint handed to the store. */
export type PutOutcome =
  /** It is kept; also when it was there already, word for word. */
  | { readonly kind: 'kept' }
  /** Another one is kept under this id. */
  | { readonly kind: 'taken' }
  | { readonly kind: 'not-kept'; readonly problem: Problem }

/** Where blueprints of one's own are kept, for all benches. What is kept under an id is never changed or removed. */
export type BlueprintStore = {
  /** All of them, in the order in which they were saved. */
  readonly list: () => Promise<readonly OwnBlueprint[]>
  readonly get: (id: string) => Promise<OwnBlueprint | null>
  /** Of two that put different ones under the same id exactly one wins. */
  readonly put: (own: OwnBlueprint) => Promise<PutOutcome>
}

/** Where changes of the settings are kept, for all benches. A change is never itself changed or removed; the later one counts. */
export type SettingsStore = {
  /** All of them, in the order in which they were made. */
  readonly changes: () => Promise<readonly KeptChange[]>
  readonly add: (
    change: KeptChange,
  ) => Promise<{ readonly kind: 'kept' } | { readonly kind: 'not-kept'; readonly problem: Problem }>
}

/** The time now, ISO 8601 in UTC. */
export type Clock = () => string
/** An id no one else will choose. */
export type Ids = () => string
