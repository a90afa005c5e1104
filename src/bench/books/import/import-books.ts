import { problem, type Problem } from '../../../base/problem.ts'
import type { Blueprint } from '../../../blueprint/schema.ts'
import { canonical } from '../../canonical.ts'
import type { CommandDeps } from '../../commands.ts'
import { dayOf } from '../../logs/calendar-day.ts'
import type { Note } from '../../note.ts'
import { currentSettings } from '../../settings.ts'
import { csvTable, type CsvTable } from './csv-rows.ts'
import { neededColumns, pastColumns, type PastMachine } from './past-machine.ts'
import { pastNotes } from './past-notes.ts'
import { readRow, type RowGrounds } from './read-row.ts'

/** What became of a file of past machines. Nothing was written unless it is `imported`. */
export type ImportOutcome =
  | {
      readonly kind: 'imported'
      readonly imported: number
      /** Rows that were taken in by an earlier import. */
      readonly already: number
      /** What was wrong in rows that were left out. */
      readonly leftOut: readonly Problem[]
      /** Columns that are not read. */
      readonly unread: readonly string[]
    }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  /** The store could not keep all of it; importing again takes in the rest. */
  | { readonly kind: 'not-kept'; readonly problems: readonly Problem[] }

/** `hash`: the same text gives the same short name of letters and digits, no other one does. */
export type ImportDeps = CommandDeps & { readonly hash: (text: string) => string }

/** Machines written together. */
const atOnce = 100

/**
 * Takes in a file of past machines: see `docs/books.md` for its columns. Every row is checked first; nothing is written unless
 * all are right, or the wrong ones are to be left out. The same row again is the same machine, so a file can be sent again.
 * @param text the CSV file
 */
export const importBooks = async (deps: ImportDeps, text: string, leaveOutWrong = false): Promise<ImportOutcome> => {
  const table = csvTable(text)
  if (table.kind === 'refused') return { kind: 'refused', problems: table.problems }
  const missing = missingColumns(table.value)
  if (missing.length > 0) return { kind: 'refused', problems: missing }
  const { machines, problems } = await readMachines(deps, table.value)
  if (problems.length > 0 && !leaveOutWrong) return { kind: 'refused', problems }
  if (machines.length === 0) return { kind: 'refused', problems: problems.length > 0 ? problems : [noRows] }
  const fresh = await freshOnes(deps, machines)
  const written = await writeAll(deps, fresh)
  if (written !== null) return { kind: 'not-kept', problems: [written] }
  return {
    kind: 'imported',
    imported: fresh.length,
    already: machines.length - fresh.length,
    leftOut: problems,
    unread: table.value.columns.filter((name) => name !== '' && !isRead(name)),
  }
}

const isRead = (name: string): boolean => (pastColumns as readonly string[]).includes(name)

const missingColumns = ({ columns }: CsvTable): readonly Problem[] =>
  neededColumns
    .filter((name) => !columns.includes(name))
    .map((name) =>
      problem('no-column', 'row 1', `There is no column “${name}”`, `Name the columns ${pastColumns.join(', ')}`),
    )

type Made = { readonly id: string; readonly notes: readonly Note[] }
type Read = { readonly machines: readonly Made[]; readonly problems: readonly Problem[] }

const readMachines = async (deps: ImportDeps, table: CsvTable): Promise<Read> => {
  const { region, currency, hourMinor } = await currentSettings(deps.settings)
  const blueprints = await blueprintsOf(deps)
  const kinds = [...blueprints.values()].map(({ id, name }) => [id, name] as const)
  const grounds: RowGrounds = { today: dayOf(deps.now()), region, currency, kinds }
  const machines: Made[] = []
  const problems: Problem[] = [...table.problems]
  const tooWide = new Set(table.problems.map(({ where }) => where))
  const met = new Map<string, number>()
  for (const row of table.rows) {
    const past = readRow(row, grounds)
    if (past.kind === 'refused') {
      problems.push(...past.problems)
      continue
    }
    if (tooWide.has(`row ${row.number}`)) continue
    const blueprint = blueprints.get(past.value.blueprint)
    if (blueprint === undefined) throw new Error(`${past.value.blueprint} was read and is not there`)
    const id = idOf(deps, past.value, met)
    const notes = pastNotes(past.value, blueprint, { id, row: row.number, hourMinor })
    if (notes.kind === 'ok') machines.push({ id, notes: notes.value })
    else problems.push(...notes.problems)
  }
  return { machines, problems: inRowOrder(problems) }
}

const blueprintsOf = async ({ blueprintById, blueprintIds }: CommandDeps): Promise<ReadonlyMap<string, Blueprint>> => {
  const all = await Promise.all((await blueprintIds()).map(async (id) => blueprintById(id)))
  return new Map(all.flatMap((one) => (one === undefined ? [] : [[one.id, one] as const])))
}

/** A name made of what the row says; rows that say the same are told apart by which of them it is. */
const idOf = ({ hash }: ImportDeps, past: PastMachine, met: Map<string, number>): string => {
  const said = canonical(past)
  const before = met.get(said) ?? 0
  met.set(said, before + 1)
  return `past-${hash(`${said} ${before}`).slice(0, 24)}`
}

const rowOf = ({ where }: Problem): number => Number(/^row (\d+)/.exec(where)?.[1] ?? 0)

const inRowOrder = (problems: readonly Problem[]): readonly Problem[] =>
  problems.toSorted((a, b) => rowOf(a) - rowOf(b))

const freshOnes = async ({ store }: ImportDeps, machines: readonly Made[]): Promise<readonly Made[]> => {
  const fresh: Made[] = []
  for (const one of machines) if ((await store.notes(one.id)).length === 0) fresh.push(one)
  return fresh
}

/** Writes some at a time, those of one time all or nothing. Gives what went wrong, or null. */
const writeAll = async (deps: ImportDeps, machines: readonly Made[]): Promise<Problem | null> => {
  for (let from = 0; from < machines.length; from += atOnce) {
    const outcome = await deps.logs.write(
      deps.bench,
      machines.slice(from, from + atOnce).map(({ id, notes }) => ({
        kind: 'machine' as const,
        id,
        expectedVersion: 0,
        entries: notes,
      })),
    )
    if (outcome.kind === 'not-kept') return outcome.problem
    if (outcome.kind !== 'appended') return changedMeanwhile
  }
  return null
}

const changedMeanwhile = problem(
  'changed-meanwhile',
  '',
  'Somebody else took in the same file meanwhile',
  'Import it again: what is there already is left as it is',
)
const noRows = problem('no-rows', 'row 2', 'The file has no machine in it', 'Give each machine a row below the first')
