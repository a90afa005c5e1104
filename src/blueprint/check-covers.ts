import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint } from './schema.ts'

/** A cover cannot, by way of others, come off after itself; and nothing is run with its covers off. */
export const checkCovers = (blueprint: Blueprint): readonly Problem[] => {
  const cycle = coverCycle(blueprint)
  return [
    ...(cycle === null ? [] : [cycleProblem(cycle)]),
    ...blueprint.checks
      .filter((check) => check.kind === 'run' && check.coversOff.length > 0)
      .map((check) => runsOpen(check.id)),
  ]
}

const runsOpen = (id: string): Problem =>
  problem(
    'run-with-cover-off',
    `checks.${id}.coversOff`,
    'A run check asks for a cover to be off',
    'Leave coversOff empty: a machine is run with its covers on',
  )

const cycleProblem = (cycle: readonly string[]): Problem =>
  problem(
    'cover-cycle',
    `covers.${cycle[0] ?? ''}.after`,
    `These covers each wait for the next: ${cycle.join(', ')}`,
    'Take one of them out of an “after”',
  )

/** The first ring of covers found, its first cover repeated at the end, or null. */
const coverCycle = (blueprint: Blueprint): readonly string[] | null => {
  const after = new Map(blueprint.covers.map((cover) => [cover.id, cover.after]))
  const clear = new Set<string>()
  const walk = (id: string, path: readonly string[]): readonly string[] | null => {
    const at = path.indexOf(id)
    if (at >= 0) return [...path.slice(at), id]
    if (clear.has(id)) return null
    for (const next of after.get(id) ?? []) {
      const found = walk(next, [...path, id])
      if (found !== null) return found
    }
    clear.add(id)
    return null
  }
  for (const { id } of blueprint.covers) {
    const found = walk(id, [])
    if (found !== null) return found
  }
  return null
}
