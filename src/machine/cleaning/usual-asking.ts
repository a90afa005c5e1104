import type { Currency } from '../../base/money.ts'
import { daysOfMarket, askingView, type AskingView } from '../asking.ts'
import { improvementsFor, usuallyDone } from '../asking-choices.ts'
import type { Job } from '../job.ts'
import { marketOf } from '../market.ts'

const horizonDays = 30

/**
 * What to ask where the bench cannot be asked: by the blueprint's range and what is usual, without a sale or a listing to compare
 * with. Some tenths of a second.
 */
export const usualAsking = (job: Job, currency: Currency, on: string): AskingView => {
  const market = marketOf({ blueprint: job.blueprint, model: '', currency, on, comparables: [] })
  const done = usuallyDone.filter((id) => improvementsFor(job.blueprint).includes(id))
  const choices = { grade: 'B' as const, done, found: [], dayMinor: 0, horizonDays }
  return askingView({ job, market, days: daysOfMarket(market, [], horizonDays), listings: 0, choices })
}
