import type { BookStore } from '../src/bench/ports.ts'
import { machineList } from '../src/bench/queries.ts'
import type { Figure } from './append-speed.ts'
import { tableLines } from './table.ts'

/** What a page may take, nine times in ten and more. */
const barMs = 50

export type Question = { readonly name: string; readonly ask: (books: BookStore) => Promise<unknown> }

/** What the pages ask for, by page. */
export const questions: readonly Question[] = [
  { name: 'Bench: in hand, and those that left last', ask: (books) => machineList({ books, bench: 'own' }) },
  { name: 'Bench: further down', ask: (books) => machineList({ books, bench: 'own' }, { after: 300 }) },
  { name: 'Bench: by a word', ask: (books) => machineList({ books, bench: 'own' }, { text: 'Larkstride' }) },
  { name: 'Shelf: a page', ask: (books) => books.logs('own', 'part', { open: true, limit: 50 }) },
  { name: 'Shelf: a page of one kind', ask: (books) => books.logs('own', 'part', { open: true, limit: 50, group: 'hose' }) }, // prettier-ignore
  { name: 'Shelf: by a word', ask: (books) => books.logs('own', 'part', { open: true, limit: 50, text: 'Larkstride' }) }, // prettier-ignore
  { name: 'Shelf: kinds', ask: (books) => books.groups('own', 'part') },
  { name: 'Books: months', ask: (books) => books.months('own', 'calendar') },
  { name: 'Books: months from the 6th', ask: (books) => books.months('own', 'from-6th') },
  { name: 'Books: what came and left by month', ask: (books) => books.traffic('own', 'calendar') },
  { name: 'Books: lines of a month', ask: (books) => linesShown(books) },
  { name: 'Books: lines of a day, for the ledger', ask: (books) => books.lines('own', 'calendar', '2025-06', { day: '2025-06-10' }) }, // prettier-ignore
  { name: 'Books: sold in a month', ask: (books) => books.sold('own', '2025-06-01', '2025-06-30') },
  { name: 'Books: results by blueprint', ask: (books) => books.results('own', 'blueprint') },
  { name: 'Books: results by complaint', ask: (books) => books.results('own', 'complaint') },
  { name: 'Books: results by source', ask: (books) => books.results('own', 'source') },
  { name: 'Books: machines by blueprint', ask: (books) => books.groups('own', 'machine') },
]

/** Lines that the page shows. */
const shown = 200

/** What the page of the books asks for when a month is opened. */
const linesShown = async (books: BookStore): Promise<unknown> => [
  await books.lines('own', 'calendar', '2025-06', { currency: 'GBP', limit: shown }),
  await books.lineCount('own', 'calendar', '2025-06', 'GBP'),
]

/** How each question grows: a row a question, a column a size; p95, and how many times the bare statements it is: by p95, medians, processor time. */
export const growthTable = (
  store: string,
  sizes: readonly number[],
  all: readonly (readonly Figure[])[],
): readonly string[] => {
  const head = [
    `${store}: p95, ms (times bare SQL: p95, median, processor)`,
    ...sizes.map((size) => `${size} machines`),
  ]
  const rows = (all[0] ?? []).map(({ name }, row) => [name, ...all.map((figures) => cell(figures[row]))])
  const slow = all.flatMap((figures, i) =>
    figures.filter(({ p95Ms }) => p95Ms > barMs).map(({ name }) => `over ${barMs} ms at ${sizes[i]}: ${name}`),
  )
  return [...tableLines(head, rows), ...slow]
}

const cell = (one: Figure): string => {
  const times = [one.p95Ms / one.bareMs, one.medianMs / one.bareMedianMs, one.cpuMs / one.bareCpuMs]
  return `${one.p95Ms.toFixed(2)} (${times.map((each) => each.toFixed(2)).join(', ')})`
}

/** The figures of a bench, and what it took to make it. */
export type Sized = { readonly fillS: number; readonly bytes: number; readonly figures: readonly Figure[] }

export const sizeText = (machines: number, fillS: number, bytes: number): string =>
  `${machines} machines: filled in ${fillS.toFixed(0)} s, ${(bytes / 1e6).toFixed(0)} MB`
