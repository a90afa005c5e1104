import type { Blueprint, Fault } from '../blueprint/schema.ts'
import { sourceText } from '../base/source-text.ts'
import { fitRate, type FittedRate } from '../engines/belief/index.ts'
import { componentCases, openRepairData } from '../facts/fault-rates.ts'

/** How often a fault is there on a machine bought as faulty, with its 90 % interval and what it rests on. */
export type FaultRate = FittedRate & { readonly fault: string; readonly sources: readonly string[] }

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

/** Rates of all faults of a blueprint, in its order. */
export const faultRates = (blueprint: Blueprint): readonly FaultRate[] => blueprint.faults.map(faultRate)

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
  return { ...fitted, fault: fault.id, sources }
}
