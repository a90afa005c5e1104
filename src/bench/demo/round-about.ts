import { mixSeed } from '../../base/mix-seed.ts'
import { seededRandom } from '../../base/random.ts'
import type { FindBlueprint } from '../blueprints.ts'
import { expenseContentSchema } from '../books/expense-note.ts'
import { expenses } from '../books/expenses.ts'
import { priceContentSchema } from '../prices/price-note.ts'
import { seenPrices } from '../prices/seen-prices.ts'
import { grades } from '../../facts/asking.ts'
import { usualDays } from '../../facts/sale-days.ts'
import { between, dayMs, nineInTen, oneOf, toStep, twoInThree } from './draws.ts'
import { yearEndMs, yearSeed, yearStartMs } from './lots.ts'
import { makes, modelNames, town, type YearBlueprint } from './names.ts'
import { settledLog, type Story } from './turns.ts'

/** What the bench spent on no machine in particular. */
const spent: readonly (readonly [day: string, what: string, costMinor: number, minutes: number])[] = [
  ['2025-03-02', 'Screwdriver bits, long ones', 1150, 0],
  ['2025-03-15', 'Second-hand insulation tester', 4800, 40],
  ['2025-04-05', `Table at the market hall, ${town}`, 1000, 180],
  ['2025-05-20', 'Contact cleaner and thread locker', 1340, 0],
  ['2025-06-28', `Table at the market hall, ${town}`, 1000, 200],
  ['2025-08-11', 'Crimps, sleeves, heat-resisting wire', 1685, 0],
  ['2025-09-20', 'Instrument checked', 2500, 30],
  ['2025-10-18', `Table at the market hall, ${town}`, 1000, 190],
  ['2025-12-01', 'Boxes, tape, labels', 920, 20],
  ['2026-01-17', 'Gloves, masks, brushes', 1475, 0],
]

export const expenseStories = (): readonly Story[] => spent.map(expenseStory)

function* expenseStory([day, what, costMinor, minutes]: (typeof spent)[number], place: number): Story {
  const id = `demo-expense-${place + 1}`
  yield {
    atMs: Date.parse(`${day}T20:30:00Z`),
    deed: async (deps) => {
      const content = expenseContentSchema.parse({ kind: 'spent', what, costMinor, currency: 'GBP', day, minutes })
      settledLog(id, await expenses.begin(deps, content, id))
      return null
    },
  }
}

const pricesOfYear = 16
const soldShare = 0.7

/** Prices of others' machines, seen here and there over the year. */
export const priceStories = (find: FindBlueprint): readonly Story[] =>
  Array.from({ length: pricesOfYear }, (_, i) => priceStory(find, i))

function* priceStory(find: FindBlueprint, place: number): Story {
  const id = `demo-price-${place + 1}`
  const random = seededRandom(mixSeed(yearSeed, id))
  const kind = oneOf(random, Object.keys(modelNames) as YearBlueprint[])
  const atMs = Math.round(yearStartMs + ((place + random.uniform()) / pricesOfYear) * (yearEndMs - yearStartMs - dayMs))
  yield {
    atMs,
    deed: async (deps) => {
      const { low, high } = (await find(kind))!.worth.workingMinor
      const priceMinor = Math.max(500, toStep(nineInTen(random, low, high), 100))
      const days = usualDays.rows.find(({ upToMinor }) => priceMinor <= upToMinor)!
      const sold = random.uniform() < soldShare
      const content = priceContentSchema.parse({
        kind: 'seen',
        blueprint: kind,
        model: `${oneOf(random, makes)} ${oneOf(random, modelNames[kind])}`,
        // What nobody bought stood too dear.
        priceMinor: sold ? priceMinor : toStep(priceMinor * between(random, 1.2, 1.6), 100),
        currency: 'GBP',
        day: new Date(atMs).toISOString().slice(0, 10),
        sold,
        days: toStep(twoInThree(random, days.lowDays, days.highDays), 1) + 1,
        grade: oneOf(random, grades),
        place: 'Market hall',
        text: sold ? '' : 'Still there a month on',
      })
      settledLog(id, await seenPrices.begin(deps, content, id))
      return null
    },
  }
}
