import type { Blueprint } from '../blueprint/schema.ts'
import { complaintIds, type Complaint } from '../facts/complaints.ts'

/** Probability that a complaint is made although nothing in the machine causes it: a wrong word, the house's own socket. Judgement. */
const leak = 0.02
/** A complaint that would be due is left out about this often, because people name what troubles them most. Judgement. */
const namedShare = 0.5
/** On a machine that does nothing, only these can be noticed besides; the rest is neither evidence for nor against. */
const noticedWhenDead: readonly Complaint[] = ['trips-supply', 'dust-leaks']

/** Probability that each complaint would be made of a machine with these faults: noisy-or over the faults with a leak. */
const complaintProbability = (blueprint: Blueprint, set: readonly number[], complaint: Complaint): number => {
  let none = 1 - leak
  for (const index of set) none *= 1 - (blueprint.faults[index]?.complaints[complaint] ?? 0)
  return 1 - none
}

/**
 * Likelihood of a set of complaints under each suspect. A complaint is an imperfect test: a slip of words is allowed for
 * by the leak, and a symptom that is not mentioned counts only half against a fault that would show it.
 */
export const complaintLikelihood = (
  blueprint: Blueprint,
  sets: readonly (readonly number[])[],
  made: readonly Complaint[],
): number[] => {
  const dead = made.includes('dead')
  const unmade = complaintIds.filter((id) => !made.includes(id) && (!dead || noticedWhenDead.includes(id)))
  return sets.map((set) => {
    let likelihood = 1
    for (const id of made) likelihood *= complaintProbability(blueprint, set, id)
    for (const id of unmade) likelihood *= 1 - namedShare * complaintProbability(blueprint, set, id)
    return likelihood
  })
}
