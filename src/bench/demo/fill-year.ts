import type { CommandDeps } from '../commands.ts'
import type { FindBlueprint } from '../blueprints.ts'
import { advertsOfYear, advertStory } from './advert-stories.ts'
import { lotsOfYear, yearEndMs } from './lots.ts'
import { machineStory } from './machine-story.ts'
import { expenseStories, priceStories } from './round-about.ts'
import { stockStories } from './shelf-stories.ts'
import type { Trade } from './trade.ts'
import { newYear } from './turns.ts'

/**
 * Writes an invented trade of a year: sixty machines from purchase to sale, scrap or the shelf, with all that goes with them. Every
 * entry goes through the use-cases, in the order of time, so that the rules that hold for any bench hold for it. The same each time.
 * Throws when a rule refuses one of its entries.
 * @param pause between two entries, so that other work gets its turn
 */
export const fillYear = async (
  depsAt: (at: string, newId: () => string) => CommandDeps,
  find: FindBlueprint,
  pause: () => Promise<void>,
): Promise<void> => {
  const year = newYear()
  const trade: Trade = { begin: year.begin, kept: [] }
  const lots = await lotsOfYear(find)
  const weighed = await advertsOfYear(lots, find)
  for (const story of [
    ...stockStories(trade),
    ...expenseStories(),
    ...priceStories(find),
    ...weighed.map(advertStory),
    ...lots.map((lot) => machineStory(lot, trade)),
  ]) {
    year.begin(story)
  }
  let ids = 0
  const newId = (): string => `demo-entry-${++ids}`
  await year.run((atMs) => depsAt(new Date(atMs).toISOString(), newId), yearEndMs, pause)
}
