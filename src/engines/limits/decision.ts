import type { Source } from '../../base/source.ts'
import { decisionSources } from '../../facts/decision-rule.ts'

export type Sense = 'at-most' | 'at-least'
export type Zone = 'pass' | 'pass-within-uncertainty' | 'fail-within-uncertainty' | 'fail'

/** The rule that a judgement was made by. Its id stands in the record, so that it can be judged again in the same way. */
export type DecisionRule = { readonly id: string; readonly text: string; readonly sources: readonly Source[] }

export const guardedRule: DecisionRule = {
  id: 'guard-band-once.v1',
  text: 'A pass stays clear of the limit by the expanded uncertainty (k = 2), a fail is beyond it by as much; between them the answer says on which side the reading lies.',
  sources: [decisionSources.budget, decisionSources.decision],
}
export const includedRule: DecisionRule = {
  id: 'uncertainty-in-limit.v1',
  text: 'The limit already allows for the uncertainty of the instrument, so the reading is compared with it as it stands.',
  sources: [decisionSources.budget, decisionSources.once],
}

/** Arithmetic in binary leaves a trace in the sixteenth figure; a reading on the limit is not beyond it. */
const roundoff = 1e-12

/** Where a value lies against a limit with a guard band on either side (ILAC-G8, statement of four kinds). */
export const zoneOf = (value: number, limit: number, sense: Sense, guardBand: number): Zone => {
  const beyond = sense === 'at-most' ? value - limit : limit - value
  const slack = roundoff * Math.max(Math.abs(value), Math.abs(limit))
  if (beyond <= -guardBand + slack) return 'pass'
  if (beyond <= slack) return 'pass-within-uncertainty'
  return beyond <= guardBand + slack ? 'fail-within-uncertainty' : 'fail'
}
