import type { Source } from '../../base/source.ts'
import { conventionalTimeS, fuseFactors, fuseTimes } from '../../facts/fuses.ts'

/** How long a fuse carries a current before it melts. Second. */
export type FuseTime =
  /** At or below the non-fusing current: it carries this for half an hour at least, and may for ever. */
  | { readonly kind: 'carries'; readonly nonFusingA: number; readonly atLeastS: number }
  /** Between: it may hold for ever, and melts no sooner than this. */
  | { readonly kind: 'may-melt'; readonly shortestS: number }
  | { readonly kind: 'melts'; readonly shortestS: number; readonly longestS: number }

type Point = { readonly currentA: number; readonly timeS: number }

/** Ratings with published points of time against current. */
export const knownFuses: readonly number[] = fuseTimes.map(({ ratingA }) => ratingA)

/**
 * Between what times a BS 1362 fuse melts at a steady current: straight lines in logarithms of both between published points,
 * the non-fusing and the fusing current at half an hour as first points. Beyond the last point of the slow edge its time holds; where
 * only "less than" is published the fast edge is zero. Undefined for a rating without points.
 */
export const fuseTime = (ratingA: number, currentA: number): FuseTime | undefined => {
  const row = fuseTimes.find((one) => one.ratingA === ratingA)
  if (row === undefined) return undefined
  const nonFusingA = fuseFactors.nonFusing * ratingA
  const fusingA = fuseFactors.fusing * ratingA
  const atLeastS = conventionalTimeS.value
  if (currentA <= nonFusingA) return { kind: 'carries', nonFusingA, atLeastS }
  const fast: readonly Point[] = [
    { currentA: nonFusingA, timeS: atLeastS },
    ...row.points.flatMap(({ currentA: at, shortestS }) =>
      shortestS === null ? [] : [{ currentA: at, timeS: shortestS }],
    ),
  ]
  const shortestS = onLogLines(fast, currentA) ?? 0
  if (currentA < fusingA) return { kind: 'may-melt', shortestS }
  const slow: readonly Point[] = [
    { currentA: fusingA, timeS: conventionalTimeS.value },
    ...row.points.map(({ currentA: at, longestS }) => ({ currentA: at, timeS: longestS })),
  ]
  return { kind: 'melts', shortestS, longestS: onLogLines(slow, currentA) ?? slow[slow.length - 1].timeS }
}

/** Time on straight lines in log–log between points; undefined beyond the last. */
const onLogLines = (points: readonly Point[], currentA: number): number | undefined => {
  const after = points.findIndex((point) => point.currentA >= currentA)
  if (after < 0) return undefined
  if (after === 0) return points[0].timeS
  const [from, to] = [points[after - 1], points[after]]
  const share = Math.log(currentA / from.currentA) / Math.log(to.currentA / from.currentA)
  return from.timeS * (to.timeS / from.timeS) ** share
}

/** Where the points come from. */
export const fuseTimeSources: readonly Source[] = [fuseFactors.source, fuseTimes[0].source]
