import type { Note } from '../src/bench/note.ts'
import type { OpenStore } from '../src/store/sql/stores-on.ts'
import { p95OfBoth, type Taken } from './percentile.ts'

export type Figure = Taken & { readonly name: string }

/** What stands in the row of a machine. */
export type MachineRow = Readonly<Record<string, unknown>> & { readonly id: string; readonly version: number }

/** What a note to a machine comes down to, with nothing reckoned. */
export type BareAppend = {
  /** Locks the row of the machine if it has that version, puts the note in, and writes the row with all that lists need of it: a transaction, on the disk. */
  readonly append: (row: MachineRow, note: Note) => unknown
  readonly read: (machine: string) => unknown
}

/**
 * p95 of a note to each of so many machines of some thirty notes, beside the bare statements on as many other machines of that length, by
 * turns. Once as a bench does it, with the machine looked at before; once with a log that this program never read, where reading it is part of both.
 */
export const appendFigures = async (
  { notes, db }: OpenStore,
  bare: BareAppend,
  times: number,
): Promise<readonly Figure[]> => {
  const rows: readonly MachineRow[] = await db
    .selectFrom('machine')
    .selectAll()
    .where('version', '>=', 24)
    .where('version', '<=', 36)
    .limit(4 * (times + 1))
    .execute()
  const each = Math.floor(rows.length / 4)
  const next = (part: number): (() => MachineRow) => {
    let i = 0
    return () => rows[part * each + (i++ % each)]
  }
  const ours = async ({ id, version }: MachineRow) => {
    const outcome = await notes.append(id, version, [noteFor(id, version)])
    if (outcome.kind !== 'appended') throw new Error(`${id}: ${outcome.kind}`)
  }
  const theirs = (row: MachineRow) => bare.append(row, noteFor(row.id, row.version))
  const [seen, seenBare, unseen, unseenBare] = [next(0), next(1), next(2), next(3)]
  for (const { id } of rows.slice(0, each)) await notes.notes(id)
  const runs = Math.min(times, each - 1)
  const warm = await p95OfBoth(
    () => ours(seen()),
    () => theirs(seenBare()),
    runs,
  )
  const cold = await p95OfBoth(
    () => ours(unseen()),
    async () => {
      const row = unseenBare()
      await bare.read(row.id)
      await theirs(row)
    },
    runs,
  )
  return [
    { name: 'A note to a machine of 30 notes', ...warm },
    { name: 'The same, its log not read before', ...cold },
  ]
}

const noteFor = (machine: string, version: number): Note => ({
  id: `${machine}.more`,
  machine,
  seq: version + 1,
  at: '2026-03-01T10:00:00.000Z',
  content: { kind: 'said', text: 'Looked at again' },
})

/** The columns of a machine that every note writes. */
export const writtenColumns = (row: MachineRow): readonly string[] =>
  Object.keys(row).filter((name) => !['rank', 'id', 'bench', 'version'].includes(name))
