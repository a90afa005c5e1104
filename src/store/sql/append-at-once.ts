import { sql, type Kysely, type RawBuilder } from 'kysely'
import type { BookLine, Projection } from '../../bench/books/book-line.ts'
import type { Note } from '../../bench/note.ts'
import { projectMachine } from '../../bench/projection.ts'
import type { AppendOutcome } from '../../bench/ports.ts'
import type { Announcer } from './announcer.ts'
import { kept, type NotKept } from './kept.ts'
import type { KnownLogs } from './known-logs.ts'
import { noteRow, unknownTo, type NoteRow } from './notes.ts'
import { insertLines, lineRow, machineColumns, sameLine } from './project.ts'
import { noteOf, readAndKnow } from './read-notes.ts'
import type { Tables } from './tables.ts'
import { isPostgres } from './words.ts'

/** One note, and all that it changes, if the machine still has the version that it was made out for. */
type Addition = {
  readonly machine: string
  readonly version: number
  /** The log with the note, as it will be read. */
  readonly after: readonly Note[]
  readonly row: NoteRow
  readonly projection: Projection
  /** Lines of the books that come after those that are there. */
  readonly lines: readonly BookLine[]
}

/** It takes more than one note at the end of a log. */
type Beyond = { readonly kind: 'beyond' }
type Means = { readonly announcer: Announcer; readonly known: KnownLogs }

/**
 * Adds a note to a log that is known already, without reading it once more: the row of the machine is written only where it still has the
 * version of that log, and what is once in a log never changes. On PostgreSQL that is one statement.
 * `beyond` where it takes more than that: several notes, or lines of the books that do not simply come last.
 */
export const appendAtOnce = async (
  db: Kysely<Tables>,
  means: Means,
  machine: string,
  expectedVersion: number,
  notes: readonly Note[],
): Promise<AppendOutcome | NotKept | Beyond> => {
  const outcome = await kept(db, () => tryToAppend(db, means, machine, expectedVersion, notes))
  if (outcome.kind === 'appended') await means.announcer.after([{ kind: 'machine', id: machine }])
  return outcome
}

const tryToAppend = async (
  db: Kysely<Tables>,
  { announcer, known }: Means,
  machine: string,
  expectedVersion: number,
  notes: readonly Note[],
): Promise<AppendOutcome | Beyond> => {
  const before = known.get(machine)
  const held = before?.length === expectedVersion ? before : await readAndKnow(db, machine, known)
  const early = settledBy(held, expectedVersion, notes)
  if (early !== null) return early
  const addition = held.length === expectedVersion ? additionOf(db, held, notes) : null
  if (addition === null) return { kind: 'beyond' }
  if (await put(db, announcer, addition)) {
    known.put(machine, addition.after)
    return { kind: 'appended' }
  }
  return settledBy(await readAndKnow(db, machine, known), expectedVersion, notes) ?? { kind: 'beyond' }
}

/** What a log says of such an append without any writing; null when it has to be tried. Logs only grow, so it holds later too. */
const settledBy = (held: readonly Note[], expectedVersion: number, notes: readonly Note[]): AppendOutcome | null => {
  if (held.length === 0) return null
  if (unknownTo(held, notes).length === 0) return { kind: 'appended' }
  return held.length > expectedVersion ? { kind: 'conflict', version: held.length } : null
}

const additionOf = (db: Kysely<Tables>, held: readonly Note[], notes: readonly Note[]): Addition | null => {
  const [note, ...others] = unknownTo(held, notes)
  const last = held.at(-1)
  if (note === undefined || last === undefined || others.length > 0) return null
  const row = noteRow(db, note)
  const all = [...held, noteOf(row)]
  const [before, after] = [projectMachine(held), projectMachine(all)]
  if (before === null || after === null || before.currency !== after.currency) return null
  if (!before.lines.every((line, i) => sameLine(line, after.lines[i]))) return null
  const lines = after.lines.slice(before.lines.length)
  return { machine: last.machine, version: held.length, after: all, row, projection: after, lines }
}

const put = (db: Kysely<Tables>, announcer: Announcer, addition: Addition): Promise<boolean> =>
  isPostgres(db) ? putInOne(db, announcer, addition) : putStepwise(db, addition)

const columnsAfter = ({ version, projection }: Addition) => ({ version: version + 1, ...machineColumns(projection) })

/** Gives whether the machine still had that version. */
const putStepwise = (db: Kysely<Tables>, addition: Addition): Promise<boolean> =>
  db.transaction().execute(async (transaction) => {
    const { machine, version, row, lines, projection } = addition
    const taken = await transaction
      .updateTable('machine')
      .set(columnsAfter(addition))
      .where('id', '=', machine)
      .where('version', '=', version)
      .returning('bench')
      .executeTakeFirst()
    if (taken === undefined) return false
    await transaction.insertInto('note').values(row).execute()
    const log = { kind: 'machine', log: machine, bench: taken.bench, currency: projection.currency }
    await insertLines(transaction, log, lines)
    return true
  })

/** The same as one statement, which is a transaction of its own. */
const putInOne = async (db: Kysely<Tables>, announcer: Announcer, addition: Addition): Promise<boolean> => {
  const { machine, version, row } = addition
  const { rows } = await sql`
    with taken as (
      update machine set ${sql.join(Object.entries(columnsAfter(addition)).map(([name, value]) => sql`${sql.ref(name)} = ${value}`))}
      where id = ${machine} and version = ${version} returning id, bench, version),
    noted as (
      insert into note (machine, id, seq, at, content, "by")
      select id, ${row.id}, ${row.seq}::integer, ${row.at}, ${row.content}, ${row.by} from taken)
    ${bookedIn(addition)}
    select ${announcer.within('machine')} from taken`.execute(db)
  return rows.length > 0
}

const bookedIn = ({ machine, lines, projection }: Addition): RawBuilder<unknown> => {
  if (lines.length === 0) return sql``
  const log = { kind: 'machine', log: machine, bench: '', currency: projection.currency }
  const rows = lines.map((line) => lineRow(log, line))
  const values = rows.map((one) => sql`(${one.note}, ${one.day}, ${one.month}, ${one.month_from_6th}, ${one.account}, ${one.minor}::bigint, ${one.minutes}::double precision)`) // prettier-ignore
  return sql`, booked as (
      insert into book_line (kind, log, bench, currency, note, day, month, month_from_6th, account, minor, minutes)
      select 'machine', taken.id, taken.bench, ${log.currency}, line.* from taken, (values ${sql.join(values)}) as line)`
}
