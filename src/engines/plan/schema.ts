import { z } from 'zod'

const id = z.string().min(1)
const probability = z.number().min(0).max(1)
const minutes = z.number().min(0).max(100_000)
const minor = z.number().min(-1e9).max(1e9)
const ids = z.array(id)

/** What might be wrong: a set of faults with its probability. The empty set is "nothing wrong". */
const suspect = z.strictObject({ id, faults: ids, probability })

/** Something that must come off before what is behind it can be reached. `after`: covers that come off first. */
const cover = z.strictObject({ id, openMin: minutes, closeMin: minutes, after: ids.default([]) })

/**
 * `gives` and `takes`: marks this outcome sets and removes. A mark is a fact about what has been shown, such as "safe to run".
 * `again`: whether the check may be made again after it, where `times` allows; if not, only after a repair that renews it.
 */
const outcome = z.strictObject({ id, gives: ids.default([]), takes: ids.default([]), again: z.boolean().default(true) })

const check = z.strictObject({
  id,
  minutes,
  costMinor: minor.default(0),
  /** Covers that must be off. */
  coversOff: ids.default([]),
  /** True for a check that needs every cover on, such as running the machine. */
  allCoversOn: z.boolean().default(false),
  /** Marks that must be held. */
  needs: ids.default([]),
  outcomes: z.array(outcome).min(1),
  /** P(outcome | suspect): a row per suspect, a column per outcome; each row sums to 1. */
  likelihood: z.array(z.array(probability)),
  /** How many times it can be made until a repair renews it; each time tells as much as the first. More would show nothing new. */
  times: z.int().min(1).max(9).default(1),
  /** How many of them have been made. */
  made: z.int().min(0).max(9).default(0),
  /** All of them have been made, whatever `made` says. */
  done: z.boolean().default(false),
  /** True when a repair makes the check worth making again. */
  renewedByRepair: z.boolean().default(true),
})

const repair = z.strictObject({
  id,
  minutes,
  costMinor: minor.default(0),
  coversOff: ids.default([]),
  needs: ids.default([]),
  removes: ids,
  /** Probability that it removes those of its faults that are there. */
  success: probability,
  /** Probability and cost of breaking something on the way. */
  breakRisk: probability.default(0),
  breakCostMinor: minor.default(0),
  /** Marks that stand no longer afterwards. */
  takes: ids.default([]),
  /** Checks that it makes worth making again; all that say `renewedByRepair` when left out. */
  renews: ids.optional(),
  done: z.boolean().default(false),
})

const exit = z.strictObject({
  id,
  /** Money in hand by suspect, in the order of the suspects; what is sold or saved less what the exit itself costs. */
  payoffMinor: z.array(minor),
  needs: ids.default([]),
  /** True when the covers must be back on first; closing them is then paid for. */
  allCoversOn: z.boolean().default(true),
})

/**
 * A problem of what to do next with a thing that may be faulty. Maximises expected money.
 * The suspects must be closed under repair: for each suspect and each repair, what is left after the repair is a suspect too.
 */
export const planProblemSchema = z.strictObject({
  format: z.literal('thrum-plan-1'),
  /** What an hour of one's own time is worth. */
  hourMinor: minor,
  faults: ids,
  suspects: z.array(suspect).min(1),
  covers: z.array(cover).default([]),
  /** Covers that are off now. */
  off: ids.default([]),
  /** Marks held now. */
  marks: ids.default([]),
  checks: z.array(check).default([]),
  repairs: z.array(repair).default([]),
  exits: z.array(exit).min(1),
})

export type PlanProblem = z.infer<typeof planProblemSchema>
export type PlanProblemInput = z.input<typeof planProblemSchema>

export type PlanMove =
  | { readonly kind: 'check'; readonly id: string }
  | { readonly kind: 'repair'; readonly id: string }
  | { readonly kind: 'exit'; readonly id: string }

/** One point of a policy: what to do there and, for the outcomes named, at which place of the list it goes on. An exit ends it. */
export type PolicyPoint = {
  readonly move: PlanMove
  /** After a repair one entry without outcomes. Outcomes that cannot come up are not named. */
  readonly next: readonly { readonly outcomes: readonly string[]; readonly point: number }[]
}

/** One move with what following it, and then the best plan known, is worth. */
export type RankedMove = {
  readonly move: PlanMove
  /** Expected money from here on if this move is made next, minutes paid for. */
  readonly expectedMinor: number
  /** Own minutes of the move, covers included. */
  readonly minutes: number
  /** For a check: expected money with its answer (its cost not taken off) less the best expected money without it, 0 or more. */
  readonly informationMinor: number
  /** For a check: probability of each outcome, in the order of the check's outcomes. */
  readonly outcomeProbability: readonly number[]
  /** Probability that the money is below what was asked, under the policy behind the move; null where that was not worked out. */
  readonly lossProbability: number | null
  /** Covers to be taken off first, in order. */
  readonly open: readonly string[]
  /** Covers to be put back first, in order. */
  readonly close: readonly string[]
}

export type ExitWorth = {
  readonly id: string
  /** Expected money of taking this exit now, closing covers paid for. */
  readonly expectedMinor: number
  /** Marks that are missing; empty when the exit can be taken now. */
  readonly missing: readonly string[]
}

export type PlanAnswer = {
  readonly kind: 'planned'
  readonly best: PlanMove
  /** Expected money of the policy behind `best`: a lower bound of the optimum, exact for that policy under the engine's own model. */
  readonly lowerMinor: number
  /** Proved upper bound of the optimum: what one who knew the suspect could expect. */
  readonly upperMinor: number
  /** Standard deviation of the money under the policy: over suspects, outcomes and breakage. */
  readonly spreadMinor: number
  /** Expected own minutes from here on under the policy. */
  readonly expectedMin: number
  /** The policy behind `best`: a graph, its first point first. Its expected money is `lowerMinor`. */
  readonly policy: readonly PolicyPoint[]
  /** Every move that can be made next: `best`, then the others by expected money. */
  readonly ranked: readonly RankedMove[]
  readonly exits: readonly ExitWorth[]
}
