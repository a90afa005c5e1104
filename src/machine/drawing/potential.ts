import type { Blueprint, CircuitElement } from '../../blueprint/schema.ts'

/** Which conductor of the supply a point belongs to; `neither` for points that only a load or nothing joins to it. */
export type Side = 'line' | 'neutral' | 'earth' | 'neither'

/** A series resistance above this is a load, not part of the conductor. */
const mostSeriesOhm = 10

const conducts = (element: CircuitElement): boolean => {
  switch (element.kind) {
    case 'wire':
    case 'contact':
    case 'fuse':
    case 'inductor':
    case 'triac':
      return true
    case 'resistor':
      return element.resistanceOhm <= mostSeriesOhm
    case 'capacitor':
    case 'motor':
    case 'stray':
      return false
  }
}

const reachedFrom = (start: string, circuit: readonly CircuitElement[]): ReadonlySet<string> => {
  const reached = new Set([start])
  const open = [start]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (const { from, to } of circuit) {
      const next = from === at ? to : to === at ? from : null
      if (next === null || reached.has(next)) continue
      reached.add(next)
      open.push(next)
    }
  }
  return reached
}

/** The side of each point, found by following the conductors from the supply and stopping at the loads. */
export const sidesOf = ({ supply, circuit, points }: Blueprint): ReadonlyMap<string, Side> => {
  const conductors = circuit.filter(conducts)
  const line = reachedFrom(supply.line, conductors)
  const neutral = reachedFrom(supply.neutral, conductors)
  const earth = supply.earth === undefined ? new Set<string>() : reachedFrom(supply.earth, conductors)
  const side = (id: string): Side => {
    const sides = (['line', 'neutral', 'earth'] as const).filter((one) => ({ line, neutral, earth })[one].has(id))
    return sides.length === 1 ? sides[0] : 'neither'
  }
  return new Map(points.map(({ id }) => [id, side(id)]))
}
