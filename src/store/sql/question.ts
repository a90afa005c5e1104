import { CompiledQuery, sql, type Kysely, type RawBuilder } from 'kysely'
import type { Tables } from './tables.ts'
import { wordsOf, type Words } from './words.ts'

/** Stands in a question where a value comes when it is asked. */
class Slot {
  readonly name: PropertyKey
  constructor(name: PropertyKey) {
    this.name = name
  }
}

type Text = { readonly sql: string; readonly values: readonly unknown[] }
type Put<Values> = (name: keyof Values) => RawBuilder<unknown>

/** A statement that is put into words once for each kind of database, and asked with other values each time: putting it together takes as long as a small answer. */
export type Question<Values, Row> = (db: Kysely<Tables>, values: Values) => Promise<readonly Row[]>

/** @param build puts the statement together; `put('name')` stands where the value of that name comes, and nothing else in it may change */
export const question = <Values extends object, Row>(
  build: (put: Put<Values>, words: Words) => RawBuilder<Row>,
): Question<Values, Row> => {
  const texts = new Map<Words['kind'], Text>()
  const textFor = (db: Kysely<Tables>): Text => {
    const words = wordsOf(db)
    const there = texts.get(words.kind)
    if (there !== undefined) return there
    const { sql: text, parameters } = build((name) => sql.val(new Slot(name)), words).compile(db)
    const made = { sql: text, values: parameters }
    texts.set(words.kind, made)
    return made
  }
  return async (db, values) => {
    const text = textFor(db)
    const given = text.values.map((one) => (one instanceof Slot ? values[one.name as keyof Values] : one))
    return (await db.executeQuery<Row>(CompiledQuery.raw(text.sql, given))).rows
  }
}
