import { logGamma } from './beta.ts'
import type { BeliefProblem } from './schema.ts'

/** One learned case: what it turned out to be, and the signs it showed. Both count from 0. */
export type Example = { readonly kind: number; readonly signs: readonly number[] }

export type NaiveBayes = {
  /** Prior probability of each kind. */
  readonly prior: readonly number[]
  /** For each sign: its probability among the signs that each kind shows. */
  readonly likelihood: readonly (readonly number[])[]
  /** How many signs' worth the common pattern counts for beside each kind's own. */
  readonly concentration: number
}

/**
 * Learns which signs go with which kind. The signs of a kind are draws from its own distribution, and the distributions
 * of all kinds are drawn around the common one (Dirichlet), so that a kind seldom met leans on what is common to all.
 * How strongly they lean is not chosen: it is the concentration under which the examples are most probable
 * (Dirichlet-multinomial evidence; Minka, Estimating a Dirichlet distribution, 2000, from memory).
 * The prior over kinds is the counts with one added to each.
 */
export const learnNaiveBayes = (examples: readonly Example[], kindCount: number, signCount: number): NaiveBayes => {
  const counts = Array.from({ length: kindCount }, () => new Float64Array(signCount))
  const kinds = new Float64Array(kindCount).fill(1)
  const common = new Float64Array(signCount).fill(0.5)
  for (const { kind, signs } of examples) {
    kinds[kind] += 1
    for (const sign of signs) {
      counts[kind][sign] += 1
      common[sign] += 1
    }
  }
  const base = shares(common)
  const concentration = likeliestConcentration(counts, base)
  const smoothed = counts.map((row) => shares(row.map((count, sign) => count + concentration * base[sign])))
  const likelihood = Array.from(base, (_, sign) => smoothed.map((row) => row[sign]))
  return { prior: [...shares(kinds)], likelihood, concentration }
}

const shares = (weights: Float64Array): Float64Array => {
  const total = weights.reduce((a, b) => a + b, 0)
  return weights.map((weight) => weight / total)
}

const logLow = -3
const logHigh = 7
const golden = (Math.sqrt(5) - 1) / 2
const narrowings = 40

/** Golden-section search on the logarithm of the concentration. */
const likeliestConcentration = (counts: readonly Float64Array[], base: Float64Array): number => {
  let low = logLow
  let high = logHigh
  for (let i = 0; i < narrowings; i++) {
    const left = high - golden * (high - low)
    const right = low + golden * (high - low)
    if (logEvidence(counts, base, Math.exp(left)) > logEvidence(counts, base, Math.exp(right))) high = right
    else low = left
  }
  return Math.exp((low + high) / 2)
}

const logEvidence = (counts: readonly Float64Array[], base: Float64Array, concentration: number): number =>
  counts.reduce((sum, row) => sum + rowEvidence(row, base, concentration), 0)

const rowEvidence = (row: Float64Array, base: Float64Array, concentration: number): number => {
  const total = row.reduce((a, b) => a + b, 0)
  let sum = logGamma(concentration) - logGamma(concentration + total)
  row.forEach((count, sign) => {
    const before = concentration * base[sign]
    if (count > 0) sum += logGamma(before + count) - logGamma(before)
  })
  return sum
}

/** Probability that a sign was put down wrongly: the tag, or what its writer took it for. Judgement. */
const wrongSign = 0.02

/** The belief problem of a case that shows these signs: kinds are the suspects, each sign is a reading. */
export const signsProblem = ({ prior, likelihood }: NaiveBayes, signs: readonly number[]): BeliefProblem => ({
  format: 'thrum-belief-1',
  prior: [...prior],
  history: signs.map((sign) => ({
    kind: 'reading',
    id: `sign-${sign}`,
    likelihood: [...likelihood[sign]],
    slip: wrongSign,
    slipLikelihood: 1 / likelihood.length,
  })),
})
