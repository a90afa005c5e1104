import { inAirUnit } from '../../base/air-units.ts'
import { airView } from '../../machine/index.ts'
import type { AirCurveView, AirFlowPoint, AirView } from '../../machine/air/air-view.ts'
import type { Job } from '../../machine/job.ts'

/** What gauge readings said of the air, to be drawn: airflow in L/s, suction in kPa, air power in W. */
export type StoryAir = {
  /** What the repairs did to the air, in a sentence; empty where there is no before and after. */
  readonly text: string
  readonly curves: readonly StoryCurve[]
  /** How many times what it was, by hole: `13 mm hole`, suction, air power. Empty where there is no before and after. */
  readonly times: readonly { readonly hole: string; readonly suction: string; readonly airPower: string }[]
}

export type StoryCurve = {
  readonly look: 'before' | 'now' | 'sound'
  readonly name: string
  readonly suction: StoryFigure
  readonly airPower: StoryFigure
  /** Most air power, in words; empty where it is not known. */
  readonly peak: string
}

type XY = { readonly x: number; readonly y: number }
/** A curve with the band that holds it in 95 of 100 cases, and the readings it comes from. */
export type StoryFigure = {
  readonly middle: readonly XY[]
  readonly low: readonly XY[]
  readonly high: readonly XY[]
  readonly points: readonly XY[]
}

/** Null where no gauge was read, or the blueprint says nothing of the air. */
export const storyAir = (job: Job): StoryAir | null => {
  if (!job.events.some(({ kind }) => kind === 'gauge')) return null
  const found = airView(job)
  return found.kind === 'refused' || found.value.sets.length === 0 ? null : airOf(found.value)
}

const airOf = ({ sets, sound, kind, beforeAfter }: AirView): StoryAir => {
  const now = sets.at(-1)
  const before = sets.length > 1 ? sets[0] : undefined
  // Curves of different ways in cannot be laid over each other.
  const isAlike = ({ way }: AirCurveView): boolean => way === now?.curve.way
  return {
    text: beforeAfter?.text ?? '',
    curves: [
      ...(isAlike(sound) ? [curve('sound', `a sound machine of the kind (${kind.name})`, sound)] : []),
      ...(before !== undefined && isAlike(before.curve) ? [curve('before', before.name, before.curve)] : []),
      ...(now === undefined ? [] : [curve('now', now.name, now.curve)]),
    ],
    times: (beforeAfter?.plates ?? []).map(({ name, suction, airPower }) => ({
      hole: name,
      suction: timesText(suction),
      airPower: airPower === null ? 'none flows' : timesText(airPower),
    })),
  }
}

const curve = (look: StoryCurve['look'], name: string, view: AirCurveView): StoryCurve => ({
  look,
  name,
  suction: figure(view, ({ suctionPa }) => inAirUnit(suctionPa, 'pressurePa', 'kPa'), look),
  airPower: figure(view, ({ airPowerW }) => airPowerW, look),
  peak: view.peak.kind === 'peak' ? `${Number(view.peak.airPowerW.toPrecision(3))} W` : '',
})

/** Readings stand with the curves they belong to; a sound machine has none. */
const figure = (
  { band, points }: AirCurveView,
  yOf: (point: AirFlowPoint) => number,
  look: StoryCurve['look'],
): StoryFigure => {
  const at = (point: AirFlowPoint): XY => ({
    x: inAirUnit(point.airflowM3PerS, 'airflowM3PerS', 'L/s'),
    y: yOf(point),
  })
  return {
    middle: band.map(({ middle }) => at(middle)),
    low: band.map(({ low }) => at(low)),
    high: band.map(({ high }) => at(high)),
    points: look === 'sound' ? [] : points.map(at),
  }
}

/** Standard uncertainties on either side that hold 95 of 100 cases. */
const coverage = 2

const timesText = ({ ratio, uncertainty }: { readonly ratio: number; readonly uncertainty: number }): string =>
  `${ratio.toFixed(2)} × ± ${(coverage * ratio * uncertainty).toFixed(2)}`
