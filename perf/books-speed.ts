import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Kysely, SqliteDialect } from 'kysely'
import Database from 'libsql'
import { valueOf } from '../src/base/result.ts'
import type { BookStore } from '../src/bench/ports.ts'
import { machineList } from '../src/bench/queries.ts'
import { sqlBookStore } from '../src/store/sql/book-store.ts'
import type { Tables } from '../src/store/sql/tables.ts'
import { openStore, type OpenStore } from '../src/store/sqlite/open-store.ts'
import { appendFigures, writtenColumns, type BareAppend, type Figure } from './append-speed.ts'
import { fillBench } from './bench-of-size.ts'
import { p95, p95OfBoth } from './percentile.ts'
import { tableLines } from './table.ts'

const times = 200
/** What a page may take, nine times in ten and more. */
export const barMs = 50

type Question = { readonly name: string; readonly ask: (books: BookStore) => Promise<unknown> }

/** What the pages ask for, by page. */
const questions: readonly Question[] = [
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
  { name: 'Books: lines of a month', ask: (books) => books.lines('own', 'calendar', '2025-06') },
  { name: 'Books: sold in a month', ask: (books) => books.sold('own', '2025-06-01', '2025-06-30') },
  { name: 'Books: results by blueprint', ask: (books) => books.results('own', 'blueprint') },
  { name: 'Books: results by complaint', ask: (books) => books.results('own', 'complaint') },
  { name: 'Books: results by source', ask: (books) => books.results('own', 'source') },
  { name: 'Books: machines by blueprint', ask: (books) => books.groups('own', 'machine') },
]

/** p95 of each question at a size, beside that of the same statements run bare on the same file. */
export const booksSpeed = async (machines: number): Promise<readonly Figure[]> => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-perf-'))
  try {
    const store = valueOf(await openStore({ folder }))
    await fillBench(store, machines)
    const figures = [...(await questionFigures(store, folder)), ...(await appended(store, folder))]
    await store.close()
    return [...figures, await openFigure(folder)]
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

const questionFigures = async (store: OpenStore, folder: string): Promise<readonly Figure[]> => {
  const bare = new Database(join(folder, 'bench.sqlite'))
  const figures: Figure[] = []
  for (const { name, ask } of questions) {
    const statements = await statementsOf(bare, ask)
    const asked = (): void => {
      for (const { sql, values } of statements) bare.prepare(sql).all(...values)
    }
    figures.push({ name, ...(await p95OfBoth(() => ask(store.books), asked, times)) })
  }
  bare.close()
  return figures
}

type Statement = { readonly sql: string; readonly values: readonly unknown[] }

/** The SQL that a question comes down to. */
const statementsOf = async (database: Database.Database, ask: Question['ask']): Promise<readonly Statement[]> => {
  const statements: Statement[] = []
  const dialect = new SqliteDialect({ database: { close: () => {}, prepare: (sql: string) => database.prepare(sql) } }) // prettier-ignore
  const log = (event: { readonly query: { readonly sql: string; readonly parameters: readonly unknown[] } }): void =>
    void statements.push({ sql: event.query.sql, values: event.query.parameters })
  await ask(sqlBookStore(new Kysely<Tables>({ dialect, log })))
  return statements
}

const appended = async (store: OpenStore, folder: string): Promise<readonly Figure[]> => {
  const database = new Database(join(folder, 'bench.sqlite'))
  database.exec('PRAGMA synchronous = FULL')
  const figures = await appendFigures(store, bareAppend(database), times)
  database.close()
  return figures
}

const bareAppend = (database: Database.Database): BareAppend => {
  const insert = database.prepare('insert into note (machine, id, seq, at, content) values (?, ?, ?, ?, ?)')
  return {
    read: (machine) => database.prepare('select * from note where machine = ? order by seq').all(machine),
    append: (row, { id, machine, seq, at, content }) => {
      const columns = writtenColumns(row)
      database.exec('begin immediate')
      database
        .prepare(
          `update machine set version = version + 1, ${columns.map((name) => `"${name}" = ?`).join(', ')} where id = ? and version = ?`,
        ) // prettier-ignore
        .run(...columns.map((name) => row[name]), machine, row.version)
      insert.run(machine, id, seq, at, JSON.stringify(content))
      database.exec('commit')
    },
  }
}

/** Opening the store and closing it; bare: the file alone, with one look at it. */
const openFigure = async (folder: string): Promise<Figure> => {
  const p95Ms = await p95(async () => valueOf(await openStore({ folder })).close(), 20)
  const bareMs = await p95(() => {
    const database = new Database(join(folder, 'bench.sqlite'))
    database.prepare('select count(*) from kysely_migration').all()
    database.close()
  }, 20)
  return { name: 'Opening the store', p95Ms, bareMs }
}

/** How each question grows: a row a question, two columns a size. */
export const run = async (sizes: readonly number[]): Promise<readonly string[]> => {
  const all: (readonly Figure[])[] = []
  for (const size of sizes) all.push(await booksSpeed(size))
  const head = ['p95, ms (times bare SQL)', ...sizes.map((size) => `${size} machines`)]
  const rows = all[0].map(({ name }, row) => [name, ...all.map((figures) => cell(figures[row]))])
  const slow = all.flatMap((figures, i) =>
    figures.filter(({ p95Ms }) => p95Ms > barMs).map(({ name }) => `over ${barMs} ms at ${sizes[i]}: ${name}`),
  )
  return [...tableLines(head, rows), ...slow]
}

const cell = ({ p95Ms, bareMs }: Figure): string => `${p95Ms.toFixed(2)} (${(p95Ms / bareMs).toFixed(2)})`
