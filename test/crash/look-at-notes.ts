import { expect } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { lookOver } from '../support/filled-store.ts'
import { atCopyOf } from './copy-of-store.ts'
import { machineOf, noteAt, stepsOf } from './what-is-written.ts'
import type { Looks, Said } from './what-was-said.ts'

/** How many notes of each machine were said to be kept. */
const keptBy = (all: Said): ReadonlyMap<string, number> => {
  const kept = new Map<string, number>()
  for (const { seed, said } of all) {
    for (const [what, turn, count] of said.map((line) => line.split(' '))) {
      if (what === 'notes') kept.set(machineOf(seed, Number(turn)), Number(count))
      if (what === 'both') kept.set(`${machineOf(seed, Number(turn))}-b`, 1)
    }
  }
  return kept
}

type NoteRow = { readonly machine: string; readonly seq: number; readonly content: string }

/** Looks at what lives wrote: all that was said to be kept, whole and in order, and of what was sent together all or nothing. */
export const looksAtNotes = (): Looks => {
  // What was there at the look before, which no later life may change.
  let earlier = { folder: '', lives: 0, notes: 0 }
  return {
    afterOne: (folder, all) => {
      if (earlier.folder !== folder) earlier = { folder, lives: 0, notes: 0 }
      const fresh = all.slice(earlier.lives)
      const { mine, notes, expenses } = readSome(folder, fresh)
      expect(notes - mine.length, 'those of earlier lives').toBe(earlier.notes)
      isWhole(mine, keptBy(fresh), expenses, `seed ${fresh.at(-1)?.seed}`)
      earlier = { folder, lives: all.length, notes }
      return Promise.resolve()
    },
    whole: lookAtAll,
  }
}

/** What is in the file, by plain questions: the notes of some lives, how many there are in all, and whose expense is there. */
const readSome = (folder: string, lives: Said) =>
  atCopyOf(folder, (all) => {
    // The first life in a folder may be ended before there are tables.
    if (all("select name from sqlite_master where name = 'log_entry'").length === 0)
      return { mine: [], notes: 0, expenses: new Set<string>() }
    const ofLife = 'select machine, seq, content from note where machine >= ? and machine < ? order by machine, seq'
    const [counted] = all('select count(*) as notes from note') as [{ notes: number }]
    const expenses = all("select log from log_entry where kind = 'expense'") as { log: string }[]
    return {
      mine: lives.flatMap(({ seed }) => all(ofLife, `m-${seed}-`, `m-${seed}.`) as NoteRow[]),
      notes: counted.notes,
      expenses: new Set(expenses.map(({ log }) => log)),
    }
  })

const isWhole = (
  rows: readonly NoteRow[],
  kept: ReadonlyMap<string, number>,
  expenses: ReadonlySet<string>,
  where: string,
): void => {
  const logs = new Map<string, NoteRow[]>()
  for (const row of rows) logs.set(row.machine, [...(logs.get(row.machine) ?? []), row])
  for (const [machine, count] of kept) {
    expect(logs.get(machine)?.length ?? 0, `${where}: ${machine}`).toBeGreaterThanOrEqual(count)
  }
  for (const [machine, notes] of logs) {
    const read = notes.map(({ seq, content }) => ({ seq, content: JSON.parse(content) as unknown }))
    const meant = notes.map((_, i) => ({ seq: i + 1, content: noteAt(machine, i + 1).content }))
    expect(read, `${where}: ${machine}`).toEqual(meant)
    // Notes that were sent together are there together.
    const isHalf = machine.endsWith('-b')
    expect(isHalf ? [1] : stepsOf(Number(machine.split('-')[2])), `${where}: ${machine}`).toContain(notes.length)
    const other = isHalf ? machine.slice(0, -2) : machine
    expect(expenses.has(other), `${where}: ${machine}`).toBe(logs.has(`${other}-b`))
  }
}

/** All that any life said, through the store itself; then versions, order, what lists and books keep, and the file by SQLite's own means. */
const lookAtAll: Looks['whole'] = async (folder, all) => {
  const where = `seed ${all.at(-1)?.seed}`
  const store = valueOf(await openStore({ folder }))
  const logs = await store.notes.list('own')
  const expenses = await store.logs.list('own', 'expense')
  await store.close()
  const rows = logs.flatMap((notes) =>
    notes.map(({ machine, seq, content }) => ({ machine, seq, content: JSON.stringify(content) })),
  )
  isWhole(rows, keptBy(all), new Set(expenses.map(([first]) => first.log)), where)
  expect((await lookOver(folder)).problems, where).toEqual([])
}
