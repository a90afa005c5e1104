import type { Currency } from '../../base/money.ts'
import type { Complaint } from '../../facts/complaints.ts'
import type { ClaimId } from '../../facts/seller-claims.ts'
import type { PlanMove } from '../../engines/plan/index.ts'
import type { Attitude } from '../../facts/attitudes.ts'
import type { Wanted } from './advert.ts'
import type { QuickDeal } from './quick-ceiling.ts'
import type { ReadPhrase } from './seller-words.ts'
import type { Travel } from './travel.ts'

/** Whether a machine is worth buying: plain JSON. Money in minor units of `currency`; ceilings are whole, others as they come out. */
export type BuyingView = {
  readonly currency: Currency
  readonly wanted: Wanted
  /** What an hour is reckoned at: one's own worth of it, or the rate that is wanted. */
  readonly hourMinor: number
  /** How much the plan looked at; 1 is what the machine's own page does. */
  readonly effort: number
  readonly attitude: Attitude
  readonly understood: Understood
  readonly ceiling: CeilingView
  readonly travel: Travel
  readonly price: PriceView
  readonly atAsking: AtAskingView
  /** What would be done first, once bought. */
  readonly first: PlanMove
  readonly nothingWrong: number
  /** The three likeliest faults. */
  readonly faults: readonly BuyingFaultView[]
  /** The four most worth asking. */
  readonly questions: readonly QuestionView[]
  /** To be asked of every machine. */
  readonly alwaysAsk: readonly string[]
  /** Most money by the minute first. */
  readonly spotChecks: readonly SpotCheckView[]
  readonly quick: QuickView
  /** Where the figures come from that the machine's own page does not have. */
  readonly sources: readonly string[]
}

/** What the plan took the seller to say. */
export type Understood = {
  readonly phrases: readonly ReadPhrase[]
  readonly complaints: readonly Complaint[]
  readonly claims: readonly ClaimId[]
  /** Read in the words, but no fault of this blueprint would cause it: left out. */
  readonly doesNotFit: readonly Complaint[]
  /** A sentence where something had to be taken for granted. */
  readonly remark: string | null
}

export type CeilingView = {
  /** The most to pay, a whole amount, 0 or more. */
  readonly minor: number
  /** Before it is cut off at nothing and rounded down. */
  readonly exactMinor: number
  /** Not worth it even for nothing. */
  readonly notEvenForNothing: boolean
  /** By the average alone. */
  readonly onAverageMinor: number
  /** What one who knew the fault could pay: no plan pays more. */
  readonly knowingMinor: number
  /** It is caution that lowers it. */
  readonly loweredByCaution: boolean
}

export type PriceView = {
  /** What the plan reckons that it sells for, mended and cleaned: the mean of the band. */
  readonly meanMinor: number
  readonly medianMinor: number
  /** Nine in ten sell within. */
  readonly ninety: readonly [number, number]
  readonly from: 'blueprint' | 'market'
  readonly conditionShare: number
}

/** Bought at the asking price, by the best plan. Own time and travel are paid for before there is a profit. */
export type AtAskingView = {
  readonly askingMinor: number
  /** Chance that it ends below nothing. */
  readonly lossChance: number
  readonly profitMinor: number
  readonly spreadMinor: number
  /** Nine in ten end within. */
  readonly ninety: readonly [number, number]
  /** Probability of columns of equal width, by their middles, for drawing. */
  readonly density: readonly { readonly minor: number; readonly share: number }[]
  /** Own minutes in all: fetching, bench, selling. */
  readonly minutes: number
  /** What an hour of them brings; null where there are none. */
  readonly anHourMinor: number | null
}

export type BuyingFaultView = {
  readonly id: string
  readonly name: string
  readonly probability: number
  /** The repair that would mend it, where there is one. */
  readonly mend: {
    readonly name: string
    readonly optionName: string
    readonly costMinor: number
    /** Covers included. */
    readonly minutes: number
    readonly success: number
  } | null
  /** What buying at the asking price earns if this is it and the plan is followed; the fault is not known beforehand. */
  readonly profitMinor: number
}

export type ToldView = {
  readonly id: string
  readonly text: string
  readonly probability: number
  readonly ceilingMinor: number
}

export type QuestionView = {
  readonly id: string
  readonly how: 'ask' | 'photo' | 'look'
  readonly text: string
  readonly minutes: number
  /** What the answer is worth before buying at the asking price. */
  readonly valueMinor: number
  /** By how much it moves the ceiling on average. */
  readonly movesMinor: number
  readonly results: readonly ToldView[]
}

export type SpotCheckView = Omit<QuestionView, 'how' | 'text'> & {
  /** A check of the blueprint, or a look that every machine stands. */
  readonly kind: 'check' | 'look'
  readonly name: string
  readonly how: string
}

export type QuickView = {
  /** The quick formula with the trade's usual figures, less the wanted profit. */
  readonly ceilingMinor: number
  readonly agrees: boolean
  readonly usual: QuickDeal
  /** The same figures as the plan has them. */
  readonly planned: QuickDeal
  /** What each figure of the plan, put in the place of the usual one, does to the formula; the largest first. */
  readonly differences: readonly QuickDifference[]
  readonly text: string
}

export type QuickDifference = {
  readonly name: string
  readonly usual: number
  readonly planned: number
  readonly unit: 'share' | 'minor' | 'hours'
  readonly movesMinor: number
}
