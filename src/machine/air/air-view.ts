import type { AirPowerPeak, HypothesisKind, Ratio } from '../../engines/airflow/index.ts'
import type { GaugeReading } from './gauge-reading.ts'

/** What the page, the command line and the API show of a machine's air: worked out from its job, never stored. */
export type AirView = {
  /** What kind of fan it is taken for, and by what that was decided, as sentences. */
  readonly kind: { readonly name: string; readonly decided: readonly string[] }
  readonly ways: readonly AirWayView[]
  /** Gauge readings between repairs, the oldest first. Empty when none was made yet. */
  readonly sets: readonly AirSetView[]
  /** What could be read next, the most telling first. */
  readonly next: readonly NextGaugeView[]
  /** What a sound machine of the kind would show, and how far such machines spread. */
  readonly sound: AirCurveView
  readonly beforeAfter: BeforeAfterView | null
}

/** A way in where the rig can be fitted. */
export type AirWayView = {
  readonly id: string
  readonly name: string
  readonly how: string
  /** Parts before which the path can be tapped, and parts that can be left out. */
  readonly taps: readonly NamedPart[]
  readonly outs: readonly NamedPart[]
}
export type NamedPart = { readonly part: string; readonly name: string }

/** The gauge readings of one state of the machine, and what they say. */
export type AirSetView = {
  /** `as found`, `after 2 repairs`. */
  readonly name: string
  readonly readings: readonly GaugeReadingView[]
  /** Likeliest first; those below one in a hundred left out. */
  readonly explanations: readonly AirExplanationView[]
  /** What the readings leave open: explanations they do not tell apart, figures that only show together. As sentences. */
  readonly open: readonly string[]
  /** Readings that contradict the others, as sentences. */
  readonly contradictions: readonly string[]
  readonly curve: AirCurveView
  readonly path: AirPathView
}

export type GaugeReadingView = {
  readonly note: string
  readonly setUp: string
  readonly read: string
  /** What the likeliest explanation would show there, and by how many standard deviations the reading is off. */
  readonly expected: string
  readonly sigma: number
  /** The same as numbers: Pa, m³/s, or a ratio of speeds. */
  readonly value: number
  readonly expectedValue: number
  readonly measure: GaugeReading['read']['measure']
}

export type AirExplanationView = {
  readonly id: string
  readonly kind: HypothesisKind
  readonly name: string
  readonly probability: number
  /** The figure it is about with its 95 % limits, as a sentence; null where it has none. */
  readonly figure: string | null
  /** Parts that it lies at, by id. */
  readonly parts: readonly string[]
}

/** A reading that could be made next. */
export type NextGaugeView = {
  readonly name: string
  readonly minutes: number
  /** Expected information about which explanation holds, in bits; null where it is made for another reason. */
  readonly bits: number | null
  /** What it would tell apart, as a sentence. */
  readonly tells: string
  /** What to do besides fitting the rig, as sentences: a part out, a tap further in. */
  readonly how: readonly string[]
  readonly expected: readonly { readonly under: string; readonly text: string }[]
  readonly reading: Omit<GaugeReading, 'read'>
}

/** Suction against airflow at one way in, in standard air. Airflow counted as air of the room. */
export type AirCurveView = {
  readonly way: string
  readonly points: readonly AirPointView[]
  /** The machine as it is now taken to be, from sealed to open: likeliest, and the limits that hold it in 95 of 100 cases. */
  readonly band: readonly AirBandPoint[]
  /** Most air power of the likeliest machine. */
  readonly peak: AirPowerPeak
}
export type AirPointView = {
  readonly name: string
  readonly suctionPa: number
  readonly airflowM3PerS: number
  readonly airPowerW: number
}
export type AirBandPoint = {
  readonly diameterM: number
  readonly low: AirFlowPoint
  readonly middle: AirFlowPoint
  readonly high: AirFlowPoint
}
export type AirFlowPoint = { readonly suctionPa: number; readonly airflowM3PerS: number; readonly airPowerW: number }

/** Suction along the path at one opening, as the likeliest machine has it and as a sound one would. */
export type AirPathView = {
  readonly opening: string
  readonly steps: readonly AirPathStep[]
}
export type AirPathStep = {
  readonly part: string
  readonly name: string
  readonly isFan: boolean
  /** Suction where the air comes to this part, Pa below the room; below 0 it is above the room's pressure. */
  readonly suctionPa: number
  readonly soundPa: number
  /** Probability that what is wrong with the air lies here. */
  readonly suspected: number
}

/** What the repairs did to the air. */
export type BeforeAfterView = {
  readonly before: string
  readonly after: string
  readonly plates: readonly { readonly name: string; readonly suction: Ratio; readonly airPower: Ratio | null }[]
  readonly airPower: Ratio | null
  readonly peak: { readonly ratio: number; readonly low: number; readonly high: number } | null
  /** The whole in one sentence. */
  readonly text: string
}
