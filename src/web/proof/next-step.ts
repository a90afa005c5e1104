import type { ProofStepView, ProofView } from '../../machine/proof/proof-view.ts'

/** The first check, in the order of the trade, that failed or is still to be proved; null where none is. */
export const nextStep = ({ steps, verdict }: ProofView): ProofStepView['id'] | null =>
  steps.find(({ id, state }) => state === 'failed' || verdict.toProve.some(({ step }) => step === id))?.id ?? null
