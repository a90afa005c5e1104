/** A place on the drawing's grid: x to the right, y down. */
export type Place = { readonly x: number; readonly y: number }
/** A straight run, level or upright. */
export type Run = { readonly a: Place; readonly b: Place }

const near = 1e-6
const same = (a: number, b: number): boolean => Math.abs(a - b) < near

export const samePlace = (a: Place, b: Place): boolean => same(a.x, b.x) && same(a.y, b.y)
export const isLevel = ({ a, b }: Run): boolean => same(a.y, b.y)
export const lengthOf = ({ a, b }: Run): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y)

/** The runs of a way through several places, those of no length left out. */
export const runsOf = (way: readonly Place[]): readonly Run[] =>
  way.slice(1).flatMap((b, at) => {
    const a = way[at]
    return a === undefined || samePlace(a, b) ? [] : [{ a, b }]
  })

const between = (value: number, end1: number, end2: number): boolean =>
  value > Math.min(end1, end2) - near && value < Math.max(end1, end2) + near

/** True when the place lies on the run, its ends included. */
export const liesOn = (place: Place, { a, b }: Run): boolean =>
  isLevel({ a, b })
    ? same(place.y, a.y) && between(place.x, a.x, b.x)
    : same(place.x, a.x) && between(place.y, a.y, b.y)

/** Length that two runs share, 0 when they only touch or cross. */
export const sharedLength = (one: Run, other: Run): number => {
  if (isLevel(one) !== isLevel(other)) return 0
  const level = isLevel(one)
  if (level ? !same(one.a.y, other.a.y) : !same(one.a.x, other.a.x)) return 0
  const [p1, p2, q1, q2] = level ? [one.a.x, one.b.x, other.a.x, other.b.x] : [one.a.y, one.b.y, other.a.y, other.b.y]
  return Math.max(0, Math.min(Math.max(p1, p2), Math.max(q1, q2)) - Math.max(Math.min(p1, p2), Math.min(q1, q2)))
}

/** True when a level and an upright run cross away from their ends. */
export const crosses = (one: Run, other: Run): boolean => {
  if (isLevel(one) === isLevel(other)) return false
  const [level, upright] = isLevel(one) ? [one, other] : [other, one]
  const at = { x: upright.a.x, y: level.a.y }
  const ends = [level.a, level.b, upright.a, upright.b]
  return liesOn(at, level) && liesOn(at, upright) && !ends.some((end) => samePlace(end, at))
}

/** The middle of the longest run of a way: the place for its symbol. */
export const symbolRun = (way: readonly Place[]): Run => {
  const longest = [...runsOf(way)].sort((one, other) => lengthOf(other) - lengthOf(one))[0]
  const start = way[0] ?? { x: 0, y: 0 }
  return longest ?? { a: start, b: start }
}

export const middleOf = ({ a, b }: Run): Place => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })
