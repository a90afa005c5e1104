import pg from 'pg'
import { Kysely, PostgresDialect } from 'kysely'
import { valueOf } from '../src/base/result.ts'
import { clientConfig } from '../src/store/postgres/database.ts'
import { openStore } from '../src/store/postgres/open-store.ts'
import { sqlBookStore } from '../src/store/sql/book-store.ts'
import type { Tables } from '../src/store/sql/tables.ts'
import { startPostgres } from '../test/support/postgres.ts'
import { appendFigures, writtenColumns, type BareAppend, type Figure } from './append-speed.ts'
import { fillBench } from './bench-of-size.ts'
import { growthTable, questions, sizeText, type Question, type Sized } from './book-questions.ts'
import { p95OfBoth } from './percentile.ts'

const times = 200

/** p95 of each question on PostgreSQL at a size, beside that of the same statements over one connection and nothing made of them. */
const postgresSpeed = async (machines: number): Promise<Sized> => {
  const server = await startPostgres({ durable: true })
  try {
    const url = await server.newDatabase()
    const store = valueOf(await openStore({ url }))
    const began = performance.now()
    await fillBench(store, machines)
    const fillS = (performance.now() - began) / 1000
    await store.close()
    return { fillS, ...(await figuresOf(url)) }
  } finally {
    await server.stop()
  }
}

/** The figures of the bench in a database. It has some notes more afterwards. */
const figuresOf = async (url: string): Promise<Omit<Sized, 'fillS'>> => {
  const bare = new pg.Client(clientConfig(url))
  const store = valueOf(await openStore({ url }))
  try {
    await bare.connect()
    // What a server does by itself in the minutes after so much was written.
    await bare.query('vacuum analyze')
    const { rows } = await bare.query<{ readonly bytes: number }>(
      'select pg_database_size(current_database()) as bytes',
    )
    const figures: Figure[] = []
    for (const { name, ask } of questions) {
      const statements = await statementsOf(url, ask)
      const asked = async (): Promise<void> => {
        for (const { sql, values } of statements) await bare.query(sql, [...values])
      }
      figures.push({ name, ...(await p95OfBoth(() => ask(store.books), asked, times)) })
    }
    return {
      bytes: rows[0]?.bytes ?? 0,
      figures: [...figures, ...(await appendFigures(store, bareAppend(bare), times))],
    }
  } finally {
    await bare.end()
    await store.close()
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
  const all: Sized[] = []
  for (const size of sizes) all.push(await postgresSpeed(size))
  const made = all.map(({ fillS, bytes }, i) => sizeText(sizes[i], fillS, bytes))
  return [
    ...growthTable(
      'PostgreSQL',
      sizes,
      all.map(({ figures }) => figures),
    ),
    ...made,
  ]
}
