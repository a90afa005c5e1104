import type { Currency } from '../../base/money.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { ComparableSay } from '../../engines/money/index.ts'
import { gradeFacts } from '../../facts/asking.ts'
import { askingView, type AskingView, type Listing } from '../../machine/asking.ts'
import { improvementsFor, usuallyDone, type AskingChoices } from '../../machine/asking-choices.ts'
import type { Job } from '../../machine/job.ts'
import { marketPrice, priceKindOf, type Market, type MarketPrice } from '../../machine/market.ts'
import { looksOfWhole } from '../../machine/whole-looks.ts'
import { listingMedian } from '../../machine/listing-median.ts'
import type { MachineState } from '../contract.ts'
import { dayOf } from '../logs/calendar-day.ts'
import { unknownId } from '../unknown.ts'
import { comparableOf, type ListingRow, type PriceRow } from './comparables.ts'
import { priceRows, type PriceDeps, type PriceRows } from './price-rows.ts'
import type { Reckoner } from './reckoner.ts'

/** What prices are asked of, when, and who works them out. */
export type AskingDeps = PriceDeps & { readonly now: () => string; readonly reckoner: Reckoner }

/** A kind of machine as its price is asked for. */
export type PricedKind = { readonly blueprint: Blueprint; readonly model: string; readonly currency: Currency }

/** What comparable sales say that machines like this fetch; null where there is none, so that the blueprint's range holds. */
export const marketPriceOf = async (deps: AskingDeps, kind: PricedKind): Promise<MarketPrice | null> => {
  const rows = await priceRows(deps, kind.blueprint, deps.now())
  return rows.sales.some(({ currency }) => currency === kind.currency) ? marketPrice(marketOn(deps, kind, rows)) : null
}

/** The same for a machine of the bench; a virtual one is priced by its blueprint, so that it is the same for everybody. */
export const marketPriceOfMachine = async (
  deps: AskingDeps,
  blueprint: Blueprint,
  { model, currency, practiceSeed }: Pick<MachineState, 'model' | 'currency' | 'practiceSeed'>,
): Promise<MarketPrice | null> => (practiceSeed === null ? marketPriceOf(deps, { blueprint, model, currency }) : null)

const marketOn = ({ reckoner, now }: AskingDeps, kind: PricedKind, { sales }: PriceRows): Market =>
  reckoner.market({ ...kind, on: dayOf(now()), comparables: sales.map(comparableOf) })

/** A price with what it counted; `say` is null for one that does not count, such as a sale in other money. */
export type CountedPrice = PriceRow & { readonly say: ComparableSay | null }

/** What to ask for a machine, the prices it rests on and the listings its days rest on. */
export type WhatToAsk = {
  readonly asking: AskingView
  readonly prices: readonly CountedPrice[]
  readonly listings: readonly ListingRow[]
}

/** What is said of the machine; what is left out is as the bench knows it. */
export type ChoicesGiven = { readonly [Name in keyof AskingChoices]?: AskingChoices[Name] | undefined }

/** What to ask for a machine. Refused where a part is said to be found that is not missing. */
export const whatToAsk = async (
  deps: AskingDeps,
  job: Job,
  state: MachineState,
  given: ChoicesGiven = {},
): Promise<Result<WhatToAsk>> => {
  const choices = choicesOf(job, state, given)
  const unknown = choices.found.find((id) => !job.missing.includes(id))
  if (unknown !== undefined) return refused(unknownId('missing part', 'found', unknown, job.missing))
  const kind = { blueprint: job.blueprint, model: state.model, currency: state.currency }
  const rows = await priceRows(deps, job.blueprint, deps.now())
  const market = marketOn(deps, kind, rows)
  const listings = rows.listings.filter(
    ({ kind: one, currency }) => one === priceKindOf(job.blueprint) && currency === state.currency,
  )
  const days = deps.reckoner.days(
    market,
    listings.map((row) => listingOf(row, market)),
    choices.horizonDays,
  )
  const asking = askingView({ job, market, days, listings: listings.length, choices })
  const says = new Map(market.says.map((say) => [say.id, say]))
  return ok({ asking, prices: rows.sales.map((row) => ({ ...row, say: sayOf(says, row, asking) })), listings })
}

/** What it said, its price as if in the state of the machine asked about. */
const sayOf = (
  says: ReadonlyMap<string, ComparableSay>,
  { id }: PriceRow,
  { stateShare }: AskingView,
): ComparableSay | null => {
  const say = says.get(id)
  return say === undefined ? null : { ...say, likeMinor: Math.round(say.likeMinor * stateShare) }
}

/** A listing beside what that machine was likely worth. What its kind fetched then is not kept; what it fetches now stands for it. */
const listingOf = ({ id, priceMinor, grade, completenessShare, days, ended }: ListingRow, market: Market): Listing => {
  const kindMinor = market.medianMinor * gradeFacts[grade].share * completenessShare
  return { id, priceMinor, medianMinor: listingMedian(priceMinor, kindMinor, market), days, ended }
}

const usualHorizonDays = 30

const choicesOf = (job: Job, { listed }: MachineState, given: ChoicesGiven): AskingChoices => {
  const possible = improvementsFor(job.blueprint)
  return {
    grade: given.grade ?? looksOfWhole(listed.at(-1)?.grade, job.condition, job.partLooks ?? []).grade,
    done: (given.done ?? usuallyDone).filter((id) => possible.includes(id)),
    found: given.found ?? [],
    dayMinor: given.dayMinor ?? 0,
    horizonDays: given.horizonDays ?? usualHorizonDays,
  }
}
