import pg from 'pg'
import { Kysely, PostgresDialect } from 'kysely'
import { valueOf } from '../src/base/result.ts'
import type { BookStore } from '../src/bench/ports.ts'
import { machineList } from '../src/bench/queries.ts'
import { clientConfig } from '../src/store/postgres/database.ts'
import { openStore } from '../src/store/postgres/open-store.ts'
import { sqlBookStore } from '../src/store/sql/book-store.ts'
import type { Tables } from '../src/store/sql/tables.ts'
import { startPostgres } from '../test/support/postgres.ts'
import { appendFigures, writtenColumns, type BareAppend, type Figure } from './append-speed.ts'
import { fillBench } from './bench-of-size.ts'
import { p95OfBoth } from './percentile.ts'
import { tableLines } from './table.ts'

const times = 200

type Question = { readonly name: string; readonly ask: (books: BookStore) => Promise<unknown> }
const questions: readonly Question[] = [
  { name: 'Bench: in hand, and those that left last', ask: (books) => machineList({ books, bench: 'own' }) },
  { name: 'Bench: by a word', ask: (books) => machineList({ books, bench: 'own' }, { text: 'Larkstride' }) },
  { name: 'Shelf: a page', ask: (books) => books.logs('own', 'part', { open: true, limit: 50 }) },
  { name: 'Shelf: by a word', ask: (books) => books.logs('own', 'part', { open: true, limit: 50, text: 'Larkstride' }) }, // prettier-ignore
  { name: 'Books: months', ask: (books) => books.months('own', 'calendar') },
  { name: 'Books: lines of a month', ask: (books) => books.lines('own', 'calendar', '2025-06') },
  { name: 'Books: results by blueprint', ask: (books) => books.results('own', 'blueprint') },
]

/** p95 of each question on PostgreSQL at a size, beside that of the same statements over one connection and nothing made of them. */
export const postgresSpeed = async (machines: number): Promise<readonly Figure[]> => {
  const server = await startPostgres({ durable: true })
  const url = await server.newDatabase()
  const bare = new pg.Client(clientConfig(url))
  const store = valueOf(await openStore({ url }))
  try {
    await fillBench(store, machines)
    await bare.connect()
    await bare.query('analyze')
    const figures: Figure[] = []
    for (const { name, ask } of questions) {
      const statements = await statementsOf(url, ask)
      const asked = async (): Promise<void> => {
        for (const { sql, values } of statements) await bare.query(sql, [...values])
      }
      figures.push({ name, ...(await p95OfBoth(() => ask(store.books), asked, times)) })
    }
    return [...figures, ...(await appendFigures(store, bareAppend(bare), times))]
  } finally {
    await bare.end()
    await store.close()
    await server.stop()
  }
}

type Statement = { readonly sql: string; readonly values: readonly unknown[] }

/** The SQL that a question comes down to. */
const statementsOf = async (url: string, ask: Question['ask']): Promise<readonly Statement[]> => {
  const statements: Statement[] = []
  const dialect = new PostgresDialect({ pool: new pg.Pool({ ...clientConfig(url), max: 1 }) })
  const db = new Kysely<Tables>({
    dialect,
    log: ({ query }) => void statements.push({ sql: query.sql, values: query.parameters }),
  })
  await ask(sqlBookStore(db))
  await db.destroy()
  return statements
}

/** Everything in one statement, which is the quickest way over a connection. */
const bareAppend = (client: pg.Client): BareAppend => ({
  read: (machine) => client.query('select * from note where machine = $1 order by seq', [machine]),
  append: (row, { id, machine, seq, at, content }) => {
    const columns = writtenColumns(row)
    const set = columns.map((name, i) => `"${name}" = $${i + 7}`).join(', ')
    return client.query(
      `with taken as (update machine set version = version + 1, ${set} where id = $1 and version = $2 returning id)
       insert into note (machine, id, seq, at, content) select id, $3, $4, $5, $6 from taken`,
      [machine, row.version, id, seq, at, JSON.stringify(content), ...columns.map((name) => row[name])],
    )
  },
})

/** How each question grows: a row a question, a column a size. */
export const run = async (sizes: readonly number[]): Promise<readonly string[]> => {
  const all: (readonly Figure[])[] = []
  for (const size of sizes) all.push(await postgresSpeed(size))
  const cell = ({ p95Ms, bareMs }: Figure): string => `${p95Ms.toFixed(2)} (${(p95Ms / bareMs).toFixed(2)})`
  const head = ['PostgreSQL, p95, ms (times bare SQL)', ...sizes.map((size) => `${size} machines`)]
  return tableLines(
    head,
    all[0].map(({ name }, row) => [name, ...all.map((figures) => cell(figures[row]))]),
  )
}
