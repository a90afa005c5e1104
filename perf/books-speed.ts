import { mkdtemp, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Kysely, SqliteDialect } from 'kysely'
import Database from 'libsql'
import { valueOf } from '../src/base/result.ts'
import { sqlBookStore } from '../src/store/sql/book-store.ts'
import type { Tables } from '../src/store/sql/tables.ts'
import { openStore, type OpenStore } from '../src/store/sqlite/open-store.ts'
import { appendFigures, writtenColumns, type BareAppend, type Figure } from './append-speed.ts'
import { fillBench } from './bench-of-size.ts'
import { growthTable, questions, sizeText, type Question, type Sized } from './book-questions.ts'
import { p95OfBoth } from './percentile.ts'

const times = 200

/** p95 of each question at a size, beside that of the same statements run bare on the same file. */
const booksSpeed = async (machines: number): Promise<Sized> => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-perf-'))
  try {
    const store = valueOf(await openStore({ folder }))
    const began = performance.now()
    await fillBench(store, machines)
    const fillS = (performance.now() - began) / 1000
    await store.close()
    return { fillS, bytes: (await stat(join(folder, 'bench.sqlite'))).size, figures: await figuresOf(folder) }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** The figures of the bench in a folder. It has some notes more afterwards. */
const figuresOf = async (folder: string): Promise<readonly Figure[]> => {
  const store = valueOf(await openStore({ folder }))
  const figures = [...(await questionFigures(store, folder)), ...(await appended(store, folder))]
  await store.close()
  return [...figures, await openFigure(folder)]
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
  const openAndClose = async (): Promise<void> => valueOf(await openStore({ folder })).close()
  const bare = (): void => {
    const database = new Database(join(folder, 'bench.sqlite'))
    database.prepare('select count(*) from kysely_migration').all()
    database.close()
  }
  return { name: 'Opening the store', ...(await p95OfBoth(openAndClose, bare, 20)) }
}

/** How each question grows: a row a question, a column a size. */
export const run = async (sizes: readonly number[]): Promise<readonly string[]> => {
  const all: Sized[] = []
  for (const size of sizes) all.push(await booksSpeed(size))
  const made = all.map(({ fillS, bytes }, i) => sizeText(sizes[i], fillS, bytes))
  return [
    ...growthTable(
      'SQLite',
      sizes,
      all.map(({ figures }) => figures),
    ),
    ...made,
  ]
}
