import type { Blueprint } from '../blueprint/schema.ts'
import type { Attitude } from '../facts/attitudes.ts'
import type { Condition } from '../facts/buying.ts'
import type { Grade } from '../facts/asking.ts'
import type { Complaint } from '../facts/complaints.ts'
import type { ClaimId } from '../facts/seller-claims.ts'
import type { SellerAnswer } from './buying/advert.ts'
import type { TriedResult } from './functions/tried-result.ts'
import type { Costs } from './costs.ts'
import type { MarketPrice } from './market.ts'
import type { Plate } from './plate.ts'
import type { SetPrices } from './set-prices.ts'
import type { GaugeReading } from './air/gauge-reading.ts'
import type { Finding, ProvedLead, Rules } from './proof/finding.ts'
import type { History } from './history-shifts.ts'
import type { ReadingResult } from './result.ts'
import type { ShelfOffer } from './shelf/shelf-offer.ts'

/** Something that happened to the machine and bears on what may be wrong with it. */
export type JobEvent =
  | {
      readonly kind: 'reading'
      readonly note: string
      readonly check: string
      readonly result: ReadingResult
      readonly instrument: string
    }
  /** What a gauge showed on the running machine. */
  | { readonly kind: 'gauge'; readonly note: string; readonly reading: GaugeReading }
  /** What was found in one of the checks after repair. */
  | { readonly kind: 'proof'; readonly note: string; readonly finding: Finding }
  | { readonly kind: 'repaired'; readonly note: string; readonly repair: string; readonly option: string }
  | { readonly kind: 'confirmed'; readonly note: string; readonly fault: string }
  | { readonly kind: 'seen'; readonly note: string; readonly complaints: readonly Complaint[] }
  | { readonly kind: 'opened' | 'closed'; readonly note: string; readonly cover: string }
  | { readonly kind: 'taken-out' | 'put-in'; readonly note: string; readonly part: string }
  /** A function tried that the blueprint has no check for. */
  | { readonly kind: 'tried'; readonly note: string; readonly function: string; readonly result: TriedResult }

/** A machine in hand, as far as the engines need to know it: its blueprint and what its notes add up to. */
export type Job = {
  readonly blueprint: Blueprint
  readonly plate: Plate
  /** What is known of its age and use; left out, nothing is. */
  readonly history?: History
  /** What the seller complained of. */
  readonly complaints: readonly Complaint[]
  /** What else the seller claimed, and answered to the questions asked before buying; left out, nothing. */
  readonly claims?: readonly ClaimId[]
  readonly answers?: readonly SellerAnswer[]
  /** How it looks for its age, which takes a share off the blueprint's prices; left out, good. */
  readonly condition?: Condition
  /** How its parts look, each by the last word on it; left out, none was graded. */
  readonly partLooks?: readonly Grade[]
  /** Parts that are not there. */
  readonly missing: readonly string[]
  /** In the order they happened; struck-out notes are left out. */
  readonly events: readonly JobEvent[]
  /** Covers that are off now. */
  readonly off: readonly string[]
  /** What an hour of one's own time is worth, minor units. */
  readonly hourMinor: number
  /** When that was set, ISO 8601; left out, nobody set it. */
  readonly hourSetAt?: string
  /** Prices set for this machine; left out, the blueprint's hold. */
  readonly prices?: SetPrices
  /** What comparable sales say it fetches; left out or null where there are none, so that the blueprint's range holds. */
  readonly market?: MarketPrice | null
  /** By which rules it is proved, and the lead it has, as noted. */
  readonly rules?: Rules | null
  readonly lead?: ProvedLead | null
  /** How the plan weighs what it might lose; left out, it goes by the average. */
  readonly attitude?: Attitude
  /** What things cost; left out, what they do in the United Kingdom. */
  readonly costs?: Costs
  /** Parts on the shelf that fit or may fit this machine; left out, nothing is known of a shelf. */
  readonly shelf?: readonly ShelfOffer[]
  /** Money put into it so far less money taken out of it, minor units: what it must bring from here on to lose nothing. */
  readonly putInMinor?: number
}
