import type { Kernel } from './kernel.ts'
import { timesLeft, type Rules } from './rules.ts'

/** By mark place and suspect: at most the probability that making each check as often as it can be made shows the mark. */
export type ShownMarks = {
  /** With the checks still to be made. */
  readonly now: (place: number, suspect: number) => number
  /** With every check that a repair would renew as well. */
  readonly ever: (place: number, suspect: number) => number
}

export const shownMarks = (rules: Rules, kernel: Kernel): ShownMarks => {
  const left = (check: number): number => timesLeft(rules, rules.start, check)
  const now = shownBy(rules, kernel, left)
  const ever = shownBy(rules, kernel, (check) =>
    rules.checks[check].renewed ? rules.checks[check].times : left(check),
  )
  return {
    now: (place, suspect) => now.get(place)?.[suspect] ?? 0,
    ever: (place, suspect) => ever.get(place)?.[suspect] ?? 0,
  }
}

/** Outcomes of one suspect are independent, so `n` tries show what one shows with chance p with chance 1 − (1 − p)ⁿ. */
const shownBy = (
  rules: Rules,
  kernel: Kernel,
  timesOf: (check: number) => number,
): ReadonlyMap<number, Float64Array> => {
  const shown = new Map<number, Float64Array>()
  rules.checks.forEach((check, index) => {
    const times = timesOf(index)
    if (times <= 0) return
    for (const place of new Set(check.gives.flatMap((places) => [...places]))) {
      const sum = shown.get(place) ?? new Float64Array(kernel.size)
      const once = kernel.likelihood[index].filter((_, outcome) => check.gives[outcome].includes(place))
      for (let s = 0; s < kernel.size; s++) {
        const chance = once.reduce((total, column) => total + column[s], 0)
        sum[s] = Math.min(1, sum[s] + 1 - Math.max(0, 1 - chance) ** times)
      }
      shown.set(place, sum)
    }
  })
  return shown
}

/**
 * At least what the checks cost that must be made to earn marks: every check that alone gives one of them, and the checks that
 * those need in turn for marks not held at the start, plus the dearest "cheapest giver" of the marks with several givers.
 * Takes and keeps results by the marks asked for, as bits over `needs`.
 */
export const proofCosts = (rules: Rules, needs: Int32Array): ((earned: number) => number) => {
  const known = new Map<number, number>([[0, 0]])
  return (earned) => {
    const before = known.get(earned)
    if (before !== undefined) return before
    const cost = leastProofCost(
      rules,
      [...needs].filter((_, i) => (earned & (1 << i)) !== 0),
    )
    known.set(earned, cost)
    return cost
  }
}

const leastProofCost = (rules: Rules, earned: readonly number[]): number => {
  const forced = new Set<number>()
  const shared: (readonly number[])[] = []
  const asked = new Set(earned)
  for (const place of asked) {
    const givers = giversOf(rules, place)
    if (givers.length > 1) shared.push(givers)
    const [only] = givers
    if (givers.length !== 1 || forced.has(only)) continue
    forced.add(only)
    for (const need of rules.checks[only].needs) if (rules.start[need] === 0) asked.add(need)
  }
  const sum = [...forced].reduce((total, check) => total + costOf(rules, check), 0)
  const others = shared
    .filter((givers) => !givers.some((check) => forced.has(check)))
    .map((givers) => Math.min(...givers.map((check) => costOf(rules, check))))
  return sum + Math.max(0, ...others)
}

const giversOf = (rules: Rules, place: number): readonly number[] =>
  [...rules.checks.keys()].filter((check) => rules.checks[check].gives.some((places) => places.includes(place)))

const costOf = (rules: Rules, check: number): number => {
  const { costMinor, minutes } = rules.checks[check]
  return Math.max(0, costMinor + minutes * rules.minorPerMin)
}
