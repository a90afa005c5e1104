import type { MachineModel } from '../model.ts'

/** Pairs of faults below this probability are not planned for one by one. */
const smallestPair = 1.5e-3
/** Most pairs that are planned for one by one: the likeliest. */
const mostPairs = 200

/**
 * Suspects the plan tells apart: nothing wrong, every single fault, and the likeliest pairs. An unlikely pair counts as the
 * likelier of its two faults alone, so that no probability is lost. Closed under repair, since every part of a pair is there.
 */
export const keptSuspects = (
  model: MachineModel,
  probability: Float64Array,
): { kept: readonly number[]; shares: readonly number[] } => {
  const { sets } = model
  const pairs = sets.map((_, s) => s).filter((s) => sets[s].length > 1 && probability[s] >= smallestPair)
  const likeliest = new Set(pairs.toSorted((a, b) => probability[b] - probability[a]).slice(0, mostPairs))
  const kept = sets.map((_, s) => s).filter((s) => sets[s].length < 2 || likeliest.has(s))
  const place = new Map(kept.map((s, i) => [s, i]))
  const single = new Map(kept.filter((s) => sets[s].length === 1).map((s) => [sets[s][0], s]))
  const shares = new Array<number>(kept.length).fill(0)
  probability.forEach((p, s) => {
    const standsFor = place.has(s)
      ? s
      : likelierOf(
          sets[s].map((fault) => single.get(fault)!),
          probability,
        )
    const at = place.get(standsFor)!
    shares[at] = shares[at] + p
  })
  return { kept, shares }
}

const likelierOf = (suspects: readonly number[], probability: Float64Array): number =>
  suspects.reduce((best, s) => (probability[s] > probability[best] ? s : best))
