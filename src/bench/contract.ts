import type { Grade } from '../facts/asking.ts'
import type { Complaint } from '../facts/complaints.ts'
import type { RepairBarrier } from '../facts/open-repair-data.ts'
import type { WhereFrom } from '../facts/where-from.ts'
import type { Wear } from '../facts/age-and-wear.ts'
import type { DateMark } from '../machine/stamps/marks.ts'
import type { Plate } from '../machine/plate.ts'
import type { ProvedLead, Rules } from '../machine/proof/finding.ts'
import type { SetPrices } from '../machine/set-prices.ts'
import type { ExitId } from '../machine/view.ts'
import type { Currency } from '../base/money.ts'
import type { Note } from './note.ts'

/** Which set of machines: one's own, or the invented demonstration. */
export type BenchId = 'own' | 'demo'

/** What the notes of one machine add up to. Claimed, seen, confirmed and fixed stay four different things. */
export type MachineState = {
  readonly id: string
  readonly name: string
  /** The blueprint it is read by now: that of its first note, or of the last note that says otherwise. */
  readonly blueprint: string
  readonly plate: Plate
  readonly currency: Currency
  readonly hourMinor: number
  /** When the hour's worth was set, ISO 8601: when the machine came in, or by a later note. */
  readonly hourSetAt: string
  /** Prices that a note has set; the blueprint's hold for the others. */
  readonly prices: SetPrices
  readonly practiceSeed: number | null
  /** Years since it was made and how hard it was used, as far as anyone has said. */
  readonly ageYears: number | null
  readonly wear: Wear | null
  /** Date marks read off its parts. */
  readonly marks: readonly DateMark[]
  /** By which rules it is proved safe, and the lead it has, as far as a note says. */
  readonly rules: Rules | null
  readonly lead: ProvedLead | null
  /** Number of notes; a new note must name it, so that two hands never overwrite each other. */
  readonly version: number
  readonly addedAt: string
  readonly claimed: { readonly complaints: readonly Complaint[]; readonly words: string }
  readonly seen: readonly { readonly note: string; readonly complaints: readonly Complaint[]; readonly text: string }[]
  /** Faults confirmed by a note, by fault id. */
  readonly confirmed: readonly { readonly note: string; readonly fault: string }[]
  /** Repairs done. */
  readonly fixed: readonly { readonly note: string; readonly repair: string; readonly option: string }[]
  readonly missing: readonly string[]
  readonly off: readonly string[]
  /** Parts taken out and laid by, in the order they came out. */
  readonly out: readonly string[]
  /** What was washed and is not found dry yet. */
  readonly drying: readonly Drying[]
  readonly struck: readonly string[]
  /** The model as it stands on the plate; empty where nobody wrote it down. */
  readonly model: string
  /** The make as it stands on the machine; left out where nobody wrote it down. */
  readonly make?: string | undefined
  readonly source: WhereFrom | null
  /** The advert that was weighed before it was bought. */
  readonly advert: string | null
  readonly paidMinor: number
  /** Paid for fetching it, for parts and for materials. */
  readonly spentMinor: number
  /** What of its cost went to the shelf with parts taken off it. */
  readonly toShelfMinor: number
  /** Received for it less what was given back; fees and postage. */
  readonly receivedMinor: number
  readonly feesMinor: number
  readonly minutes: number
  /** The prices it was offered at, in order; one is over when the next begins, or when it left. */
  readonly listed: readonly Listing[]
  /** How it left, while it is gone. `receivedMinor`: this time. `profitMinor`: over all that was paid and received. */
  readonly left: {
    readonly exit: ExitId
    readonly receivedMinor: number
    readonly profitMinor: number
    readonly safety: string
    /** What stood in the way of mending it, where that was said. */
    readonly barrier?: RepairBarrier | undefined
    readonly at: string
  } | null
}

/** Something washed that has not been felt and found dry. `readyAt`: when its time is up, ISO 8601. */
export type Drying = {
  readonly note: string
  readonly task: string
  readonly part: string | null
  readonly from: string
  readonly readyAt: string
}

/** A stretch of time in which a machine was offered at a price. Moments are ISO 8601. */
export type Listing = {
  readonly note: string
  readonly priceMinor: number
  readonly where: string
  readonly grade: Grade
  readonly from: string
  /** Null while it stands. */
  readonly to: string | null
  readonly sold: boolean
}

/** One bench note as it reads: `12:04 Plug pins, switch on: open (should be 4 to 17 Ω)`. */
export type NoteLine = {
  readonly id: string
  readonly seq: number
  readonly at: string
  readonly kind: Note['content']['kind']
  readonly text: string
  /** Who wrote it, where people have names: the id of a person. */
  readonly by?: string | undefined
  readonly struck: boolean
  /** True when this note can be struck out: never the first note or a strike; once the machine has left, only the note of that. */
  readonly canStrike: boolean
}

/** GET /api/bench/:bench/machines */
export type MachineList = {
  /** Those in hand, then a stretch of those that left; each list with the one that came in last first. */
  readonly machines: readonly MachineState[]
  readonly inHand: number
  readonly left: number
  /** What to ask for to get further ones that left; null at the end. */
  readonly after: number | null
}
/** GET /api/bench/:bench/machines/:id, and the answer to each POST that adds a note. */
export type MachineDocument = {
  readonly state: MachineState
  readonly notes: readonly Note[]
  readonly lines: readonly NoteLine[]
}

/** GET /api/blueprints/:id/origin: what a blueprint of one's own was made from. */
export type BlueprintOrigin = {
  readonly savedAt: string
  /** Null when it was written or imported whole. */
  readonly base: { readonly id: string; readonly name: string } | null
  /** What was changed on the base, each in words. */
  readonly differences: readonly string[]
}
