import type { Blueprint, CircuitElement } from '../../blueprint/schema.ts'
import { liesOn, middleOf, runsOf, samePlace, symbolRun, type Place, type Run } from './grid.ts'
import { routeAll, type Routed } from './route.ts'

export type DrawnElement = {
  readonly element: CircuitElement
  /** Number of its part on the drawing, from 1. */
  readonly number: number
  readonly way: readonly Place[]
  /** The run that carries the symbol. */
  readonly run: Run
}
export type DrawnCover = { readonly cover: string; readonly letter: string; readonly low: Place; readonly high: Place }

/** A drawing in grid units; nothing in it knows how large it will be shown. */
export type Layout = {
  readonly elements: readonly DrawnElement[]
  /** Part ids in the order of their numbers. */
  readonly parts: readonly string[]
  readonly covers: readonly DrawnCover[]
  /** Where a way leaves another in the middle of a run. */
  readonly joints: readonly Place[]
  readonly low: Place
  readonly high: Place
}

/** Lays out the circuit of a blueprint on the places its author gave the points. */
export const layOut = (blueprint: Blueprint): Layout => {
  const places = new Map(blueprint.points.map(({ id, at: [x, y] }): [string, Place] => [id, { x, y }]))
  const points = [...places.values()]
  const unit = usualGap(points) / 2
  const ends = blueprint.circuit.flatMap((element) => {
    const [from, to] = [places.get(element.from), places.get(element.to)]
    return from === undefined || to === undefined
      ? []
      : [{ id: element.id, from, to, hasSymbol: element.kind !== 'wire' }]
  })
  const routed = routeAll(ends, points, unit)
  const parts = [...new Set(blueprint.circuit.map(({ part }) => part))]
  const elements = blueprint.circuit.flatMap((element): readonly DrawnElement[] => {
    const way = routed.find(({ id }) => id === element.id)?.way
    return way === undefined ? [] : [{ element, number: parts.indexOf(element.part) + 1, way, run: symbolRun(way) }]
  })
  const all = [...points, ...routed.flatMap(({ way }) => way)]
  return {
    elements,
    parts,
    covers: outlines(blueprint, places, unit),
    joints: jointsOf(routed),
    low: lowOf(all),
    high: highOf(all),
  }
}

/** The usual distance from a point to its nearest neighbour: the median. */
export const usualGap = (points: readonly Place[]): number => {
  const gaps = points
    .map((point) => Math.min(...points.filter((other) => other !== point).map((other) => distance(point, other))))
    .filter((gap) => Number.isFinite(gap) && gap > 0)
    .sort((a, b) => a - b)
  return gaps[Math.floor(gaps.length / 2)] ?? 1
}

const distance = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y)
const lowOf = (places: readonly Place[]): Place => ({
  x: Math.min(...places.map((p) => p.x)),
  y: Math.min(...places.map((p) => p.y)),
})
const highOf = (places: readonly Place[]): Place => ({
  x: Math.max(...places.map((p) => p.x)),
  y: Math.max(...places.map((p) => p.y)),
})

const jointsOf = (routed: readonly Routed[]): readonly Place[] =>
  routed.flatMap(({ id, way }) =>
    way.slice(1, -1).filter((corner) => routed.some((other) => other.id !== id && leaves(corner, other))),
  )

const leaves = (corner: Place, { way }: Routed): boolean =>
  runsOf(way).some((run) => liesOn(corner, run) && !samePlace(corner, run.a) && !samePlace(corner, run.b))

/** Points of one cover that lie this many usual gaps apart or closer are under one outline. */
const togetherGaps = 2.2

const outlines = (blueprint: Blueprint, places: ReadonlyMap<string, Place>, unit: number): readonly DrawnCover[] => {
  const within = togetherGaps * 2 * unit
  const behind = blueprint.covers.map(({ id }) => ({
    id,
    places: blueprint.points.flatMap((point) => (point.behind === id ? [places.get(point.id) ?? { x: 0, y: 0 }] : [])),
  }))
  return behind
    .filter((cover) => cover.places.length > 0)
    .flatMap(({ id, places: under }, at) =>
      clusters(under, within).map((cluster) => ({
        cover: id,
        letter: letterOf(at),
        low: lowOf(cluster),
        high: highOf(cluster),
      })),
    )
}

const letterOf = (at: number): string => String.fromCharCode(65 + (at % 26))

/** Groups of places, each within the given distance of another of its group. */
export const clusters = (places: readonly Place[], within: number): readonly (readonly Place[])[] =>
  places.reduce<readonly (readonly Place[])[]>((groups, place) => {
    const near = groups.filter((group) => group.some((other) => distance(place, other) <= within))
    return [...groups.filter((group) => !near.includes(group)), [...near.flat(), place]]
  }, [])

/** The two halves of a way, cut at the middle of the run that carries the symbol. */
export const halves = ({
  way,
  run,
}: Pick<DrawnElement, 'way' | 'run'>): readonly [readonly Place[], readonly Place[]] => {
  const at = way.findIndex((place, index) => samePlace(place, run.a) && samePlace(way[index + 1] ?? place, run.b))
  const cut = middleOf(run)
  return [
    [...way.slice(0, at + 1), cut],
    [cut, ...way.slice(at + 1)],
  ]
}
