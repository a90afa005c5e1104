import type { PlanProblem, PolicyPoint } from '../../src/engines/plan/index.ts'
import { consequenceOf, exitWorth, startOf, type Moment } from './brute-plan.ts'

/** One way a job may end under a policy: how likely, with what money and after how many minutes. */
export type Ending = { readonly probability: number; readonly moneyMinor: number; readonly minutes: number }

type Path = {
  readonly probability: number
  readonly spentMinor: number
  readonly minutes: number
  readonly moment: Moment
}

/**
 * Every way a job may end when a policy is followed by its names, move by move, on the plain rules that share no code with the
 * engine: each suspect, each outcome, and whether something breaks, on its own. Throws where a move cannot be made.
 */
export const endingsOf = (plan: PlanProblem, policy: readonly PolicyPoint[]): readonly Ending[] => {
  const walk = (place: number, path: Path): readonly Ending[] => {
    const { move, next } = policy[place]
    if (move.kind === 'exit') return leaving(plan, path, move.id)
    const consequence = consequenceOf(plan, path.moment, move)
    if (consequence === null) throw new Error(`The policy makes ${move.id} where it cannot be made`)
    return consequence.next.flatMap(({ outcome, probability, moment }) => {
      const follower = outcome === null ? next.at(0) : next.find(({ outcomes }) => outcomes.includes(outcome))
      if (follower === undefined) throw new Error(`The policy says nothing after ${move.id} shows ${String(outcome)}`)
      return breakages(plan, move.id, consequence.costMinor).flatMap(({ chance, costMinor }) =>
        walk(follower.point, {
          probability: path.probability * probability * chance,
          spentMinor: path.spentMinor + costMinor,
          minutes: path.minutes + consequence.minutes,
          moment,
        }),
      )
    })
  }
  return walk(0, { probability: 1, spentMinor: 0, minutes: 0, moment: startOf(plan) })
}

/** A repair may break something: two ways, each with its own cost. The plain rules give the mean. */
const breakages = (
  plan: PlanProblem,
  id: string,
  meanMinor: number,
): readonly { readonly chance: number; readonly costMinor: number }[] => {
  const repair = plan.repairs.find((one) => one.id === id)
  if (repair === undefined || repair.breakRisk === 0) return [{ chance: 1, costMinor: meanMinor }]
  const whole = meanMinor - repair.breakRisk * repair.breakCostMinor
  return [
    { chance: 1 - repair.breakRisk, costMinor: whole },
    { chance: repair.breakRisk, costMinor: whole + repair.breakCostMinor },
  ]
}

/** An exit pays by suspect. */
const leaving = (plan: PlanProblem, path: Path, exitId: string): readonly Ending[] => {
  const exit = plan.exits.find(({ id }) => id === exitId)
  const closing = exit?.allCoversOn === true ? path.moment.off : []
  const minutes = plan.covers.filter(({ id }) => closing.includes(id)).reduce((sum, cover) => sum + cover.closeMin, 0)
  return plan.suspects.map((_, s) => {
    const sure = { ...path.moment, belief: plan.suspects.map((__, other) => Number(other === s)) }
    return {
      probability: path.probability * path.moment.belief[s],
      moneyMinor: exitWorth(plan, sure, exitId) - path.spentMinor,
      minutes: path.minutes + minutes,
    }
  })
}
