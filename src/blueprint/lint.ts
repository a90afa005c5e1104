import { problem, type Problem } from '../base/problem.ts'
import { checkFaults } from './check-faults.ts'
import type { Blueprint, Check } from './schema.ts'

/**
 * What is worth a second look in a blueprint: faults that nothing reveals or mends (a refusal at the door, kept here for
 * blueprints made in code), checks that can never be made, covers with nothing behind them.
 */
export const lintBlueprint = (blueprint: Blueprint): readonly Problem[] => [
  ...checkFaults(blueprint),
  ...blueprint.checks.flatMap((check) => outOfReach(blueprint, check)),
  ...emptyCovers(blueprint),
]

/** A check made with all covers on cannot put its probes behind one, or ask for one to be off. */
const outOfReach = (blueprint: Blueprint, check: Check): readonly Problem[] => {
  const isRun = check.kind === 'run' || (check.kind === 'air' && check.driven !== undefined)
  if (!check.coversOn && !isRun) return []
  const covers = [...check.coversOff, ...coversOverProbes(blueprint, check)]
  if (covers.length === 0) return []
  const what = `It is made with all covers on, and asks for “${covers[0]}” to be off`
  const mend = 'Leave coversOff empty, choose points that no cover is over, or make it a check with the cover off'
  return [problem('check-out-of-reach', `checks.${check.id}`, what, mend)]
}

const coversOverProbes = (blueprint: Blueprint, check: Check): readonly string[] =>
  check.kind === 'meter'
    ? blueprint.points.filter(({ id }) => id === check.red || id === check.black).flatMap(({ behind }) => behind ?? [])
    : []

const emptyCovers = (blueprint: Blueprint): readonly Problem[] => {
  const used = new Set([
    ...[...blueprint.points, ...blueprint.parts].flatMap(({ behind }) => behind ?? []),
    ...[...blueprint.checks, ...blueprint.repairs].flatMap(({ coversOff }) => coversOff),
    ...blueprint.covers.flatMap(({ after }) => after),
  ])
  return blueprint.covers
    .filter(({ id }) => !used.has(id))
    .map(({ id, name }) =>
      problem(
        'cover-over-nothing',
        `covers.${id}`,
        `Nothing is behind “${name}”, and nothing asks for it to be off`,
        'Say what is behind it, or leave it out',
      ),
    )
}
