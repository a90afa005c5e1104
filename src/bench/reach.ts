import type { Blueprint, CircuitElement, Cover, Point } from '../blueprint/schema.ts'

/** Covers to take off, in order, to have this one off: those before it first, those already off left out. */
export const coversToOpen = (blueprint: Blueprint, cover: string, off: readonly string[]): readonly Cover[] => {
  const found: Cover[] = []
  const seen = new Set(off)
  const visit = (id: string): void => {
    if (seen.has(id)) return
    seen.add(id)
    const one = blueprint.covers.find((each) => each.id === id)
    if (one === undefined) return
    one.after.forEach(visit)
    found.push(one)
  }
  visit(cover)
  return found
}

/** A probe can be put there with the covers as they are. */
export const isReachable = (blueprint: Blueprint, point: Point, off: readonly string[]): boolean =>
  point.behind === undefined || coversToOpen(blueprint, point.behind, off).length === 0

/** Elements along which a meter reads nearly the same: a probe at either end tells about the same part of the circuit. */
const leads = (element: CircuitElement): boolean =>
  element.kind === 'wire' || element.kind === 'contact' || element.kind === 'fuse'

/** The nearest point along wires, contacts and fuses that a probe reaches with the covers as they are, or null. */
export const nearestReachable = (blueprint: Blueprint, point: string, off: readonly string[]): Point | null => {
  const points = new Map(blueprint.points.map((each) => [each.id, each]))
  const seen = new Set([point])
  const queue = [point]
  for (let node = queue.shift(); node !== undefined; node = queue.shift()) {
    const here = points.get(node)
    if (here !== undefined && isReachable(blueprint, here, off)) return here
    for (const next of neighbours(blueprint, node)) {
      if (seen.has(next)) continue
      seen.add(next)
      queue.push(next)
    }
  }
  return null
}

const neighbours = (blueprint: Blueprint, node: string): readonly string[] =>
  blueprint.circuit.flatMap((element) => {
    if (!leads(element)) return []
    if (element.from === node) return [element.to]
    return element.to === node ? [element.from] : []
  })
