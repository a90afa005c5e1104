import { sql, type Kysely, type RawBuilder } from 'kysely'
import type { BookLine, Projection } from '../../bench/books/book-line.ts'
import type { Note } from '../../bench/note.ts'
import type { Announcer } from './announcer.ts'
import type { NoteRow } from './notes.ts'
import { insertLines, lineRow, machineColumns } from './project.ts'
import { question, type Question } from './question.ts'
import type { Tables } from './tables.ts'
import { isPostgres } from './words.ts'

/** One note, and all that it changes, if the machine still has the version that it was made out for. */
export type Addition = {
  readonly machine: string
  readonly version: number
  /** The log with the note, as it will be read. */
  readonly after: readonly Note[]
  readonly row: NoteRow
  readonly projection: Projection
  /** Lines of the books that come after those that are there. */
  readonly lines: readonly BookLine[]
}

type Values = Readonly<Record<string, unknown>>

/** Writes it; gives whether the machine still had that version. On PostgreSQL in one statement, which is a transaction of its own. */
export const putAddition = async (db: Kysely<Tables>, announcer: Announcer, addition: Addition): Promise<boolean> => {
  if (!isPostgres(db)) return putStepwise(db, addition)
  const columns = columnsAfter(addition)
  const lines = addition.lines.map((line) => lineRow(logOf(addition, ''), line))
  const values = { ...keysOf(addition), ...columns, ...Object.assign({}, ...lines.map(lineValues)) } as Values
  const statement = kept(inOne, announcer, `${Object.keys(columns).join(' ')} ${lines.length}`, () =>
    inOneStatement(announcer, Object.keys(columns), lines.length),
  )
  return (await statement(db, values)).length > 0
}

const putStepwise = (db: Kysely<Tables>, addition: Addition): Promise<boolean> =>
  db.transaction().execute(async (transaction) => {
    const columns = columnsAfter(addition)
    const names = Object.keys(columns)
    const values: Values = { ...keysOf(addition), ...columns }
    const [taken] = await kept(stepwise, stepwise, names.join(' '), () => takeStatement(names))(transaction, values)
    if (taken === undefined) return false
    await noteStatement(transaction, values)
    await insertLines(transaction, logOf(addition, taken.bench), addition.lines)
    return true
  })

const logOf = ({ machine, projection }: Addition, bench: string) => ({
  kind: 'machine',
  log: machine,
  bench,
  currency: projection.currency,
})

const columnsAfter = ({ version, projection }: Addition): Values => ({
  version: version + 1,
  ...machineColumns(projection),
})

/** Names of columns are plain; those of other values have a dot in them. */
const keysOf = ({ machine, version, row }: Addition): Values => ({
  'the.machine': machine,
  'the.version': version,
  'note.id': row.id,
  'note.seq': row.seq,
  'note.at': row.at,
  'note.by': row.by,
  'note.content': row.content,
})

const lineColumns = ['currency', 'note', 'day', 'month', 'month_from_6th', 'account', 'minor', 'minutes'] as const

const lineValues = (row: ReturnType<typeof lineRow>, i: number): Values =>
  Object.fromEntries(lineColumns.map((name) => [`line.${i}.${name}`, row[name]]))

type Put = (name: string) => RawBuilder<unknown>

const taking = (put: Put, names: readonly string[]): RawBuilder<unknown> => sql`
  update machine set ${sql.join(names.map((name) => sql`${sql.ref(name)} = ${put(name)}`))}
  where id = ${put('the.machine')} and version = ${put('the.version')} returning id, bench, version`

const takeStatement = (names: readonly string[]): Question<Values, { readonly bench: string }> =>
  question((put) => sql`${taking(put, names)}`)

const noteStatement = question<Values, unknown>(
  (put) => sql`
  insert into note (machine, id, seq, at, content, "by") values (
    ${put('the.machine')}, ${put('note.id')}, ${put('note.seq')}, ${put('note.at')}, ${put('note.content')}, ${put('note.by')})`,
)

const inOneStatement = (announcer: Announcer, names: readonly string[], lines: number): Question<Values, unknown> =>
  question(
    (put) => sql`
    with taken as (${taking(put, names)}),
    noted as (
      insert into note (machine, id, seq, at, content, "by")
      select id, ${put('note.id')}, ${put('note.seq')}::integer, ${put('note.at')}, ${put('note.content')}, ${put('note.by')} from taken)
    ${bookedIn(put, lines)}
    select ${announcer.within('machine')} from taken`,
  )

const bookedIn = (put: Put, lines: number): RawBuilder<unknown> => {
  if (lines === 0) return sql``
  const types: Readonly<Record<string, RawBuilder<unknown>>> = {
    minor: sql`::bigint`,
    minutes: sql`::double precision`,
  }
  const row = (i: number): RawBuilder<unknown> =>
    sql`(${sql.join(lineColumns.map((name) => sql`${put(`line.${i}.${name}`)}${types[name] ?? sql``}`))})`
  return sql`, booked as (
      insert into book_line (kind, log, bench, ${sql.join(lineColumns.map((name) => sql.ref(name)))})
      select 'machine', taken.id, taken.bench, line.* from taken, (values ${sql.join(Array.from({ length: lines }, (_, i) => row(i)))}) as line)`
}

type Kept<Row> = WeakMap<object, Map<string, Question<Values, Row>>>

const inOne: Kept<unknown> = new WeakMap()
const stepwise: Kept<{ readonly bench: string }> = new WeakMap()

/** The statement of a shape; there are few, for a note has few lines. */
const kept = <Row>(
  all: Kept<Row>,
  of: object,
  shape: string,
  make: () => Question<Values, Row>,
): Question<Values, Row> => {
  const shapes = all.get(of) ?? new Map<string, Question<Values, Row>>()
  all.set(of, shapes)
  const statement = shapes.get(shape) ?? make()
  shapes.set(shape, statement)
  return statement
}
