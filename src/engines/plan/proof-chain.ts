import type { Kernel } from './kernel.ts'
import { timesLeft, type Rules } from './rules.ts'

/** One check of the proof that an exit asks for. */
export type ProofStep = {
  readonly check: number
  /** Marks the step is made for. */
  readonly wants: Int32Array
  /** By outcome: whether it gives every mark the step is made for. */
  readonly passing: readonly boolean[]
  /** Marks sure to be set, and marks perhaps cleared, when it passes and when it does not. */
  readonly passGives: Int32Array
  readonly passTakes: Int32Array
  readonly failGives: Int32Array
  readonly failTakes: Int32Array
  /** By outcome: whether it is made once more after it. It fails, may be repeated, and clears nothing that passing would not set. */
  readonly again: readonly boolean[]
}

/** Steps of a proof are kept as bits of one number. */
const mostSteps = 24

/** The checks that give the marks needed, each after those whose marks it needs itself; null when some mark cannot be had. */
export const proofOf = (rules: Rules, kernel: Kernel, needs: Int32Array): readonly ProofStep[] | null => {
  const wanted = new Map<number, number[]>()
  const order: number[] = []
  const open = new Set<number>()
  const visit = (place: number): boolean => {
    const check = giverOf(rules, kernel, place)
    if (check === -1 || open.has(check)) return false
    const places = wanted.get(check)
    if (places !== undefined) return places.includes(place) || places.push(place) > 0
    wanted.set(check, [place])
    open.add(check)
    const fine = rules.checks[check].needs.every(visit)
    open.delete(check)
    order.push(check)
    return fine
  }
  if (!needs.every(visit) || order.length > mostSteps) return null
  const steps = order.map((check) => stepOf(rules, check, Int32Array.from(wanted.get(check) ?? [])))
  return steps.some((step) => undoes(step, steps)) ? null : steps
}

/** Whether a step that passes may clear a mark that another step is made for; such a proof is left to the look-ahead. */
const undoes = (step: ProofStep, steps: readonly ProofStep[]): boolean =>
  steps.some((other) => other.wants.some((place) => step.passTakes.includes(place)))

/** The cheapest check that may give the mark; -1 when none does. */
const giverOf = (rules: Rules, kernel: Kernel, place: number): number => {
  let giver = -1
  let least = Infinity
  rules.checks.forEach((check, index) => {
    const spent = timesLeft(rules, rules.start, index) <= 0 && !check.renewed
    const gives = check.gives.some(
      (marks, outcome) => marks.includes(place) && kernel.likelihood[index][outcome].some((value) => value > 0),
    )
    const cost = check.costMinor + check.minutes * rules.minorPerMin
    if (spent || !gives || cost >= least) return
    giver = index
    least = cost
  })
  return giver
}

const stepOf = (rules: Rules, check: number, wants: Int32Array): ProofStep => {
  const { gives, takes } = rules.checks[check]
  const passing = gives.map((marks) => wants.every((place) => marks.includes(place)))
  const sure = (passes: boolean): Int32Array => {
    const sets = gives.filter((_, outcome) => passing[outcome] === passes)
    return Int32Array.from(sets[0] ?? []).filter((place) => sets.every((marks) => marks.includes(place)))
  }
  const perhaps = (passes: boolean): Int32Array =>
    Int32Array.from(
      takes.flatMap((marks, outcome) =>
        passing[outcome] === passes ? [...marks].filter((place) => !gives[outcome].includes(place)) : [],
      ),
    )
  const passGives = sure(true)
  return {
    check,
    wants,
    passing,
    passGives,
    passTakes: perhaps(true),
    failGives: sure(false),
    failTakes: perhaps(false),
    again: passing.map((passes, outcome) => !passes && isRepeatable(rules, check, outcome, passGives)),
  }
}

const isRepeatable = (rules: Rules, check: number, outcome: number, passGives: Int32Array): boolean => {
  const { times, again, takes, needs } = rules.checks[check]
  const harmless = (place: number): boolean => passGives.includes(place) && !needs.includes(place)
  return times > 1 && again[outcome] && takes[outcome].every(harmless)
}

/** P(the step gives every mark it is made for), by suspect, when made once. */
export const passOf = (kernel: Kernel, step: ProofStep): Float64Array => chanceOf(kernel, step.check, step.passing)

/** P(the step fails in a way after which it is made once more), by suspect. */
export const againOf = (kernel: Kernel, step: ProofStep): Float64Array => chanceOf(kernel, step.check, step.again)

const chanceOf = (kernel: Kernel, check: number, counted: readonly boolean[]): Float64Array => {
  const pass = new Float64Array(kernel.size)
  counted.forEach((counts, outcome) => {
    if (!counts) return
    const column = kernel.likelihood[check][outcome]
    for (let s = 0; s < pass.length; s++) pass[s] = Math.min(1, pass[s] + column[s])
  })
  return pass
}
