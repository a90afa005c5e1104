import { exitPolicy, type Policy } from './policy.ts'
import type { PlanMove, PlanProblem, PolicyPoint } from './schema.ts'

const lists = { check: 'checks', repair: 'repairs', exit: 'exits' } as const

/** A policy by names, each point once, the first one first. Outcomes that lead to the same point stand together. */
export const graphOf = (problem: PlanProblem, policy: Policy): readonly PolicyPoint[] => {
  const order: Policy[] = [policy]
  const places = new Map([[policy, 0]])
  const placeOf = (point: Policy): number => {
    const known = places.get(point)
    if (known !== undefined) return known
    places.set(point, order.length)
    return order.push(point) - 1
  }
  const points: PolicyPoint[] = []
  for (let at = 0; at < order.length; at++) {
    const point = order[at]
    points.push({ move: moveOf(problem, point), next: point.kind === 'exit' ? [] : followers(problem, point, placeOf) })
  }
  return points
}

const moveOf = (problem: PlanProblem, point: Policy): PlanMove => {
  const kind = point.kind === 'exit' ? 'exit' : point.step.kind
  const place = point.kind === 'exit' ? point.exit : point.step.index
  return { kind, id: problem[lists[kind]][place].id }
}

const followers = (
  problem: PlanProblem,
  { step, next }: Policy & { kind: 'step' },
  placeOf: (point: Policy) => number,
): PolicyPoint['next'] => {
  const outcomes = new Map<number, string[]>()
  next.forEach((point, outcome) => {
    if (point === null) return
    const place = placeOf(point)
    const named = step.kind === 'check' ? [problem.checks[step.index].outcomes[outcome].id] : []
    outcomes.set(place, [...(outcomes.get(place) ?? []), ...named])
  })
  return [...outcomes].map(([point, ids]) => ({ outcomes: ids, point }))
}

/**
 * The policy that a graph names, read in a problem; null where the problem has no such move, or an outcome that may come up leads
 * nowhere. In its `own` problem an outcome that leads nowhere is one that cannot come up there, and is let stand.
 */
export const policyIn = (problem: PlanProblem, graph: readonly PolicyPoint[], own = false): Policy | null => {
  const made: (Policy | null | undefined)[] = []
  const read = (place: number): Policy | null => {
    if (made[place] === undefined) made[place] = pointOf(problem, graph[place], read, own)
    return made[place]
  }
  return graph.length === 0 ? null : read(0)
}

const pointOf = (
  problem: PlanProblem,
  { move, next }: PolicyPoint,
  read: (place: number) => Policy | null,
  own: boolean,
): Policy | null => {
  const index = problem[lists[move.kind]].findIndex(({ id }) => id === move.id)
  if (index === -1) return null
  if (move.kind === 'exit') return exitPolicy(index)
  const step = { kind: move.kind, index }
  if (move.kind === 'repair') {
    const then = next.length === 1 ? read(next[0].point) : null
    return then === null ? null : { kind: 'step', step, next: [then] }
  }
  const check = problem.checks[index]
  const after = check.outcomes.map(({ id }) => {
    const follower = next.find(({ outcomes }) => outcomes.includes(id))
    return follower === undefined ? null : read(follower.point)
  })
  const whole = own || after.every((point, o) => point !== null || check.likelihood.every((row) => row[o] === 0))
  return whole ? { kind: 'step', step, next: after } : null
}
