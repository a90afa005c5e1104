import {
  crosses,
  lengthOf,
  liesOn,
  middleOf,
  runsOf,
  samePlace,
  sharedLength,
  symbolRun,
  type Place,
  type Run,
} from './grid.ts'

/** Something to be drawn between two places. */
export type Ends = { readonly id: string; readonly from: Place; readonly to: Place; readonly hasSymbol: boolean }
export type Routed = Ends & { readonly way: readonly Place[] }

/** What makes a way worse, in lengths of the drawing's unit. */
const weights = {
  length: 0.1,
  bend: 0.6,
  crossing: 1.5,
  foreignPoint: 14,
  overlap: 8,
  overlapFromJoint: 0.5,
  overSymbol: 10,
}

/**
 * Level and upright ways between the ends, one after another, each kept clear of the points it does not belong to and of the
 * ways before it. Wires that start from one point may run together for a while.
 * @param unit the drawing's usual half distance between neighbouring points; ways are tried in these steps
 */
export const routeAll = (ends: readonly Ends[], points: readonly Place[], unit: number): readonly Routed[] => {
  const routed: Routed[] = []
  for (const one of [...ends].sort((a, b) => detourNeed(a) - detourNeed(b))) {
    const ways = candidates(one, unit)
    const costs = ways.map((way) => costOf(way, one, points, routed, unit))
    const best = ways[costs.indexOf(Math.min(...costs))] ?? [one.from, one.to]
    routed.push({ ...one, way: best })
  }
  return routed
}

/** Straight ones are laid first, then the short ones. */
const detourNeed = ({ from, to }: Ends): number => {
  const [dx, dy] = [Math.abs(from.x - to.x), Math.abs(from.y - to.y)]
  return dx + dy + (dx > 0 && dy > 0 ? 1000 : 0)
}

/** Ways of at most three runs: over each level in turn, and along each upright in turn, up to two steps beyond the ends. */
const candidates = ({ from, to }: Ends, unit: number): readonly (readonly Place[])[] => [
  ...steps(from.y, to.y, unit).map((y) => tidy([from, { x: from.x, y }, { x: to.x, y }, to])),
  ...steps(from.x, to.x, unit).map((x) => tidy([from, { x, y: from.y }, { x, y: to.y }, to])),
]

const steps = (one: number, other: number, unit: number): readonly number[] => {
  const [low, high] = [Math.min(one, other), Math.max(one, other)]
  const count = Math.round((high - low) / unit) + 4
  return [one, other, ...Array.from({ length: count + 1 }, (_, at) => low - 2 * unit + at * unit)]
}

const tidy = (way: readonly Place[]): readonly Place[] => {
  const [first] = way
  return first === undefined ? way : [first, ...runsOf(way).map((run) => run.b)]
}

const costOf = (
  way: readonly Place[],
  ends: Ends,
  points: readonly Place[],
  routed: readonly Routed[],
  unit: number,
): number => {
  const runs = runsOf(way)
  const foreign = points.filter((point) => !samePlace(point, ends.from) && !samePlace(point, ends.to))
  const hit = foreign.filter((point) => runs.some((run) => liesOn(point, run))).length
  const length = runs.reduce((sum, run) => sum + lengthOf(run), 0) / unit
  const own = length * weights.length + (runs.length - 1) * weights.bend + hit * weights.foreignPoint
  return routed.reduce((sum, other) => sum + clash(way, runs, ends, other, unit), own)
}

const clash = (way: readonly Place[], runs: readonly Run[], ends: Ends, other: Routed, unit: number): number => {
  const otherRuns = runsOf(other.way)
  const pairs = runs.flatMap((run) => otherRuns.map((otherRun) => [run, otherRun] as const))
  const crossed = pairs.filter(([run, otherRun]) => crosses(run, otherRun)).length
  const shared = pairs.reduce((sum, [run, otherRun]) => sum + sharedLength(run, otherRun), 0) / unit
  const joined = joints(ends, other) === 1
  const symbols =
    Number(other.hasSymbol && runs.some((run) => liesOn(middleOf(symbolRun(other.way)), run))) +
    Number(ends.hasSymbol && otherRuns.some((run) => liesOn(middleOf(symbolRun(way)), run)))
  return (
    crossed * weights.crossing +
    shared * (joined ? weights.overlapFromJoint : weights.overlap) +
    symbols * weights.overSymbol
  )
}

/** At how many ends the two meet. */
const joints = (one: Ends, other: Ends): number =>
  [one.from, one.to].filter((end) => samePlace(end, other.from) || samePlace(end, other.to)).length
