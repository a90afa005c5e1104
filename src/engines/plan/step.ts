import { makeCheck, makeRepair, type Rules, type Situation } from './rules.ts'

/** A check or a repair, by its place. Exits end everything. */
export type Step = { readonly kind: 'check' | 'repair'; readonly index: number }

/** Makes the step in the situation, short of its outcome; gives back its minutes, covers included. */
export const takeStep = (rules: Rules, situation: Situation, step: Step): number =>
  step.kind === 'check' ? makeCheck(rules, situation, step.index) : makeRepair(rules, situation, step.index)
