import { sourceText } from '../base/source-text.ts'
import type { Fault } from '../blueprint/schema.ts'
import {
  ageBandOf,
  ageBands,
  ageShifts,
  ageShiftSource,
  faultTypeOfComponent,
  wearingComponents,
  wearShifts,
  wearSource,
  type Wear,
} from '../facts/age-and-wear.ts'

/** What is known of one machine's life; nothing known shifts nothing. */
export type History = { readonly ageYears?: number | undefined; readonly wear?: Wear | undefined }

/** A factor on a fault's rate with its 90 % interval, the words for it and where it comes from. */
export type RateShift = {
  readonly ratio: number
  readonly low: number
  readonly high: number
  /** What shifts it: `aged 15 years or more`. */
  readonly name: string
  readonly text: string
  readonly source: string
}

/** What a machine's age and wear do to the rate of a fault. A fault without a component of the open data is not shifted. */
export const shiftsOf = ({ rate }: Fault, { ageYears, wear }: History): readonly RateShift[] => {
  const component = rate.component?.id
  if (component === undefined) return []
  return [...ageShift(component, ageYears), ...wearShift(component, wear)]
}

const ageShift = (component: string, ageYears: number | undefined): readonly RateShift[] => {
  const row = ageShifts.find(({ faultType }) => faultType === faultTypeOfComponent[component])
  if (ageYears === undefined || row === undefined) return []
  const band = ageBandOf(ageYears)
  const [ratio, low, high] = [row.ratio[band], row.low[band], row.high[band]]
  const name = `aged ${ageBands[band].name}`
  return [{ ratio, low, high, name, text: shiftText(name, ratio, low, high), source: ageSource }]
}

const ageSource = sourceText(ageShiftSource)

const wearShift = (component: string, wear: Wear | undefined): readonly RateShift[] => {
  if (wear === undefined || wear === 'usual' || !wearingComponents.includes(component)) return []
  const { ratio, low, high } = wearShifts[wear]
  const name = wear === 'light' ? 'lightly used' : 'heavily used'
  return [{ ratio, low, high, name, text: shiftText(name, ratio, low, high), source: sourceText(wearSource) }]
}

const shiftText = (name: string, ratio: number, low: number, high: number): string =>
  `${name}: × ${ratio.toFixed(2)} (${low.toFixed(1)} to ${high.toFixed(1)})`
