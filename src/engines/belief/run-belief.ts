import { ok, type Result } from '../../base/result.ts'
import { checkBeliefProblem } from './check-belief-problem.ts'
import { updateBelief } from './update-belief.ts'

/** A belief as plain JSON. */
export type BeliefAnswer = {
  readonly format: 'thrum-belief-answer-1'
  readonly probability: readonly number[]
  /** Null when some reading was impossible under every suspect and could not be a slip. */
  readonly logEvidence: number | null
  readonly slips: readonly { readonly id: string; readonly probability: number }[]
  readonly unexplained: string | null
}

/** From outside input to a belief in plain arrays, or the reasons why the input is refused. */
export const runBelief = (input: unknown): Result<BeliefAnswer> => {
  const checked = checkBeliefProblem(input)
  if (checked.kind === 'refused') return checked
  const { probability, logEvidence, slips, unexplained } = updateBelief(checked.value)
  return ok({
    format: 'thrum-belief-answer-1',
    probability: [...probability],
    logEvidence: Number.isFinite(logEvidence) ? logEvidence : null,
    slips,
    unexplained,
  })
}
