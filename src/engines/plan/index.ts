/**
 * What to do next with a thing that may be faulty: check, repair or stop, for most expected money.
 * Knows nothing of what the thing is. The only way in.
 */
export { checkPlanProblem } from './check-problem.ts'
export { certify, type Certificate, type CertifyOptions, type PolicyNode } from './certify.ts'
export { openingOrder } from './covers.ts'
export { endingsUnder, type PolicyEnding, type PolicyEndings, type PolicyLeftOut } from './endings.ts'
export { plan, type PlanOptions, type Risk } from './plan.ts'
export {
  planProblemSchema,
  type ExitWorth,
  type PlanAnswer,
  type PlanMove,
  type PlanProblem,
  type PlanProblemInput,
  type PolicyPoint,
  type RankedMove,
} from './schema.ts'
