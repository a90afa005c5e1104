import type { Risk } from '../engines/plan/index.ts'
import type { MoneySum } from '../base/money-sum.ts'
import type { Attitude } from '../facts/attitudes.ts'
import type { ReckonedPrices } from './prices.ts'
import type { FaultRate } from './blueprint-rates.ts'
import type { ShelfOffer } from './shelf/shelf-offer.ts'
import type { StripList } from './shelf/strip-list.ts'

/** What the screen, the command line and the API show of a machine: worked out from its job, never stored. Money in minor units. */

/** One fault that may be there, or "nothing wrong". Several faults can be there at once, so the chances add up to more than one. */
export type SuspectView = {
  /** The fault's id; `nothing` for nothing wrong. */
  readonly id: string
  readonly name: string
  /** Its fault, or none. */
  readonly faults: readonly string[]
  /** Probability that it is there. */
  readonly probability: number
  /** How often it is there before anything is noted of this machine but its age and use; null for nothing wrong. */
  readonly rate: FaultRate | null
  /** What it rests on: how many times likelier each reading and the complaint made it, the strongest first. */
  readonly grounds: readonly Ground[]
}

/** `factor`: how often this is met when the fault is there, over how often when it is not. Above 1 speaks for the fault. */
export type Ground = { readonly note: string | null; readonly text: string; readonly factor: number }

/** Exactly which faults together, with the probability of just these. */
export type TogetherView = {
  readonly id: string
  readonly name: string
  readonly faults: readonly string[]
  readonly probability: number
}

/** What a check would show, in words, and how likely that is now. */
export type ExpectedResult = {
  /** Who shows this: `sound`, or a leading suspect's name. */
  readonly under: string
  readonly suspect: string | null
  /** `4.1 to 17 Ω`, `open`, `jumps when moved`, or a grade's name. */
  readonly text: string
}

/** A result that can be entered for a graded check. */
export type GradeChoice = {
  readonly id: string
  readonly name: string
  readonly probability: number
  readonly danger: boolean
  /** Where the check is read in watts: what counts as this on this plate, as `840 to 1,380 W`. */
  readonly band: string | null
}

type CommonMove = {
  readonly id: string
  readonly name: string
  readonly how: string
  /** Own minutes, covers included. */
  readonly minutes: number
  readonly costMinor: number
  /** Expected money if this is done next. */
  readonly expectedMinor: number
  /** How much less than the next move, 0 for that; below 0 where a cautious bench leaves out what brings more on average. */
  readonly lessMinor: number
  /** Probability that the machine loses money if this is done next; null where that was not asked, or not worked out. */
  readonly lossProbability: number | null
  /** The grounds of `expectedMinor`: of the best move and of exits. */
  readonly sum: MoneySum | null
  /** Why it is worth less than the best move; null for the best, and where the plan gives no figures. */
  readonly lessSum: MoneySum | null
  /** Covers to take off first, in order, with the words for them. */
  readonly open: readonly CoverStep[]
  /** Covers to put back first, in order. */
  readonly close: readonly CoverStep[]
  readonly caution: string | null
  /** One sentence: why this. */
  readonly why: string
}

export type CoverStep = {
  readonly id: string
  readonly name: string
  readonly minutes: number
  readonly fixings: string
  readonly hint: string | null
}

export type CheckMove = CommonMove & {
  readonly kind: 'check'
  readonly checkKind: 'meter' | 'look' | 'run' | 'air'
  /** Meter checks: the two points in plain words. */
  readonly probes: { readonly red: ProbeView; readonly black: ProbeView } | null
  /** `Plug out`, `Handle switch: on`, `Unplug: motor lead` … */
  readonly setUp: readonly string[]
  readonly expected: readonly ExpectedResult[]
  /** What the circuit says of this reading in words: an electronic control in the path, a capacitor, a bleed resistor, a winding. */
  readonly remarks: readonly string[]
  /** Graded checks: what can be entered. Empty for a meter check. */
  readonly choices: readonly GradeChoice[]
  /** What knowing the answer is worth, its cost not taken off. */
  readonly informationMinor: number
}

export type ProbeView = { readonly point: string; readonly name: string }

export type RepairMove = CommonMove & {
  readonly kind: 'repair'
  readonly repair: string
  readonly option: string
  readonly optionName: string
  readonly removes: readonly string[]
  /** Probability that one of its faults is there. */
  readonly needed: number
  readonly success: number
  readonly costLowMinor: number
  readonly costHighMinor: number
  readonly forbidden: string | null
  /** The part of the shelf that it reckons with; `costMinor` is then what that would bring if it were sold instead. */
  readonly shelf: ShelfOffer | null
}

export type ExitMove = CommonMove & {
  readonly kind: 'exit'
  readonly exit: ExitId
  /** Own minutes that it still takes: cleaning, stripping, listing, handing over. Already in `expectedMinor`; `minutes` is only the covers. Null where the plan gives no figures. */
  readonly workMin: number | null
}
export type ExitId = 'sell-working' | 'sell-for-spares' | 'break-for-parts' | 'scrap'
export type MoveView = CheckMove | RepairMove | ExitMove

export type ExitView = {
  readonly id: ExitId
  readonly name: string
  readonly expectedMinor: number
  readonly sum: MoneySum
  /** What is missing before it can be taken, in words; empty when it can be taken now. */
  readonly missing: readonly string[]
}

export type WorthView = {
  /** Best exit that can be taken now. */
  readonly asItStandsMinor: number
  /** Following the best plan from here. */
  readonly carryOnMinor: number
  readonly spreadMinor: number
  readonly upperMinor: number
  readonly expectedMin: number
  readonly bestExit: ExitId
  /** With nothing wrong and sold working, before the work that gets it there. */
  readonly repairedMinor: number
  readonly repairedSum: MoneySum
  /** Put into the machine so far less taken out of it. */
  readonly putInMinor: number
  /** Profit of the whole machine on average if the plan is followed: carried on, less what was put in. */
  readonly profitMinor: number
  /** What is reckoned with for this machine. */
  readonly prices: ReckonedPrices
  /** How risk is weighed, and what that holds the plan to; null for the average. */
  readonly attitude: Attitude
  readonly risk: Risk | null
  /** What caution costs on average: how much more the move that brings most would bring. */
  readonly cautionCostsMinor: number
}

export type RedFlag = { readonly note: string; readonly text: string; readonly mendedBy: readonly string[] }

export type MachineView = {
  /** Faults that may be there, likeliest first, with "nothing wrong" in its place. */
  readonly suspects: readonly SuspectView[]
  /** The likeliest exact sets of faults. */
  readonly together: readonly TogetherView[]
  /** Probability that each fault is there, by fault id; faults below one in ten thousand left out. */
  readonly faults: Readonly<Record<string, number>>
  /** Probability that each part is faulty, by part id. */
  readonly parts: Readonly<Record<string, number>>
  /** When nothing in the blueprint explains the readings: the most surprising one. */
  readonly unexplained: { readonly note: string; readonly text: string } | null
  readonly next: MoveView
  /** The other moves, best first. */
  readonly others: readonly MoveView[]
  readonly exits: readonly ExitView[]
  readonly worth: WorthView
  /** What must be mended before anything is run. */
  readonly redFlags: readonly RedFlag[]
  /** Checks still to be passed before the machine may be run: their names. */
  readonly beforeRunning: readonly string[]
  /** Parts on the shelf that fit or may fit; of each part of the machine the best first. */
  readonly shelf: readonly ShelfOffer[]
  /** What to take off if it is broken for parts, and what each part is worth by that. */
  readonly strip: StripList
}
