import type { Kysely, Selectable } from 'kysely'
import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { canonical } from '../../bench/canonical.ts'
import type { BookLine, Projection } from '../../bench/books/book-line.ts'
import { entrySchema, type Entry, type LogKind } from '../../bench/logs/entry.ts'
import { noteSchema, type Note } from '../../bench/note.ts'
import { projectLog, projectMachine } from '../../bench/projection.ts'
import { jsonOf } from '../copy/json-of.ts'
import { stretches } from '../copy/stretches.ts'
import { columnsOf, resultColumns } from '../sql/project.ts'
import type { Tables } from '../sql/tables.ts'
import { damagedRow } from './check-singles.ts'
import { seqProblems } from './log-order.ts'
import type { Tally } from './tally.ts'

/** The logs of machines and all others, one after another. */
export async function* checkLogs(db: Kysely<Tables>, tally: Tally): AsyncGenerator<Problem> {
  for await (const machines of stretches((after, limit) => machinesAfter(db, after, limit))) {
    for (const machine of machines) yield* checkMachine(db, machine, tally)
  }
  for await (const logs of stretches((after, limit) => logsAfter(db, after, limit))) {
    for (const log of logs) yield* checkLog(db, log, tally)
  }
  yield* await strayEntries(db)
}

const machinesAfter = (db: Kysely<Tables>, after: number, limit: number) =>
  db.selectFrom('machine').selectAll().where('rank', '>', after).orderBy('rank').limit(limit).execute()

const logsAfter = (db: Kysely<Tables>, after: number, limit: number) =>
  db.selectFrom('log').selectAll().where('rank', '>', after).orderBy('rank').limit(limit).execute()

async function* checkMachine(
  db: Kysely<Tables>,
  row: Selectable<Tables['machine']>,
  tally: Tally,
): AsyncGenerator<Problem> {
  const where = `machine ${row.id}`
  const rows = await db.selectFrom('note').selectAll().where('machine', '=', row.id).orderBy('seq').execute()
  yield* versionProblems(where, row.version, rows.length)
  const notes: Note[] = []
  for (const { by, content, ...rest } of rows) {
    const note = parse(noteSchema, { ...rest, ...(by === null ? {} : { by }), content: jsonOf(content) }, 'note')
    if (note.kind === 'ok') notes.push(note.value)
    else yield damagedRow(`${where}, note ${rest.seq} (${rest.id})`, note.problems)
  }
  const record = { kind: 'machine' as const, bench: row.bench, id: row.id, notes }
  tally.record(record)
  if (notes.length < rows.length) return
  yield* seqProblems(record)
  yield* await projectionProblems(db, 'machine', row, where, () => {
    const projection = projectMachine(notes)
    return projection === null ? null : { projection, columns: { ...columnsOf(projection), ...resultColumns(projection.result) } } // prettier-ignore
  })
}

async function* checkLog(db: Kysely<Tables>, row: Selectable<Tables['log']>, tally: Tally): AsyncGenerator<Problem> {
  const where = `${row.kind} ${row.id}`
  const kind = row.kind as LogKind
  const rows = await db
    .selectFrom('log_entry')
    .selectAll()
    .where('kind', '=', row.kind)
    .where('log', '=', row.id)
    .orderBy('seq')
    .execute()
  yield* versionProblems(where, row.version, rows.length)
  const entries: Entry[] = []
  for (const { kind: _kind, by, content, ...rest } of rows) {
    const entry = parse(entrySchema, { ...rest, ...(by === null ? {} : { by }), content: jsonOf(content) }, 'entry')
    if (entry.kind === 'ok') entries.push(entry.value)
    else yield damagedRow(`${where}, entry ${rest.seq} (${rest.id})`, entry.problems)
  }
  const record = { kind: 'log' as const, bench: row.bench, logKind: kind, id: row.id, entries }
  tally.record(record)
  if (entries.length < rows.length) return
  yield* seqProblems(record)
  yield* await projectionProblems(db, kind, row, where, () => {
    const projection = projectLog(kind, entries)
    return { projection, columns: columnsOf(projection) }
  })
}

const versionProblems = (where: string, version: number, count: number): readonly Problem[] =>
  version === count
    ? []
    : [
        problem(
          'damaged-log',
          where,
          `Its version is ${version}, and it has ${count} notes`,
          'Restore the newest backup into an empty folder',
        ),
      ]

type Fresh = { readonly projection: Projection; readonly columns: Readonly<Record<string, unknown>> }

/** What lists and books keep of a log against what follows from it now. */
const projectionProblems = async (
  db: Kysely<Tables>,
  kind: LogKind | 'machine',
  row: Selectable<Tables['machine'] | Tables['log']>,
  where: string,
  make: () => Fresh | null,
): Promise<readonly Problem[]> => {
  try {
    const fresh = make()
    if (fresh === null) return []
    const kept: Readonly<Record<string, unknown>> = row
    const columns = Object.entries(fresh.columns).flatMap(([name, value]) => (isSame(name, kept[name], value) ? [] : [name])) // prettier-ignore
    const lines = await keptLines(db, kind, row.id)
    const isSameBooks = lines === linesText(fresh.projection.lines)
    return [...columns.map((name) => stale(where, `“${name}”`)), ...(isSameBooks ? [] : [stale(where, 'the books')])]
  } catch (fault) {
    return [damagedRow(where, [problem('', '', fault instanceof Error ? fault.message : String(fault), '')])]
  }
}

const isSame = (name: string, kept: unknown, fresh: unknown): boolean =>
  name === 'summary'
    ? typeof kept === 'string' && canonical(jsonOf(kept)) === canonical(jsonOf(String(fresh)))
    : kept === fresh

const keptLines = async (db: Kysely<Tables>, kind: string, log: string): Promise<string> =>
  linesText(
    await db
      .selectFrom('book_line')
      .select(['note', 'day', 'account', 'minor', 'minutes'])
      .where('kind', '=', kind)
      .where('log', '=', log)
      .execute(),
  )

/** Lines as a text that is the same whatever their order. */
const linesText = (
  lines: readonly (Pick<BookLine, 'note' | 'day' | 'minor' | 'minutes'> & { readonly account: string })[],
): string =>
  // prettier-ignore
  lines
    .map(({ note, day, account, minor, minutes }) => JSON.stringify([note, day, account, minor, minutes]))
    .sort()
    .join('\n')

const stale = (where: string, what: string): Problem =>
  problem(
    'stale-list',
    where,
    `What lists and books keep of it (${what}) is not what its notes say`,
    '“thrum verify --mend” makes it again from the notes',
  )

/** Entries of logs that are not there. */
const strayEntries = async (db: Kysely<Tables>): Promise<readonly Problem[]> => {
  const notes = await db
    .selectFrom('note')
    .leftJoin('machine', 'machine.id', 'note.machine')
    .where('machine.id', 'is', null)
    .select(['note.machine as log', 'note.id'])
    .execute()
  const entries = await db
    .selectFrom('log_entry')
    .leftJoin('log', (join) => join.onRef('log.id', '=', 'log_entry.log').onRef('log.kind', '=', 'log_entry.kind'))
    .where('log.id', 'is', null)
    .select(['log_entry.log', 'log_entry.id'])
    .execute()
  return [...notes, ...entries].map(
    ({ log, id }) =>
    problem('damaged-log', `${log}, note ${id}`, 'What this belongs to is not there', 'Restore the newest backup into an empty folder'), // prettier-ignore
  )
}
