import type { Kernel } from './kernel.ts'
import type { ExitRule, Rules } from './rules.ts'

/** The exits worth weighing when stopping: all but those that another, asking for no more, is never worth less than. */
export const stopExits = (rules: Rules, kernel: Kernel): Int32Array =>
  Int32Array.from(rules.exits.keys()).filter(
    (exit) => !rules.exits.some((_, other) => other !== exit && replaces(rules, kernel, other, exit)),
  )

const replaces = (rules: Rules, kernel: Kernel, other: number, exit: number): boolean => {
  if (!asksNoMore(rules.exits[other], rules.exits[exit])) return false
  const worths = kernel.payoff[other]
  const worse = kernel.payoff[exit]
  if (!worths.every((payoff, s) => payoff >= worse[s])) return false
  const alike = asksNoMore(rules.exits[exit], rules.exits[other]) && worths.every((payoff, s) => payoff === worse[s])
  return !alike || other < exit
}

const asksNoMore = (a: ExitRule, b: ExitRule): boolean =>
  a.needs.every((place) => b.needs.includes(place)) && (!a.allCoversOn || b.allCoversOn)
