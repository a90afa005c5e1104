import type { Blueprint, Fault } from '../blueprint/schema.ts'
import { sourceText } from '../base/source-text.ts'
import { fitRate, type FittedRate } from '../engines/belief/index.ts'
import { componentCases, openRepairData } from '../facts/fault-rates.ts'
import { mostPrior } from '../facts/age-and-wear.ts'
import { shiftsOf, type History, type RateShift } from './history-shifts.ts'

export type { History } from './history-shifts.ts'

/** How often a fault is there on a machine bought as faulty, with its 90 % interval, what it rests on and what shifts it. */
export type FaultRate = FittedRate & {
  readonly fault: string
  readonly sources: readonly string[]
  /** What is known of this machine and shifts the rate, in words: `aged 15 years or more: × 1.2 (1.0 to 1.4)`. */
  readonly shifts: readonly string[]
}

/**
 * What a record of the open data counts for beside a machine on this bench. About 1,190 records name a component,
 * so 0.03 makes them worth some 36 machines, against 50 for the trade's judgement. Judgement.
 */
const weightOpen = 0.03
/** Most of the open data's machines are cylinders with a reel: belts and brush rolls are rare among them, so they count a third. */
const weightOpenRare = 0.01
const underRepresented: readonly string[] = [
  'belt',
  'brush-roll',
  'floor-head',
  'head-blockage',
  'thermal-cut-out',
  'bag-full',
]

/**
 * Rates of all faults of a blueprint, in its order: from the open data and the architecture's own figures, then shifted by
 * what is known of the one machine. Never above {@link mostPrior}.
 */
export const faultRates = (blueprint: Blueprint, history: History = {}): readonly FaultRate[] =>
  blueprint.faults.map((fault) => shifted(faultRate(fault), shiftsOf(fault, history)))

const faultRate = (fault: Fault): FaultRate => {
  const { component, perHundred, source } = fault.rate
  const cases = component === undefined ? null : componentCases(component.id)
  const fitted = fitRate({
    componentCount: cases?.count ?? 0,
    componentTotal: cases?.total ?? 0,
    componentShare: component?.share ?? 0,
    perHundred,
    weightOpen: component !== undefined && underRepresented.includes(component.id) ? weightOpenRare : weightOpen,
    weightTrade: 1,
  })
  const sources = cases === null ? [sourceText(source)] : [sourceText(source), sourceText(openRepairData)]
  return { ...fitted, fault: fault.id, sources, shifts: [] }
}

/** The widths of rate and shifts are independent: their logarithms add in squares. */
const shifted = (rate: FaultRate, shifts: readonly RateShift[]): FaultRate => {
  const middle = shifts.reduce((product, { ratio }) => product * ratio, rate.rate)
  const reach = (end: (of: { ratio: number; low: number; high: number }) => number, own: number): number =>
    Math.sqrt(shifts.reduce((sum, shift) => sum + Math.log(end(shift) / shift.ratio) ** 2, Math.log(own) ** 2))
  const isNever = rate.rate === 0
  return {
    ...rate,
    rate: Math.min(mostPrior, middle),
    low: isNever ? 0 : Math.min(mostPrior, middle * Math.exp(-reach(({ low }) => low, rate.low / rate.rate))),
    high: isNever ? 0 : Math.min(1, middle * Math.exp(reach(({ high }) => high, rate.high / rate.rate))),
    sources: [...rate.sources, ...new Set(shifts.map(({ source }) => source))],
    shifts: shifts.map(({ text }) => text),
  }
}
