import type { EditOf, ElementFate } from './adapt-edits.ts'
import type { Blueprint, CircuitElement } from './schema.ts'
import { onSimplePath, type Edge } from './simple-path.ts'

/** What becomes of each element whose part is not there. */
export type Fates = ReadonlyMap<string, ElementFate>

/**
 * What becomes of the elements of absent parts: as an edit says, or derived. Bridged when it is in series: with it gone a motor
 * of another part would no longer be fed. Taken away when it lies across, is a motor itself, or is not there when sound.
 * Derived from the blueprint as it was, so that the order of the edits is nothing.
 */
export const fatesOf = (blueprint: Blueprint, absent: readonly EditOf<'part-absent'>[]): Fates => {
  const parts = new Set(absent.map(({ part }) => part))
  const said = new Map(absent.flatMap(({ elements = {} }) => Object.entries(elements)))
  const isFed = feeding(blueprint)
  const loads = blueprint.circuit.filter((element) => element.kind === 'motor' && !parts.has(element.part))
  const fed = loads.filter((load) => isFed(load, null))
  return new Map(
    blueprint.circuit
      .filter((element) => parts.has(element.part))
      .map((element) => {
        const inSeries = mayBridge(element) && fed.some((load) => !isFed(load, element.id))
        return [element.id, said.get(element.id) ?? (inSeries ? 'bridged' : 'taken-away')]
      }),
  )
}

const mayBridge = ({ kind }: CircuitElement): boolean => kind !== 'stray' && kind !== 'capacitor' && kind !== 'motor'

const edgeOf = (element: CircuitElement): Edge => [element.from, element.to]

/** Whether a load is on a path from line to neutral, contacts closed and triacs driven, with one element gone. */
const feeding = (blueprint: Blueprint) => {
  const { line, neutral } = blueprint.supply
  const paths = blueprint.circuit.filter(({ kind }) => kind !== 'stray' && kind !== 'capacitor')
  return (load: CircuitElement, gone: string | null): boolean =>
    onSimplePath(edgeOf(load), paths.filter(({ id }) => id !== gone && id !== load.id).map(edgeOf), line, neutral)
}

/**
 * The circuit with the elements gone. The two ends of a bridged element become one point: the supply's own, or else the one
 * with the fewest covers over it. An element that would then begin and end at one point goes too; probes move along.
 */
export const withFates = (blueprint: Blueprint, fates: Fates): Blueprint => {
  if (fates.size === 0) return blueprint
  const bridged = blueprint.circuit.filter(({ id }) => fates.get(id) === 'bridged')
  const now = mergedPoints(blueprint, bridged)
  const circuit = blueprint.circuit
    .filter(({ id }) => !fates.has(id))
    .map((element) => ({ ...element, from: now(element.from), to: now(element.to) }))
    .filter(({ from, to }) => from !== to)
  return {
    ...blueprint,
    circuit,
    points: blueprint.points.filter(({ id }) => now(id) === id),
    supply: Object.fromEntries(
      Object.entries(blueprint.supply).map(([pin, point]) => [pin, now(point)]),
    ) as Blueprint['supply'],
    checks: blueprint.checks.map((check) =>
      check.kind === 'meter' ? { ...check, red: now(check.red), black: now(check.black) } : check,
    ),
  }
}

/** For each point, the one that it has become. */
const mergedPoints = (blueprint: Blueprint, bridged: readonly CircuitElement[]): ((point: string) => string) => {
  const groups: Set<string>[] = []
  for (const { from, to } of bridged) {
    const touched = groups.filter((group) => group.has(from) || group.has(to))
    for (const group of touched) groups.splice(groups.indexOf(group), 1)
    groups.push(new Set([from, to, ...touched.flatMap((group) => [...group])]))
  }
  const rank = pointRank(blueprint)
  const kept = new Map<string, string>()
  for (const group of groups) {
    const [first] = [...group].sort((a, b) => rank(a) - rank(b))
    for (const point of group) kept.set(point, first ?? point)
  }
  return (point) => kept.get(point) ?? point
}

/** Low for the point to be kept: the supply first, then by covers to open, then in the order of the blueprint. */
const pointRank = (blueprint: Blueprint): ((point: string) => number) => {
  const pins = Object.values(blueprint.supply)
  const covers = (cover: string | undefined, seen: readonly string[]): number => {
    if (cover === undefined || seen.includes(cover)) return 0
    const after = blueprint.covers.find(({ id }) => id === cover)?.after ?? []
    return 1 + after.reduce((sum, one) => sum + covers(one, [...seen, cover]), 0)
  }
  const count = blueprint.points.length
  return (point) => {
    if (pins.includes(point)) return -1
    const at = blueprint.points.findIndex(({ id }) => id === point)
    return covers(blueprint.points[at]?.behind, []) * count + at
  }
}

/** Whether line and neutral are joined by nothing but conductors once all contacts are closed. */
export const isShorted = (blueprint: Blueprint): boolean => {
  const { line, neutral } = blueprint.supply
  const reached = new Set([line])
  for (const point of reached) {
    for (const element of blueprint.circuit.filter(conducts)) {
      if (element.from === point) reached.add(element.to)
      if (element.to === point) reached.add(element.from)
    }
  }
  return reached.has(neutral)
}

/** A resistance below this is a joint, a brush or a coil in series, not something that the mains can be put across. */
const jointOhm = 5

const conducts = (element: CircuitElement): boolean => {
  switch (element.kind) {
    case 'wire':
    case 'contact':
    case 'fuse':
    case 'triac':
      return true
    case 'resistor':
    case 'inductor':
      return element.resistanceOhm < jointOhm
    case 'capacitor':
    case 'motor':
    case 'stray':
      return false
  }
}
