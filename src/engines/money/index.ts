/** Money: what a machine would fetch, how long it stands at a price, and what several uncertain sales bring together. */
export type { ExpenseEvent, Log, MachineEvent, ShelfEvent } from './books/events.ts'
export { postMachine } from './books/machine-book.ts'
export { post, postAll, postExpenses } from './books/post.ts'
export { accounts, type Account, type Posting } from './books/posting.ts'
export { shareCost } from './books/share-cost.ts'
export { postShelfPart } from './books/shelf-book.ts'
export { hourlyMinor, monthsOf, summaryOf, type BooksMonth, type BooksSummary } from './books/summary.ts'
export { credibleMeans, type Credible, type GroupSeen } from './credibility.ts'
export type { AskingPrice, DaysToSell } from './days-to-sell.ts'
export { logNormalMean, logNormalOfBand, logNormalQuantile, normalAtMost, type LogNormal } from './distributions.ts'
export { gridMoments, gridQuantile, type Grid } from './grid.ts'
export { kaplanMeier, medianStay, type Stay, type SurvivalStep } from './kaplan-meier.ts'
export {
  globalMargins,
  itemMargins,
  vatWithin,
  type ItemMargin,
  type MarginItem,
  type MarginPeriod,
  type PeriodMargin,
} from './margin-scheme.ts'
export type { Level } from './price-places.ts'
export { treePosterior, type Observation, type Spread, type TreePosterior, type TreeProblem } from './price-tree.ts'
export type { ComparableSay, PriceBand, PriceEstimate } from './price-answer.ts'
export { runMoney, type MoneyAnswer } from './request.ts'
export { moneyRequestSchema, type MoneyRequest } from './request-schema.ts'
export { meanDaysUpTo, medianSaleDays, standingShare, timeAtPrice, type TimeAtPrice } from './sale-time-at.ts'
export { fitSaleTime, type SaleTime, type TimedListing } from './sale-time.ts'
export type { MoneyDistribution } from './sum.ts'
