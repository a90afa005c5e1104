import type { Kernel } from './kernel.ts'
import type { Rules } from './rules.ts'

/**
 * What one who knew the suspect would do about it: the dearest of the repairs that lead to the best exit, by its place, or
 * the number of repairs plus the place of the exit where no repair pays. Suspects with the same answer need not be told apart.
 */
export const mendOf = (rules: Rules, kernel: Kernel): Int32Array => {
  const cost = Float64Array.from(rules.repairs, (repair) => costOf(rules, repair))
  const { exit, next } = bestWays(rules, kernel, cost)
  return Int32Array.from({ length: kernel.size }, (_, suspect) => {
    let dearest = -1
    let at = suspect
    for (let repair = next[at]; repair !== -1; repair = next[at]!) {
      if (dearest === -1 || cost[repair] > cost[dearest]) dearest = repair
      at = targetOf(kernel, repair, at)
    }
    return dearest === -1 ? rules.repairs.length + exit[at] : dearest
  })
}

const costOf = (rules: Rules, repair: Rules['repairs'][number]): number =>
  repair.costMinor +
  rules.minorPerMin *
    repair.opens.reduce((sum, cover) => sum + rules.openMin[cover] + rules.closeMin[cover], repair.minutes)

type Ways = { readonly exit: Int32Array; readonly next: Int32Array }

/** By suspect, with the truth known: the exit taken if none is repaired, and the repair that comes first or -1. */
const bestWays = (rules: Rules, kernel: Kernel, cost: Float64Array): Ways => {
  const worth = new Float64Array(kernel.size).fill(-Infinity)
  const exit = new Int32Array(kernel.size)
  const next = new Int32Array(kernel.size).fill(-1)
  kernel.payoff.forEach((column, index) => {
    for (let s = 0; s < worth.length; s++) {
      if (column[s] <= worth[s]) continue
      worth[s] = column[s]!
      exit[s] = index
    }
  })
  // Repairs only take faults away, so this ends.
  for (let changed = true; changed;) {
    changed = false
    kernel.transitions.forEach(({ from, to }, repair) => {
      const { success } = rules.repairs[repair]
      if (success === 0) return
      for (let i = 0; i < from.length; i++) {
        const value = worth[to[i]] - cost[repair] / success
        if (value <= worth[from[i]] + 1e-9) continue
        worth[from[i]] = value
        next[from[i]] = repair
        changed = true
      }
    })
  }
  return { exit, next }
}

const targetOf = (kernel: Kernel, repair: number, suspect: number): number => {
  const { from, to } = kernel.transitions[repair]
  return to[from.indexOf(suspect)]
}
