import { sourceText } from '../../base/source-text.ts'
import {
  classPrices,
  classPricesSource,
  enteredWeight,
  priceDoubt,
  priceHalfLife,
  saleDegrees,
  spreadShares,
} from '../../facts/sale-prices.ts'
import { logNormalOfBand, type LogNormal } from './distributions.ts'
import { gridPoint, gridQuantile, type Grid } from './grid.ts'
import type { ComparableSay, PriceBand, PriceEstimate } from './price-answer.ts'
import { placeComparables, type PlacedComparable } from './price-places.ts'
import { spreadsOf } from './price-spreads.ts'
import { treePosterior } from './price-tree.ts'
import { bandFactor, restsOn } from './price-words.ts'
import type { PriceTask } from './request-schema.ts'

/** Points of the logarithm of the price lie this far apart: two per cent. */
const step = 0.02
/** Below this share of belief a price is called odd: about two and a half standard deviations off. */
const oddBelow = 0.4

/**
 * What a machine would fetch, from comparables: hierarchical log-normal model (class, kind, model) with Student-t noise and
 * weights that fade with age. Without comparables the answer is the prior alone.
 * @param task checked: it has a class or a prior, and no sale after its day
 */
export const estimatePrice = (task: PriceTask): PriceEstimate => {
  const prior = priorOf(task)
  const places = placeComparables(task)
  const posterior = treePosterior({
    centre: { mean: Math.log(prior.median), sd: priceDoubt.centre },
    spreads: spreadsOf(prior.sdLog),
    degrees: saleDegrees.value,
    tree: places.tree,
    step,
  })
  const { kind, model } = places.target
  const state = Math.log(task.conditionShare * task.completenessShare)
  const grid = { ...posterior.grid, start: posterior.grid.start + state }
  const next = posterior.nextOf(kind, model)
  const sale = bandOf(grid, next)
  const comparables = places.placed.map((one) => sayOf(one, posterior.believed, Math.exp(state)))
  return {
    sale,
    typical: bandOf(grid, posterior.models[kind][model]),
    bandFactor: bandFactor(sale),
    density: densityOf(grid, next),
    comparables,
    restsOn: restsOn(task, comparables, sale),
    sources: sourcesOf(task),
  }
}

const priorOf = (task: PriceTask): LogNormal => {
  const band = task.prior ?? (task.class === null ? null : classPrices[task.class])
  if (band === null) throw new Error('A price was asked for without a class or a prior')
  return logNormalOfBand(band.lowMinor, band.highMinor)
}

const bandOf = (grid: Grid, shares: Float64Array): PriceBand => {
  const at = (p: number): number => Math.max(1, Math.round(Math.exp(gridQuantile(grid, shares, p))))
  return { medianMinor: at(0.5), half: [at(0.25), at(0.75)], ninety: [at(0.05), at(0.95)] }
}

const drawnShare = 0.0005

/** From the distribution of the logarithm: over the price itself, and without tails too thin to see. */
const densityOf = (grid: Grid, shares: Float64Array): PriceEstimate['density'] => {
  const from = gridQuantile(grid, shares, drawnShare)
  const to = gridQuantile(grid, shares, 1 - drawnShare)
  return [...shares].flatMap((share, i) => {
    const at = gridPoint(grid, i)
    if (at < from || at > to) return []
    const minor = Math.exp(at)
    return [{ minor: Math.round(minor), perMinor: share / grid.step / minor }]
  })
}

const sayOf = (
  { comparable, level, logValue, ageDays, timeShare, place }: PlacedComparable,
  believed: readonly (readonly (readonly number[])[])[],
  state: number,
): ComparableSay => {
  const believedShare = believed[place.kind][place.model][place.index]
  return {
    id: comparable.id,
    level,
    likeMinor: Math.round(Math.exp(logValue) * state),
    ageDays,
    timeShare,
    believedShare,
    weight: timeShare * believedShare,
    isOdd: believedShare < oddBelow,
  }
}

const sourcesOf = ({ prior, comparables }: PriceTask): readonly string[] => {
  const sources = [
    ...(prior === null ? [classPricesSource] : []),
    spreadShares.source,
    priceDoubt.source,
    saleDegrees.source,
    ...(comparables.length > 0 ? [priceHalfLife.source] : []),
    ...(comparables.some(({ from }) => from === 'entered') ? [enteredWeight.source] : []),
  ]
  return sources.map(sourceText)
}
