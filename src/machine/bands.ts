import type { MeterSpec } from '../engines/belief/index.ts'
import { bandLikelihood, chargingLikelihood, openLikelihood, type MeterPrediction } from './meter-outcome.ts'

/** A band of ohms. `fromOhm` to `toOhm` is where predictions lie in it; the band itself reaches half-way to its neighbours. */
export type OhmBand = {
  readonly id: string
  readonly lowOhm: number
  readonly highOhm: number
  readonly fromOhm: number
  readonly toOhm: number
}

/** What a meter reading can tell apart: bands of ohms, "open", and "rises, then open" where that tells anything. */
export type Band = OhmBand | { readonly id: 'open' | 'charging' }

/** Readings nearer than this on the logarithmic scale would not be told apart by a person or the meter. */
const mergeLog = 0.35
const mostBands = 4
/** Suspects with less probability than this make no bands. */
const leastWeight = 1e-3
/** The scale is logarithmic above this and nearly linear below: a cheap meter and its leads see no finer. */
const floorOhm = 0.5

type Cluster = { low: number; high: number; weight: number }

/**
 * Bands for a check: clusters of what the suspects predict, cut half-way between neighbours. Suspects with next to no
 * probability do not make bands of their own. Ends with "open", and "rises, then open" where only some of those who read
 * open show a capacitor.
 * @param predictions one per suspect, with the suspect's probability as weight
 */
export const bandsOf = (
  predictions: readonly { readonly prediction: MeterPrediction; readonly weight: number }[],
): readonly Band[] => {
  const points = predictions.flatMap(({ prediction, weight }) =>
    prediction.states
      .filter(({ predicted }) => Number.isFinite(predicted.resistanceOhm))
      .map(({ predicted, share }) => ({
        at: scale(predicted.resistanceOhm),
        half: spreadOnScale(predicted),
        weight: weight * share,
      })),
  )
  const clusters = clusterOf(points.filter((point) => point.weight > leastWeight))
  const cuts = clusters.slice(1).map((cluster, i) => unscale((clusters[i].high + cluster.low) / 2))
  const edges = [0, ...cuts, Infinity]
  const numeric = clusters.map(({ low, high }, i): Band => {
    const [lowOhm, highOhm] = [edges[i], edges[i + 1]]
    return { id: `band-${i + 1}`, lowOhm, highOhm, fromOhm: unscale(low), toOhm: unscale(high) }
  })
  const charging: readonly Band[] = tellsCharging(predictions) ? [{ id: 'charging' }] : []
  return [...(clusters.length === 0 ? [anyNumber] : numeric), { id: 'open' }, ...charging]
}

/** Whether a capacitor in sight tells suspects apart: some that would read open show one, and some do not. */
const tellsCharging = (predictions: Parameters<typeof bandsOf>[0]): boolean => {
  let [shown, hidden] = [0, 0]
  for (const { prediction, weight } of predictions)
    for (const { predicted, share, showsCapacitor } of prediction.states) {
      if (Number.isFinite(predicted.resistanceOhm)) continue
      if (showsCapacitor) shown += weight * share
      else hidden += weight * share
    }
  return Math.min(shown, hidden) > leastWeight
}

/** Where every suspect predicts "open", any number is as surprising as another. */
const anyNumber: Band = { id: 'band-1', lowOhm: 0, highOhm: Infinity, fromOhm: 0, toOhm: Infinity }

const scale = (resistanceOhm: number): number => Math.log(resistanceOhm + floorOhm)
const unscale = (at: number): number => Math.max(0, Math.exp(at) - floorOhm)
const spreadOnScale = ({ resistanceOhm, sdOhm }: { resistanceOhm: number; sdOhm: number }): number =>
  (1.28 * Math.hypot(sdOhm, 0.15)) / (resistanceOhm + floorOhm)

const clusterOf = (points: readonly { at: number; half: number; weight: number }[]): readonly Cluster[] => {
  const sorted = points.toSorted((a, b) => a.at - a.half - (b.at - b.half))
  const clusters: Cluster[] = []
  for (const { at, half, weight } of sorted) {
    const last = clusters.at(-1)
    if (last !== undefined && at - half <= last.high + mergeLog) {
      last.high = Math.max(last.high, at + half)
      last.weight += weight
    } else clusters.push({ low: at - half, high: at + half, weight })
  }
  while (clusters.length > mostBands) mergeNearest(clusters)
  return clusters
}

const mergeNearest = (clusters: Cluster[]): void => {
  let best = 0
  for (let i = 1; i + 1 < clusters.length; i++) if (gap(clusters, i) < gap(clusters, best)) best = i
  const [a, b] = clusters.splice(best, 2) as [Cluster, Cluster]
  clusters.splice(best, 0, { low: a.low, high: Math.max(a.high, b.high), weight: a.weight + b.weight })
}

const gap = (clusters: readonly Cluster[], i: number): number => clusters[i + 1].low - clusters[i].high

/** Probability of each band under a prediction; with the chance of jumping they sum to 1. */
export const bandProbabilities = (spec: MeterSpec, bands: readonly Band[], prediction: MeterPrediction): number[] => {
  const apart = bands.some(({ id }) => id === 'charging')
  return bands.map((band) => {
    if ('lowOhm' in band) return bandLikelihood(spec, prediction, band.lowOhm, band.highOhm, apart)
    return band.id === 'open' ? openLikelihood(spec, prediction, apart) : chargingLikelihood(prediction)
  })
}
