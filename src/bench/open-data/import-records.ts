import { problem, type Problem } from '../../base/problem.ts'
import { openRepairColumns, openRepairRequired } from '../../facts/open-repair-data.ts'
import { csvTable, type CsvTable } from '../books/import/csv-rows.ts'
import { placeOf } from '../books/import/field-readers.ts'
import { canonical } from '../canonical.ts'
import type { Entry } from '../logs/entry.ts'
import type { LogDeps } from '../logs/log-commands.ts'
import type { LogWrite } from '../ports.ts'
import { recordContentSchema, type RepairRecord } from './fields.ts'
import { fromRow, isVacuum } from './from-record.ts'
import { foldRecord } from './record-state.ts'

/** What became of a file of repair records. Nothing was written unless it is `imported`. */
export type OpenDataOutcome =
  | {
      readonly kind: 'imported'
      readonly imported: number
      /** Records that were kept before. */
      readonly already: number
      /** Rows of other products. */
      readonly others: number
      /** What was wrong in rows that were left out. */
      readonly leftOut: readonly Problem[]
      /** Columns that are not read. */
      readonly unread: readonly string[]
    }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'not-kept'; readonly problems: readonly Problem[] }

/** `hash`: the same text gives the same short name of letters and digits, no other one does. */
export type OpenDataDeps = LogDeps & { readonly hash: (text: string) => string }

/**
 * Takes in a CSV file of the Open Repair Data Standard 0.3. Every row is checked first; all records are written or none. A record goes
 * by its provider and id: taken in again it changes nothing, and one that says something else than the one kept is named and left.
 */
export const importOpenData = async (
  deps: OpenDataDeps,
  text: string,
  leaveOutWrong = false,
): Promise<OpenDataOutcome> => {
  const table = csvTable(text)
  if (table.kind === 'refused') return table
  const missing = missingColumns(table.value)
  if (missing.length > 0) return { kind: 'refused', problems: missing }
  const { records, others, problems } = readRows(table.value)
  const { fresh, already, changed } = await sorted(deps, records)
  const wrong = [...problems, ...changed]
  if (wrong.length > 0 && !leaveOutWrong) return { kind: 'refused', problems: wrong }
  if (table.value.rows.length === 0) return { kind: 'refused', problems: [noRows] }
  const writes = fresh.map(({ id, record }) => writeOf(deps, id, record))
  const outcome = writes.length === 0 ? { kind: 'appended' as const } : await deps.logs.write(deps.bench, writes)
  if (outcome.kind === 'not-kept') return { kind: 'not-kept', problems: [outcome.problem] }
  if (outcome.kind !== 'appended') return { kind: 'not-kept', problems: [changedMeanwhile] }
  return {
    kind: 'imported',
    imported: fresh.length,
    already,
    others,
    leftOut: wrong,
    unread: table.value.columns.filter((name) => name !== '' && !isRead(name)),
  }
}

const isRead = (name: string): boolean => (openRepairColumns as readonly string[]).includes(name)

const missingColumns = ({ columns }: CsvTable): readonly Problem[] =>
  openRepairRequired
    .filter((name) => !columns.includes(name))
    .map((name) =>
      problem(
        'no-column',
        `row 1, ${name}`,
        `There is no column “${name}”, which the Open Repair Data Standard 0.3 asks for`,
        `Name the columns ${openRepairColumns.join(', ')}`,
      ),
    )

type Placed = { readonly row: number; readonly record: RepairRecord }

const readRows = (
  table: CsvTable,
): { readonly records: readonly Placed[]; readonly others: number; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [...table.problems]
  const tooWide = new Set(table.problems.map(({ where }) => where))
  const records: Placed[] = []
  let others = 0
  for (const row of table.rows) {
    const read = fromRow(row)
    if (read.kind === 'refused') problems.push(...read.problems)
    else if (!isVacuum(read.value)) others += 1
    else if (!tooWide.has(`row ${row.number}`)) records.push({ row: row.number, record: read.value })
  }
  return { records, others, problems }
}

type Fresh = { readonly id: string; readonly record: RepairRecord }
type Sorted = { readonly fresh: readonly Fresh[]; readonly already: number; readonly changed: readonly Problem[] }

/** Those not kept yet, each once; one that stands there with other words, in the file or on the bench, is named. */
const sorted = async (deps: OpenDataDeps, records: readonly Placed[]): Promise<Sorted> => {
  const there = new Map((await deps.logs.list(deps.bench, 'record')).map((entries) => [entries[0]?.log, entries]))
  const keptOf = (id: string): RepairRecord | undefined => {
    const entries = there.get(id)
    return entries === undefined ? undefined : recordOf(entries)
  }
  const fresh = new Map<string, RepairRecord>()
  const changed: Problem[] = []
  let already = 0
  for (const { row, record } of records) {
    const id = `record-${deps.hash(canonical([record.dataProvider, record.id])).slice(0, 24)}`
    const kept = fresh.get(id) ?? keptOf(id)
    if (kept === undefined) fresh.set(id, record)
    else if (canonical(kept) === canonical(record)) already += 1
    else changed.push(saysOther(row, record.id))
  }
  return { fresh: [...fresh].map(([id, record]) => ({ id, record })), already, changed }
}

const recordOf = (entries: readonly Entry[]): RepairRecord =>
  foldRecord(entries.map((entry) => ({ ...entry, content: recordContentSchema.parse(entry.content) }))).record

const writeOf = (deps: OpenDataDeps, id: string, record: RepairRecord): LogWrite => ({
  kind: 'record',
  id,
  expectedVersion: 0,
  entries: [{ id: `${id}-1`, log: id, seq: 1, at: deps.now(), content: { kind: 'kept', record } }],
})

const saysOther = (row: number, id: string): Problem =>
  problem(
    'says-something-else',
    placeOf(row, 'id'),
    `The record “${id}” stands already and says something else`,
    'Leave this row out, or give it an id of its own',
  )
const changedMeanwhile = problem(
  'changed-meanwhile',
  '',
  'Somebody else took in the same file meanwhile',
  'Import it again: what is there already is left as it is',
)
const noRows = problem('no-rows', 'row 2', 'The file has no record in it', 'Give each repair a row below the first')
