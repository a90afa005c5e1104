import { PostgresAdapter, sql, type Kysely, type RawBuilder } from 'kysely'
import type { Tables } from './tables.ts'

/** What the two databases say in different words. Everything else of the queries is written once, for both. */
export type Words = {
  readonly kind: 'sqlite' | 'postgres'
  /** The month that a day lies in, where months run from the 6th to the 5th; named by the month it begins in. */
  readonly monthFrom6th: (day: string) => RawBuilder<string>
  /** The kind of a note or an entry, out of its content. */
  readonly kindOf: (content: string) => RawBuilder<string | null>
  /** A whole number that stands in a column's JSON under this name. */
  readonly numberIn: (column: string, name: string) => RawBuilder<number>
  /** Whether a column holds a pattern, whatever the case of its letters. */
  readonly isLike: (column: string, pattern: RawBuilder<unknown>) => RawBuilder<boolean>
  /** Behind a select: keeps the rows for this transaction until it ends. SQLite has one writer at a time, so there is nothing to keep. */
  readonly forUpdate: RawBuilder<unknown>
  /** A text as it is kept. PostgreSQL takes no NUL in one; what people wrote is kept as JSON, which has another sign for it. */
  readonly asKept: (text: string) => string
}

const sqlite: Words = {
  kind: 'sqlite',
  monthFrom6th: (day) => sql`substr(date(${sql.ref(day)}, '-5 days'), 1, 7)`,
  kindOf: (content) => sql`json_extract(${sql.ref(content)}, '$.kind')`,
  numberIn: (column, name) => sql`json_extract(${sql.ref(column)}, ${sql.lit(`$.${name}`)})`,
  isLike: (column, pattern) => sql`${sql.ref(column)} like ${pattern} escape '\\'`,
  forUpdate: sql``,
  asKept: (text) => text,
}

/** PostgreSQL reads no JSON that has a NUL in a text, as people's clipboards sometimes do; the kind stands first in what is written here. */
const kindOfContent = (content: string): RawBuilder<string | null> => {
  const column = sql.ref(content)
  return sql`case when strpos(${column}, '\\u0000') = 0 then ${column}::json ->> 'kind'
    else substring(${column} from '^\\{"kind":"([^"]+)"') end`
}

/** A name with NUL in it has U+FFFD there. */
export const withoutNul = (text: string): string => text.replaceAll('\0', '\ufffd')

const postgres: Words = {
  kind: 'postgres',
  monthFrom6th: (day) => sql`to_char(${sql.ref(day)}::date - 5, 'YYYY-MM')`,
  kindOf: kindOfContent,
  numberIn: (column, name) =>
    sql`(replace(${sql.ref(column)}, '\\u0000', '\\ufffd')::json ->> ${sql.lit(name)})::bigint`,
  isLike: (column, pattern) => sql`${sql.ref(column)} ilike ${pattern} escape '\\'`,
  forUpdate: sql`for update`,
  asKept: withoutNul,
}

export const isPostgres = (db: Pick<Kysely<Tables>, 'getExecutor'>): boolean =>
  db.getExecutor().adapter instanceof PostgresAdapter

/** The words of the database that this connection leads to. */
export const wordsOf = (db: Pick<Kysely<Tables>, 'getExecutor'>): Words => (isPostgres(db) ? postgres : sqlite)
