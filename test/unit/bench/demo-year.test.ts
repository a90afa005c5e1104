import { beforeAll, describe, expect, it } from 'vitest'
import { checkNote } from '../../../src/bench/append.ts'
import { fillDemoBench } from '../../../src/bench/demo.ts'
import { demoMachines } from '../../../src/bench/demo-machines.ts'
import { advertsOfYear } from '../../../src/bench/demo/advert-stories.ts'
import { guessOfAdvert } from '../../../src/bench/demo/guesses-of-year.ts'
import { guesses } from '../../../src/bench/demo/guesses.ts'
import { lotsOfYear, yearEndMs, yearStartMs } from '../../../src/bench/demo/lots.ts'
import { colours, makes, modelNames, people, places } from '../../../src/bench/demo/names.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import type { Entry } from '../../../src/bench/logs/entry.ts'
import type { Note, NoteContent } from '../../../src/bench/note.ts'
import type { BenchStores, MonthLine } from '../../../src/bench/ports.ts'
import { partContentSchema, type PartContent } from '../../../src/bench/shelf/part-note.ts'
import { partProblems } from '../../../src/bench/shelf/part-rules.ts'
import type { PartEntry } from '../../../src/bench/shelf/part-state.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'

const filled = async (): Promise<BenchStores> => {
  const stores = memoryBench()
  await fillDemoBench({ stores, blueprintById })
  return stores
}
const everything = async ({ notes, logs }: BenchStores): Promise<string> =>
  JSON.stringify([
    await notes.list('demo'),
    ...(await Promise.all((['part', 'advert', 'price', 'expense'] as const).map((kind) => logs.list('demo', kind)))),
  ])

/** Money in hand that a note brings or takes; nothing of the demonstration is struck out that carries money. */
const cashOfNote = (content: NoteContent): number => {
  switch (content.kind) {
    case 'added':
      return -content.paidMinor - (content.travelMinor ?? 0)
    case 'spent':
      return -content.costMinor
    case 'repaired':
      return content.shelfPart === undefined ? -content.costMinor : 0
    case 'left':
      return content.receivedMinor - (content.feeMinor ?? 0) - (content.postageMinor ?? 0)
    case 'came-back':
      return -content.refundMinor
    default:
      return 0
  }
}
const cashOfPart = (content: PartContent): number => {
  if (content.kind === 'put') return content.origin.kind === 'bought' ? -content.costMinor : 0
  return content.kind === 'sold' ? content.receivedMinor - content.feeMinor - content.postageMinor : 0
}

describe('the year of the demonstration', () => {
  let stores: BenchStores
  let machines: readonly (readonly Note[])[]
  let parts: readonly (readonly Entry[])[]
  beforeAll(async () => {
    stores = await filled()
    const byHand = new Set(demoMachines.map(({ id }) => id))
    machines = (await stores.notes.list('demo')).filter(([first]) => !byHand.has(first.machine))
    parts = await stores.logs.list('demo', 'part')
  })
  const kinds = (logs: readonly (readonly { content: { kind: string } }[])[], kind: string): number =>
    logs.flat().filter(({ content }) => content.kind === kind).length

  it('is the same each time, to the letter', async () => {
    expect(await everything(await filled())).toBe(await everything(stores))
  })

  it('lies in its year, each log in the order of time', () => {
    for (const log of [...machines, ...parts]) {
      const times = log.map(({ at }) => Date.parse(at))
      expect(times.toSorted((a, b) => a - b)).toEqual(times)
      expect(times[0]).toBeGreaterThanOrEqual(yearStartMs)
      expect(times.at(-1)).toBeLessThanOrEqual(yearEndMs)
    }
  })

  it('has what a year of such a trade has', () => {
    const states = machines.map(foldNotes)
    const left = states.flatMap((state) => (state.left === null ? [] : [state.left]))
    const exits = (exit: string): number => left.filter((one) => one.exit === exit).length
    expect(states).toHaveLength(60)
    expect(exits('scrap')).toBe(3)
    expect(exits('break-for-parts')).toBeGreaterThanOrEqual(4)
    expect(exits('sell-working')).toBeGreaterThan(30)
    expect(kinds(machines, 'came-back')).toBe(2)
    expect(left.filter((one) => one.exit !== 'scrap' && one.profitMinor < 0).length).toBeGreaterThanOrEqual(1)
    expect(left.filter((one) => one.profitMinor < 0).length).toBeGreaterThanOrEqual(2)
    const sixWeeksMs = 42 * 24 * 3600e3
    const inHand = states.filter((state) => state.left === null)
    expect(inHand.length).toBeGreaterThanOrEqual(3)
    expect(inHand.length).toBeLessThanOrEqual(7)
    expect(inHand.some(({ addedAt }) => yearEndMs - Date.parse(addedAt) > sixWeeksMs)).toBe(true)
    for (const kind of ['used', 'sold', 'scrapped', 'counted']) expect(kinds(parts, kind), kind).toBeGreaterThan(0)
    expect(machines.flat().some(({ content }) => content.kind === 'repaired' && content.shelfPart !== undefined)).toBe(
      true,
    )
  })

  it('says of each machine that it is invented, and takes all its names from the list', () => {
    for (const log of machines) {
      const [first, second] = log
      expect(second.content).toMatchObject({ kind: 'said', text: expect.stringMatching(/^Invented/) as string })
      if (first.content.kind !== 'added') throw new Error('a log begins with the machine')
      const { name, model } = first.content
      const [what, ...where] = name.split(', ')
      const models = Object.values(modelNames).flat() as readonly string[]
      expect(models).toContain(what.slice(what.indexOf(' ') + 1))
      expect(colours as readonly string[]).toContain(what.split(' ')[0])
      expect([...people, ...places] as readonly string[]).toContain(where.join(', '))
      expect(makes.flatMap((make) => models.map((one) => `${make} ${one}`))).toContain(model)
    }
  })

  it('passes the rules at the door again, note by note and entry by entry', () => {
    for (const log of machines) {
      log.forEach((note, i) => {
        const before = log.slice(0, i)
        const { blueprint } = foldNotes(log)
        expect(checkNote(before, note.content, blueprintById(blueprint)!).kind, note.id).toBe('ok')
      })
    }
    for (const log of parts) {
      const entries = log.map((entry) => ({ ...entry, content: partContentSchema.parse(entry.content) })) as PartEntry[]
      entries.forEach((entry, i) => expect(partProblems(entries.slice(0, i), entry.content), entry.id).toEqual([]))
    }
  })

  it('has books that add up: the money that came in is the profit less what lies in stock', async () => {
    const lines: readonly MonthLine[] = await stores.books.months('demo', 'calendar')
    const account = (...names: readonly string[]): number =>
      lines.filter((line) => names.includes(line.account)).reduce((sum, { minor }) => sum + minor, 0)
    const openMachines = (await stores.books.groups('demo', 'machine')).reduce((sum, one) => sum + one.stockMinor, 0)
    const shelf = (await stores.books.groups('demo', 'part')).reduce((sum, one) => sum + one.stockMinor, 0)
    // Double entry (common practice): all accounts together are nothing; sales stand on the other side.
    expect(lines.reduce((sum, { minor }) => sum + minor, 0)).toBe(0)
    const profitMinor = -account('sales') - account('cost-of-sales', 'fees', 'expenses', 'written-off')
    expect(account('machines')).toBe(openMachines)
    expect(account('shelf')).toBe(shelf)
    expect(account('cash')).toBe(profitMinor - openMachines - shelf)
    // The cash once more, straight from what was written, without the books.
    const all = await stores.notes.list('demo')
    const spending = (await stores.logs.list('demo', 'expense')).flat()
    const fromNotes =
      all.flat().reduce((sum, { content }) => sum + cashOfNote(content), 0) +
      parts.flat().reduce((sum, { content }) => sum + cashOfPart(partContentSchema.parse(content)), 0) -
      spending.reduce((sum, { content }) => sum + Number(content['costMinor']), 0)
    expect(account('cash')).toBe(fromNotes)
  })

  it('earns what a small trade does: something, and no fortune', async () => {
    const lines = await stores.books.months('demo', 'calendar')
    const hours = lines.reduce((sum, { minutes }) => sum + minutes, 0) / 60
    const cash = lines.filter(({ account }) => account === 'cash').reduce((sum, { minor }) => sum + minor, 0)
    // Judgement: between nothing and twice the worth of an hour that a new bench reckons with.
    expect(cash / hours).toBeGreaterThan(0)
    expect(cash / hours).toBeLessThan(1600)
  })

  it('holds of its adverts what the program guesses', { timeout: 60_000 }, async () => {
    const adverts = await advertsOfYear(await lotsOfYear(blueprintById), blueprintById)
    expect(Object.keys(guesses).toSorted()).toEqual(adverts.map(({ id }) => id).toSorted())
    // Some of them, for all take long. What was guessed stays as it was guessed, so a change to the plan may move it a little before
    // `node scripts/write-demo-guesses.mjs` is run again.
    for (const one of adverts.slice(0, 3)) {
      const [kept, now] = [guesses[one.id], await guessOfAdvert(one, blueprintById)]
      expect(kept.likely.map(({ fault }) => fault)).toEqual(now.likely.map(({ fault }) => fault))
      expect(Math.abs(kept.ceilingMinor - now.ceilingMinor), one.id).toBeLessThan(200)
      expect(Math.abs(kept.expectedMinor - now.expectedMinor), one.id).toBeLessThan(200)
      expect(Math.abs(kept.lossChance - now.lossChance), one.id).toBeLessThan(0.05)
    }
    const bought = machines.flatMap(([first]) =>
      first.content.kind === 'added' && first.content.advert !== undefined ? [first.content.advert] : [],
    )
    expect(bought.length).toBeGreaterThanOrEqual(8)
    expect(bought.filter((id) => !(id in guesses))).toEqual([])
  })
})
