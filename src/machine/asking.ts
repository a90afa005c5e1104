import { askedByChoice } from '../facts/sale-days.ts'
import { problemText } from '../base/problem.ts'
import { sourceText } from '../base/source-text.ts'
import type { Currency } from '../base/money.ts'
import { runMoney, type AskingPrice, type DaysToSell, type MoneyRequest } from '../engines/money/index.ts'
import { gradeFacts, gradesSource, improvements, type ImprovementId } from '../facts/asking.ts'
import { exitCosts } from '../facts/trade.ts'
import { improvementsFor, type AskingChoices } from './asking-choices.ts'
import { completenessOf, missingShare } from './completeness.ts'
import { costsOfJob } from './costs.ts'
import type { Job } from './job.ts'
import type { Market } from './market.ts'
import { partPriceOf, sparesPriceOf } from './prices.ts'

type DaysTask = Extract<MoneyRequest['do'], { readonly kind: 'days-to-sell' }>
export type Listing = DaysTask['listings'][number]

/** One thing that can be done, and what it does to the price. Money in minor units. */
export type ImprovementView = {
  /** An improvement, or `part:` and the part that is missing. */
  readonly id: string
  readonly name: string
  readonly on: boolean
  /** Whether the price of a machine sold cleaned and working has it in it already. */
  readonly isUsual: boolean
  /** How much dearer it can be offered with it than without it. */
  readonly gainMinor: number
  readonly costMinor: number
  readonly minutes: number
  /** The gain less the cost, for each minute; null where it takes none. */
  readonly perMinuteMinor: number | null
  readonly source: string
}

/** The least to take without losing money, and what it is made of. */
export type Floor = {
  readonly minor: number
  readonly parts: readonly { readonly name: string; readonly minor: number }[]
}

/** What to ask for one machine. Money in minor units; bands hold nine in ten. */
export type AskingView = {
  readonly currency: Currency
  readonly choices: AskingChoices
  readonly completenessShare: number
  /** Its price beside one of grade B that is complete and cleaned. */
  readonly stateShare: number
  /** The price to ask: the one that brings most, rounded. */
  readonly askMinor: number
  readonly sale: { readonly lowMinor: number; readonly medianMinor: number; readonly highMinor: number }
  readonly typical: { readonly lowMinor: number; readonly medianMinor: number; readonly highMinor: number }
  readonly density: Market['density']
  readonly own: number
  readonly seen: number
  /** What the plan reckons with when this price is taken over: the median with all parts there, as it takes those off by itself. */
  readonly reckonMinor: number
  readonly best: AskingPrice
  readonly curve: readonly AskingPrice[]
  /** How many listings the days rest on, and after how many days half of them had sold. */
  readonly listings: number
  readonly medianSeenDays: number | null
  /** What it brings when it is given up on. */
  readonly leftMinor: number
  readonly floor: Floor
  readonly improvements: readonly ImprovementView[]
  readonly restsOn: readonly string[]
  readonly sources: readonly string[]
}

/**
 * How long machines of this market stand at each price, in grade B and complete: what {@link askingView} is worked out from, once
 * for all grades and ticks. Some tenths of a second.
 */
export const daysOfMarket = (
  { currency, medianMinor }: Pick<Market, 'currency' | 'medianMinor'>,
  listings: readonly Listing[],
  horizonDays: number,
): DaysToSell => {
  const task = { kind: 'days-to-sell', currency, medianMinor, listings, horizonDays }
  const answer = runMoney({ format: 'thrum-money-1', do: task })
  if (answer.kind === 'refused') throw new Error(answer.problems.map(problemText).join(' '))
  if (answer.value.kind !== 'days-to-sell') throw new Error('The money engine answered something else')
  return answer.value.answer
}

type Given = {
  readonly job: Job
  readonly market: Market
  readonly days: DaysToSell
  readonly listings: number
  readonly choices: AskingChoices
}

/**
 * What to ask: the market's price in this machine's state, the price of the curve that brings most once the fee, the days on
 * sale and giving up are reckoned in, and what each thing that can still be done adds.
 */
export const askingView = (given: Given): AskingView => {
  const { job, market, days, listings, choices } = given
  const share = stateShareOf(job, choices)
  const scaled = ({ lowMinor, medianMinor, highMinor }: AskingView['sale']): AskingView['sale'] => ({
    lowMinor: Math.round(lowMinor * share),
    medianMinor: Math.round(medianMinor * share),
    highMinor: Math.round(highMinor * share),
  })
  const curve = curveAt(given, share)
  const best = bestOf(curve)
  return {
    currency: market.currency,
    choices,
    completenessShare: completenessNow(job, choices.found),
    stateShare: share,
    askMinor: advertPrice(best.priceMinor),
    reckonMinor: Math.round((market.medianMinor * share) / completenessNow(job, choices.found)),
    sale: scaled(market),
    typical: scaled(market.typical),
    density: market.density.map(({ minor, perMinor }) => ({ minor: minor * share, perMinor: perMinor / share })),
    own: market.own,
    seen: market.seen,
    best,
    curve,
    listings,
    medianSeenDays: days.medianSeenDays,
    leftMinor: leftMinor(job, share),
    floor: floorOf(job, choices),
    improvements: improvementViews(given),
    restsOn: market.restsOn,
    sources: [
      ...new Set([...market.sources, ...days.sources, sourceText(gradesSource), sourceText(askedByChoice.source)]),
    ],
  }
}

const completenessNow = ({ blueprint, missing }: Job, found: readonly string[]): number =>
  completenessOf(
    blueprint,
    missing.filter((id) => !found.includes(id)),
  )

/** What the machine fetches beside one of grade B that is complete, cleaned, and with new filters. */
const stateShareOf = (job: Job, { grade, done, found }: AskingChoices): number =>
  improvementsFor(job.blueprint).reduce(
    (share, id) => share * improvementShare(id, done.includes(id)),
    gradeFacts[grade].share * completenessNow(job, found),
  )

const improvementShare = (id: ImprovementId, on: boolean): number => {
  const { addsShare, isUsual } = improvements[id]
  if (isUsual) return on ? 1 : 1 / (1 + addsShare)
  return on ? 1 + addsShare : 1
}

/** For spares or repair, when it is given up on: what takes off the one price takes off the other by the same share. */
const leftMinor = (job: Job, share: number): number =>
  Math.round(sparesPriceOf({ ...job, condition: 'good' }).minor * share)

/**
 * The price that brings most with other choices, minor units, from a view worked out before: the curve is the market's, so that it
 * only has to be put into another state. Chances and the day it is given up on stay those of the view.
 */
export const priceAt = (
  job: Job,
  { curve, stateShare }: Pick<AskingView, 'curve' | 'stateShare'>,
  choices: AskingChoices,
): number => {
  const days = { curve: curve.map((at) => ({ ...at, priceMinor: at.priceMinor / stateShare })) }
  return bestOf(curveAt({ job, days, choices }, stateShareOf(job, choices))).priceMinor
}

type ForCurve = Pick<Given, 'job' | 'choices'> & { readonly days: Pick<DaysToSell, 'curve'> }

/** The market's curve at this machine's state: the same chances at prices that much lower, and the money that they bring. */
const curveAt = ({ job, days, choices }: ForCurve, share: number): readonly AskingPrice[] => {
  const { saleFeeShare } = costsOfJob(job)
  const left = leftMinor(job, share)
  return days.curve.map((at) => {
    const priceMinor = Math.max(1, Math.round(at.priceMinor * share))
    const brings = at.sellsShare * priceMinor * (1 - saleFeeShare) + (1 - at.sellsShare) * left
    return { ...at, priceMinor, expectedMinor: Math.round(brings - at.meanDays * choices.dayMinor) }
  })
}

/** The cheapest of those that bring most. */
const bestOf = (curve: readonly AskingPrice[]): AskingPrice =>
  curve.reduce((best, one) => (one.expectedMinor > best.expectedMinor ? one : best))

const [fine, coarse, coarseFrom] = [50, 100, 2000]

/** A price as it stands in an advert: halves of a pound below twenty, whole pounds above. Minor units, never nothing. */
export const advertPrice = (minor: number): number => {
  const step = minor < coarseFrom ? fine : coarse
  return Math.max(step, Math.round(minor / step) * step)
}

/** The least to take: put in so far, what is still to be done, and handing it over, with the fee on top. */
const floorOf = (job: Job, { done, found }: AskingChoices): Floor => {
  const { photographMin, listMin, handOverMin } = exitCosts.sellWorking
  const hours = (minutes: number): number => (minutes / 60) * job.hourMinor
  const still = improvementsFor(job.blueprint).filter((id) => done.includes(id))
  const work = still.map((id) => ({
    name: improvements[id].name,
    minor: improvements[id].costMinor + hours(improvements[id].minutes),
  }))
  const parts = found.map((id) => ({ name: partName(job, id), minor: partCost(job, id) }))
  const before = [
    { name: 'Paid and spent so far, less what was taken out of it', minor: Math.max(0, job.putInMinor ?? 0) },
    ...work,
    ...parts,
    { name: 'Photographs, advert, handing over', minor: hours(photographMin + listMin + handOverMin) },
  ].map(({ name, minor }) => ({ name, minor: Math.round(minor) }))
  const sum = before.reduce((total, { minor }) => total + minor, 0)
  const { saleFeeShare } = costsOfJob(job)
  const fee = saleFeeShare >= 1 ? 0 : Math.ceil(sum / (1 - saleFeeShare)) - sum
  return { minor: sum + fee, parts: fee === 0 ? before : [...before, { name: 'Fee of selling it', minor: fee }] }
}

const partName = ({ blueprint }: Job, id: string): string => blueprint.parts.find((part) => part.id === id)?.name ?? id

const partCost = (job: Job, id: string): number => {
  const part = job.blueprint.parts.find((one) => one.id === id)
  return part === undefined ? 0 : Math.round(partPriceOf(job, part)?.minor ?? 0)
}

const improvementViews = (given: Given): readonly ImprovementView[] => {
  const { job, choices } = given
  const toggled = improvementsFor(job.blueprint).map((id) => {
    const { name, costMinor, minutes, isUsual, source } = improvements[id]
    const others = choices.done.filter((one) => one !== id)
    const gainMinor = gainOf(given, { ...choices, done: others }, { ...choices, done: [...others, id] })
    const on = choices.done.includes(id)
    return improvementView({ id, name, on, isUsual, gainMinor, costMinor, minutes, source: sourceText(source) })
  })
  const missing = job.missing
    .filter((id) => missingShare(job.blueprint, id) > 0)
    .map((id) => {
      const others = choices.found.filter((one) => one !== id)
      return improvementView({
        id: `part:${id}`,
        name: `${partName(job, id)}, which is missing`,
        on: choices.found.includes(id),
        isUsual: true,
        gainMinor: gainOf(given, { ...choices, found: others }, { ...choices, found: [...others, id] }),
        costMinor: partCost(job, id),
        minutes: 0,
        source: sourceText(job.blueprint.worth.source),
      })
    })
  return [...toggled, ...missing]
}

const gainOf = (given: Given, without: AskingChoices, having: AskingChoices): number => {
  const bestAt = (choices: AskingChoices): number => bestOf(curveAt(given, stateShareOf(given.job, choices))).priceMinor
  return Math.max(0, bestAt(having) - bestAt(without))
}

const improvementView = (view: Omit<ImprovementView, 'perMinuteMinor'>): ImprovementView => ({
  ...view,
  perMinuteMinor: view.minutes === 0 ? null : (view.gainMinor - view.costMinor) / view.minutes,
})
