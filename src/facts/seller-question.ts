import type { Source } from '../base/source.ts'

/** Which answers go with which faults. All of it judgement: what sellers have said of machines that were then opened. */
export const sellerQuestionSource: Source = {
  title: 'What sellers answer, by the fault that was then found',
  evidence: 'judgement',
}

/**
 * A way to name faults without naming a blueprint's: `component:` the open data's component that its rate comes from,
 * `complaint:` one that it causes with at least three chances in ten, `comes-and-goes`, `short` (of the circuit).
 */
export type Trait = `component:${string}` | `complaint:${string}` | 'comes-and-goes' | 'short'

export type Answers = Readonly<Record<string, number>>

/**
 * Something to ask the seller, to have photographed, or to look at on the spot. `usual`: probabilities of the answers on a
 * machine without any of the faults below; `under`: the first row that names one of the machine's faults holds.
 * `unsureShare`: the answer does not come or says nothing; `wrongShare`: it is wrong.
 */
export type SellerQuestion = {
  readonly id: string
  readonly how: 'ask' | 'photo' | 'look'
  readonly text: string
  readonly answers: Readonly<Record<string, string>>
  readonly usual: Answers
  readonly under: readonly { readonly of: readonly Trait[]; readonly shows: Answers }[]
  readonly unsureShare: number
  readonly wrongShare: number
  /** Own minutes on the spot; of a message, what writing it takes. */
  readonly minutes: number
}

/** Worth asking of every machine whatever is believed of its fault: who it is and whether it may be sold. Not weighed in money. */
export const alwaysAsk: readonly string[] = Object.freeze([
  'A photograph of the rating plate, straight on: model, volts, watts, class',
  'How old it is, and where it was bought',
  'Are all tools, hose and wand there, and is it yours to sell',
])
