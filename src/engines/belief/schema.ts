import { z } from 'zod'

const probability = z.number().min(0).max(1)

/** Something that happened to the machine, in the order it happened. */
const reading = z.strictObject({
  kind: z.literal('reading'),
  id: z.string().min(1),
  /** Likelihood of what was read under each suspect (probability or density), were there no slips. */
  likelihood: z.array(z.number().min(0)),
  /** Probability that this reading is a slip of hand or eye. */
  slip: probability.default(0.02),
  /** Likelihood of what was read when it is a slip. */
  slipLikelihood: z.number().positive().default(1),
})

/** A repair: with probability `success` each suspect turns into the suspect at `becomes`. */
const change = z.strictObject({
  kind: z.literal('change'),
  id: z.string().min(1),
  becomes: z.array(z.number().int().min(0)),
  success: probability,
})

export const beliefProblemSchema = z.strictObject({
  format: z.literal('thrum-belief-1'),
  /** Prior weight of each suspect; need not sum to 1. */
  prior: z.array(z.number().min(0)).min(1),
  history: z.array(z.discriminatedUnion('kind', [reading, change])),
})

export type BeliefProblem = z.infer<typeof beliefProblemSchema>
export type BeliefEvent = BeliefProblem['history'][number]

export type Belief = {
  /** Probability of each suspect now; sums to 1. */
  readonly probability: Float64Array
  /** Natural logarithm of the probability of all readings together. */
  readonly logEvidence: number
  /** For each reading in order: the posterior probability that it was a slip. */
  readonly slips: readonly { readonly id: string; readonly probability: number }[]
  /** The reading that hardly any suspect explains, if a slip is the better account of it than any suspect. */
  readonly unexplained: string | null
}
