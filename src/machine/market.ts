import { moneyText, type Currency } from '../base/money.ts'
import { problemText } from '../base/problem.ts'
import { sourceText } from '../base/source-text.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { runMoney, type ComparableSay, type MoneyRequest, type PriceEstimate } from '../engines/money/index.ts'

type PriceTask = Extract<MoneyRequest['do'], { readonly kind: 'price' }>

/** A sale or a price that was seen, as the money engine takes it. */
export type Comparable = PriceTask['comparables'][number]

/** What of the market the plan reckons with: one sale, cleaned and working with all that belongs to it, looks of grade B. Minor units. */
export type MarketPrice = {
  readonly currency: Currency
  readonly lowMinor: number
  readonly medianMinor: number
  readonly highMinor: number
  /** How many of one's own sales it rests on, and of the prices that were entered. */
  readonly own: number
  readonly seen: number
}

/** What machines like one fetch, with what each comparable said. The band holds nine sales in ten. */
export type Market = MarketPrice & {
  /** What they fetch in the middle: the doubt that more sales would take away. */
  readonly typical: { readonly lowMinor: number; readonly medianMinor: number; readonly highMinor: number }
  /** Density of a sale, per minor unit. */
  readonly density: PriceEstimate['density']
  readonly says: readonly ComparableSay[]
  readonly restsOn: readonly string[]
  readonly sources: readonly string[]
}

/** What is asked about: a machine's blueprint, model and money, and the sales of its class up to this day. */
export type MarketAsked = {
  readonly blueprint: Blueprint
  readonly model: string
  readonly currency: Currency
  /** `2026-03-31` */
  readonly on: string
  readonly comparables: readonly Comparable[]
}

/** Models are the same whatever the case and the spaces they are written with; null where none is named. */
export const modelKey = (model: string): string | null => {
  const plain = model.toLowerCase().replace(/\s+/g, ' ').trim()
  return plain === '' ? null : plain
}

/** The architecture among its class: variants of one blueprint are of the same kind. */
export const priceKindOf = ({ id, worth }: Pick<Blueprint, 'id' | 'worth'>): string => worth.priceKind ?? id

/** More comparables than this the engine does not take; the oldest are left out. */
const mostComparables = 500

/**
 * What the money engine is asked. Where nobody sold anything the blueprint's own range holds, so it is the prior; sales in other
 * money and after the day are left out.
 */
export const marketTask = ({ blueprint, model, currency, on, comparables }: MarketAsked): object => {
  const { low, high } = blueprint.worth.workingMinor
  return {
    kind: 'price',
    currency,
    on,
    prior: { lowMinor: Math.max(1, low), highMinor: Math.max(low + 1, high) },
    machineKind: priceKindOf(blueprint),
    model: modelKey(model),
    comparables: comparables
      .filter((one) => one.soldOn <= on && (one.currency === null || one.currency === currency))
      .toSorted((a, b) => (a.soldOn < b.soldOn ? 1 : a.soldOn > b.soldOn ? -1 : 0))
      .slice(0, mostComparables),
  }
}

/** What machines like this fetch, from comparables; the blueprint's range alone where there are none. Some tenths of a second. */
export const marketOf = (asked: MarketAsked): Market => {
  const task = marketTask(asked)
  const answer = runMoney({ format: 'thrum-money-1', do: task })
  if (answer.kind === 'refused') throw new Error(answer.problems.map(problemText).join(' '))
  if (answer.value.kind !== 'price') throw new Error('The money engine answered something else')
  return marketFrom(answer.value.answer, asked)
}

const marketFrom = (estimate: PriceEstimate, { blueprint, currency, comparables }: MarketAsked): Market => {
  const counted = new Set(estimate.comparables.map(({ id }) => id))
  const of = (from: Comparable['from']): number =>
    comparables.filter((one) => one.from === from && counted.has(one.id)).length
  const { sale, typical } = estimate
  return {
    currency,
    lowMinor: sale.ninety[0],
    medianMinor: sale.medianMinor,
    highMinor: sale.ninety[1],
    own: of('own'),
    seen: of('entered'),
    typical: { lowMinor: typical.ninety[0], medianMinor: typical.medianMinor, highMinor: typical.ninety[1] },
    density: estimate.density,
    says: estimate.comparables,
    restsOn: estimate.restsOn,
    sources: [sourceText(blueprint.worth.source), ...estimate.sources],
  }
}

/** The little that the plan needs of it; null where it rests on no sale, so that the blueprint's range holds. */
export const marketPrice = ({ currency, lowMinor, medianMinor, highMinor, own, seen }: Market): MarketPrice | null =>
  own + seen === 0 ? null : { currency, lowMinor, medianMinor, highMinor, own, seen }

/** `From 3 of your sales and 2 prices you entered, £55.00 to £98.00 for nine in ten` */
export const marketWords = ({ currency, own, seen, lowMinor, highMinor }: MarketPrice): string => {
  const sales = own === 1 ? '1 of your sales' : `${own} of your sales`
  const prices = seen === 1 ? '1 price you entered' : `${seen} prices you entered`
  const from = [...(own > 0 ? [sales] : []), ...(seen > 0 ? [prices] : [])].join(' and ')
  return `From ${from}, ${moneyText(lowMinor, currency)} to ${moneyText(highMinor, currency)} for nine in ten`
}
