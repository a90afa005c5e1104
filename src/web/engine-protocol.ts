import type { Problem } from '../base/problem.ts'
import type { Result } from '../base/result.ts'
import type { AppliedNotes, MadeNote } from '../bench/apply-notes.ts'
import type { MachineDocument, MachineState } from '../bench/contract.ts'
import type { JobSettings } from '../bench/costs.ts'
import type { CleanView } from '../bench/cleaning/clean-view.ts'
import type { Guess } from '../bench/adverts/advert-note.ts'
import type { Settings } from '../bench/settings.ts'
import type { Advert, AdvertInput, BuyingView } from '../machine/buying/index.ts'
import type { Note } from '../bench/note.ts'
import type { AnswerableFunctions } from '../bench/functions/functions-view.ts'
import type { PhotosView } from '../bench/photos/machine-photos.ts'
import type { StripView } from '../bench/stripping/strip-view.ts'
import type { Films } from '../bench/story/chapters.ts'
import type { PartState } from '../bench/shelf/part-state.ts'
import type { SharesAsked } from '../bench/shelf/take-off-shares.ts'
import type { Held } from '../bench/shelf/at-hand.ts'
import type { Edit } from '../blueprint/adapt-edits.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { LeadChoice, ListedCable } from '../engines/limits/index.ts'
import type { CopperAnswer, MeasuredCopper } from '../machine/proof/cable-copper.ts'
import type { Complaint } from '../facts/complaints.ts'
import type { Region } from '../facts/regions.ts'
import type { AirRig } from '../machine/air/air-rig.ts'
import type { AirView } from '../machine/air/air-view.ts'
import type { GaugeReading } from '../machine/air/gauge-reading.ts'
import type { FaultShows } from '../machine/fault-shows.ts'
import type { AskingView } from '../machine/asking.ts'
import type { MarketPrice } from '../machine/market.ts'
import type { Plate } from '../machine/plate.ts'
import type { LookAlikes } from '../machine/look-alikes.ts'
import type { FaultRate } from '../machine/blueprint-rates.ts'
import type { ProofView } from '../machine/proof/proof-view.ts'
import type { ReadingResult } from '../machine/result.ts'
import type { DateMark, MarksAnswer } from '../machine/stamps/marks.ts'
import type { Undertaking } from '../machine/undertaking.ts'
import type { Onward, PossibleResults, UnfoldStep } from '../machine/unfold.ts'
import type { ExitId, MachineView } from '../machine/view.ts'

/** A machine as the worker needs it. */
export type EngineJob = {
  readonly state: MachineState
  readonly notes: readonly Note[]
  readonly blueprint: Blueprint
  /** How risk is weighed and what things cost; left out, by the average and by what they usually cost. */
  readonly settings?: JobSettings
  /** What lies on the shelf for it; left out, nothing is known of a shelf. */
  readonly shelf?: readonly PartState[] | undefined
  /** What comparable sales say it fetches; null where there are none. */
  readonly market?: MarketPrice | null
}

/** What came of one way through a virtual machine, priced alike for both. */
export type Outcome = {
  readonly minutes: number
  readonly moneyMinor: number
  readonly moves: readonly string[]
  readonly exit: ExitId
}

/** The hidden truth of a virtual machine, and how the plan alone fares on it. */
export type Reveal = {
  readonly name: string
  readonly faults: readonly string[]
  readonly yours: Outcome
  readonly plans: Outcome
}

/** What a meter check reads on a machine with nothing wrong, in words. */
export type SoundReading = { readonly check: string; readonly name: string; readonly text: string }

/** What edits come to: each in words, what goes along with them in a sentence, and what is wrong. */
export type Adapted = {
  readonly texts: readonly string[]
  readonly gone: string
  readonly problems: readonly Problem[]
}

/** An advert as it was understood, whether it is worth buying, and what is kept of that. */
export type WeighedAdvert = { readonly advert: Advert; readonly view: BuyingView; readonly guess: Guess }

/** What a page may ask of the engines. `results` and `onward` unfold the plan: what may come of a move after these steps, and what is said then. */
export type EngineRequest =
  /** `effort`: how many times the usual work the plan may do. */
  | { readonly kind: 'view'; readonly job: EngineJob; readonly effort?: number }
  | {
      readonly kind: 'results'
      readonly job: EngineJob
      readonly steps: readonly UnfoldStep[]
      readonly move: Undertaking
    }
  | { readonly kind: 'onward'; readonly job: EngineJob; readonly steps: readonly UnfoldStep[] }
  | { readonly kind: 'reading'; readonly job: EngineJob; readonly seed: number; readonly check: string }
  | { readonly kind: 'reveal'; readonly job: EngineJob; readonly seed: number; readonly exit: ExitId }
  | { readonly kind: 'complaints'; readonly blueprint: Blueprint; readonly plate: Plate; readonly seed: number }
  | { readonly kind: 'rates'; readonly blueprint: Blueprint }
  | { readonly kind: 'readings'; readonly blueprint: Blueprint }
  | { readonly kind: 'shows'; readonly blueprint: Blueprint }
  | { readonly kind: 'marks'; readonly marks: readonly DateMark[]; readonly inputW: number; readonly today: string }
  | { readonly kind: 'look-alikes'; readonly blueprint: Blueprint }
  | { readonly kind: 'adapt'; readonly blueprint: Blueprint; readonly edits: readonly Edit[] }
  /** `holesM`: holes of the bench's own rig; left out, those of the usual rig. */
  | { readonly kind: 'air'; readonly job: EngineJob; readonly holesM?: readonly number[] }
  | {
      readonly kind: 'gauge'
      readonly job: EngineJob
      readonly seed: number
      readonly setUp: Omit<GaugeReading, 'read'>
    }
  | { readonly kind: 'rig'; readonly blueprint: Blueprint }
  /** `region`: whose rules are taken while no note says by which it is proved. */
  | { readonly kind: 'proof'; readonly job: EngineJob; readonly region: Region }
  | {
      readonly kind: 'lead'
      readonly plate: Plate
      readonly region: Region
      readonly lengthM: number
      readonly cables: readonly ListedCable[]
    }
  /** What each part takes of the machine's cost when it is taken off. */
  | { readonly kind: 'shares'; readonly job: EngineJob; readonly asked: SharesAsked }
  /** What the shelf holds for each of these parts. */
  | { readonly kind: 'held'; readonly job: EngineJob; readonly region: Region; readonly parts: readonly string[] }
  | { readonly kind: 'copper'; readonly measured: MeasuredCopper }
  /** Whether an advert is worth buying. `effort`: how much the plan may look at; 1 is what a machine's page does. */
  | {
      readonly kind: 'buying'
      readonly advert: AdvertInput
      readonly blueprint: Blueprint
      /** Null where they cannot be asked: then those of a new bench hold. */
      readonly settings: Settings | null
      /** What comparable sales say such machines fetch; null where there are none. */
      readonly market: MarketPrice | null
      readonly effort: number
    }
  | { readonly kind: 'photos'; readonly notes: readonly Note[] }
  /** Every function to try before the sale, and what is known of each. */
  | { readonly kind: 'functions'; readonly job: EngineJob }
  | { readonly kind: 'strip'; readonly notes: readonly Note[]; readonly blueprint: Blueprint }
  /** What is worth cleaning at a moment. `asking`: what to ask for it; null where it cannot be asked, so that the usual holds. */
  | { readonly kind: 'clean'; readonly job: EngineJob; readonly asking: AskingView | null; readonly now: string }
  /** The films of a machine with their marks; `text`: the same as plain text to copy. */
  | { readonly kind: 'films'; readonly notes: readonly Note[]; readonly blueprint: Blueprint }
  /** Notes made away from the bench, put to a machine by its rules. */
  | {
      readonly kind: 'apply'
      readonly document: MachineDocument
      readonly blueprint: Blueprint
      readonly notes: readonly MadeNote[]
    }

export type EngineAnswer =
  | { readonly kind: 'view'; readonly view: MachineView }
  | { readonly kind: 'results'; readonly results: PossibleResults }
  | { readonly kind: 'onward'; readonly onward: Onward }
  | { readonly kind: 'reading'; readonly result: ReadingResult }
  | { readonly kind: 'reveal'; readonly reveal: Reveal }
  | { readonly kind: 'complaints'; readonly complaints: readonly Complaint[] }
  | { readonly kind: 'rates'; readonly rates: readonly FaultRate[] }
  | { readonly kind: 'readings'; readonly readings: readonly SoundReading[] }
  | { readonly kind: 'shows'; readonly shows: readonly FaultShows[] }
  | { readonly kind: 'marks'; readonly marks: MarksAnswer }
  | { readonly kind: 'look-alikes'; readonly groups: readonly LookAlikes[] }
  | { readonly kind: 'adapt'; readonly adapted: Adapted }
  /** Refused where the blueprint says nothing of its air. `barred`: names of what bars any running now, none when it may be run. */
  | { readonly kind: 'air'; readonly air: Result<AirView>; readonly barred: readonly string[] }
  /** What a virtual machine shows; null where its motor does not turn. */
  | { readonly kind: 'gauge'; readonly reading: GaugeReading | null }
  | { readonly kind: 'rig'; readonly rig: Result<AirRig> }
  | { readonly kind: 'proof'; readonly proof: ProofView }
  | { readonly kind: 'lead'; readonly lead: Result<LeadChoice> }
  | { readonly kind: 'shares'; readonly shares: readonly number[] }
  | {
      readonly kind: 'held'
      readonly held: readonly { readonly part: string; readonly name: string; readonly held: readonly Held[] }[]
    }
  | { readonly kind: 'copper'; readonly copper: Result<CopperAnswer> }
  /** Refused where the advert names what the blueprint does not have, or a figure is out of range. */
  | { readonly kind: 'buying'; readonly buying: Result<WeighedAdvert> }
  | { readonly kind: 'photos'; readonly photos: PhotosView }
  | { readonly kind: 'functions'; readonly functions: AnswerableFunctions }
  | { readonly kind: 'strip'; readonly strip: StripView }
  | { readonly kind: 'clean'; readonly clean: CleanView }
  | { readonly kind: 'films'; readonly films: Films; readonly text: string }
  | { readonly kind: 'apply'; readonly applied: AppliedNotes }

/** The answer to one kind of request. */
export type AnswerTo<R extends EngineRequest> = Extract<EngineAnswer, { readonly kind: R['kind'] }>

export type ToEngine = { readonly id: number; readonly request: EngineRequest }
export type FromEngine =
  | { readonly kind: 'answered'; readonly id: number; readonly answer: EngineAnswer }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }
