import { valueOf } from '../base/result.ts'
import { expenseLines, machineLines, partLines } from './books/lines-of.ts'
import type { MachineResult, Projection } from './books/book-line.ts'
import { advertContentSchema } from './adverts/advert-note.ts'
import { foldAdvert } from './adverts/advert-state.ts'
import { expenseContentSchema } from './books/expense-note.ts'
import type { MachineState } from './contract.ts'
import { costLeft, foldNotes } from './fold.ts'
import { dayOf } from './logs/calendar-day.ts'
import type { Entry, EntryOf, LogKind } from './logs/entry.ts'
import { standingEntries } from './logs/standing-entries.ts'
import type { Note } from './note.ts'
import { recordContentSchema } from './open-data/fields.ts'
import { foldRecord } from './open-data/record-state.ts'
import { priceContentSchema } from './prices/price-note.ts'
import { partContentSchema } from './shelf/part-note.ts'
import { foldPart } from './shelf/part-state.ts'

/** What the store keeps beside a machine's log; null for a log that has no first note. A virtual machine is in no sum. */
export const projectMachine = (notes: readonly Note[]): Projection | null => {
  if (!notes.some(({ content }) => content.kind === 'added')) return null
  const state = foldNotes(notes)
  const isReal = state.practiceSeed === null
  return {
    open: state.left === null,
    label: state.name,
    group: state.blueprint,
    currency: state.currency,
    count: 1,
    stockMinor: isReal && state.left === null ? costLeft(state) : 0,
    summary: state,
    lines: isReal ? valueOf(machineLines(notes)) : [],
    result: isReal ? resultOf(state) : null,
  }
}

const resultOf = (state: MachineState): MachineResult => ({
  complaint: state.claimed.complaints[0] ?? '',
  source: state.source ?? '',
  cameDay: dayOf(state.addedAt),
  leftDay: state.left === null ? null : dayOf(state.left.at),
  exit: state.left?.exit ?? null,
  paidMinor: state.paidMinor,
  receivedMinor: state.receivedMinor - state.feesMinor,
  costMinor: costLeft(state),
  profitMinor: state.receivedMinor - state.feesMinor - costLeft(state),
  minutes: state.minutes,
})

/** What the store keeps beside any other log. Throws on an entry that this program did not write. */
export const projectLog = (kind: LogKind, entries: readonly Entry[]): Projection => {
  switch (kind) {
    case 'part':
      return projectPart(entries)
    case 'advert':
      return projectAdvert(entries)
    case 'price':
      return projectPrice(entries)
    case 'expense':
      return projectExpense(entries)
    case 'record':
      return projectRecord(entries)
  }
}

/** Entries with their content parsed. */
const parsed = <C extends { readonly kind: string }>(
  entries: readonly Entry[],
  schema: { readonly parse: (value: unknown) => C },
): readonly EntryOf<C>[] => entries.map((entry) => ({ ...entry, content: schema.parse(entry.content) }))

const projectPart = (entries: readonly Entry[]): Projection => {
  const own = parsed(entries, partContentSchema)
  const state = foldPart(own)
  return {
    open: state.count > 0,
    label: state.name,
    group: state.partKind,
    currency: state.currency,
    count: state.count,
    stockMinor: state.costMinor,
    summary: state,
    lines: valueOf(partLines(own)),
    result: null,
  }
}

const projectAdvert = (entries: readonly Entry[]): Projection => {
  const state = foldAdvert(parsed(entries, advertContentSchema))
  return {
    open: state.decided === null,
    label: state.name,
    group: state.advert.blueprint,
    currency: state.advert.currency,
    count: 1,
    stockMinor: 0,
    summary: state,
    lines: [],
    result: null,
  }
}

const projectPrice = (entries: readonly Entry[]): Projection => {
  const own = parsed(entries, priceContentSchema)
  const first = own.find(({ content }) => content.kind === 'seen')
  if (first?.content.kind !== 'seen') throw new Error('the log of a price has no first entry')
  const { content } = first
  const stands = standingEntries(own).length > 0
  return {
    open: stands,
    label: `${content.model} ${content.text}`.trim(),
    group: content.blueprint,
    currency: content.currency,
    count: 1,
    stockMinor: 0,
    summary: { id: first.log, at: first.at, ...content },
    lines: [],
    result: null,
  }
}

const projectExpense = (entries: readonly Entry[]): Projection => {
  const own = parsed(entries, expenseContentSchema)
  const first = own.find(({ content }) => content.kind === 'spent')
  if (first?.content.kind !== 'spent') throw new Error('the log of an expense has no first entry')
  const { content } = first
  return {
    open: standingEntries(own).length > 0,
    label: content.what,
    group: '',
    currency: content.currency,
    count: 1,
    stockMinor: 0,
    summary: { id: first.log, at: first.at, ...content },
    lines: valueOf(expenseLines(own)),
    result: null,
  }
}

/** A repair record of others has no money in it: no line, no price, no sum comes of it. */
const projectRecord = (entries: readonly Entry[]): Projection => {
  const state = foldRecord(parsed(entries, recordContentSchema))
  const { problem, category, partnerCategory, brand, status } = state.record
  return {
    open: !state.struck,
    label: [category, partnerCategory, brand, problem].filter((one) => one !== '').join(' '),
    group: status,
    currency: 'GBP',
    count: 1,
    stockMinor: 0,
    summary: state,
    lines: [],
    result: null,
  }
}
