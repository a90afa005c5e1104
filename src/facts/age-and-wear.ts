import type { Source } from '../base/source.ts'
import { openRepairData } from './fault-rates.ts'

/** Ages of a machine in whole years since it was made, as bands. `toYears`: the last year of the band; null without an end. */
export const ageBands = [
  { id: 'up-to-3', name: 'up to 3 years', fromYears: 0, toYears: 3 },
  { id: '4-to-7', name: '4 to 7 years', fromYears: 4, toYears: 7 },
  { id: '8-to-14', name: '8 to 14 years', fromYears: 8, toYears: 14 },
  { id: '15-up', name: '15 years or more', fromYears: 15, toYears: null },
] as const

/** The band of an age in years, as an index into {@link ageBands}; part of a year counts as the years completed. */
export const ageBandOf = (ageYears: number): number => {
  const found = ageBands.findLastIndex(({ fromYears }) => Math.floor(ageYears) >= fromYears)
  return Math.max(0, found)
}

/** Fault types of the open records, with the label they have there. Records without a type or age are left out. */
export const labelsOfFaultTypes = {
  cord: 'Cable/cord',
  motor: 'Motor',
  blockage: 'Blockage',
  internal: 'Internal damage',
  switch: 'Button/switch',
  filter: 'Filter',
  power: 'Power/battery',
  external: 'External damage',
  hose: 'Hose/tube/pipe',
  overheating: 'Overheating',
  brush: 'Brush',
  wheels: 'Wheels/rollers',
  bag: 'Dustbag/canister',
  liquid: 'Liquid damage',
  display: 'Display/LED',
} as const

export type FaultTypeId = keyof typeof labelsOfFaultTypes
type Four = readonly [number, number, number, number]

/** How much oftener a fault type is met at each age than at any: records, ratio and 90 % interval, by the bands above. */
export type AgeShift = {
  readonly faultType: FaultTypeId
  readonly records: Four
  readonly ratio: Four
  readonly low: Four
  readonly high: Four
}

const shift = (faultType: FaultTypeId, records: Four, ratio: Four, low: Four, high: Four): AgeShift =>
  Object.freeze({ faultType, records, ratio, low, high })

export const ageShiftSource: Source = {
  ...openRepairData,
  clause:
    'corded machines with fault type and age; log ratios of shares, Jeffreys-smoothed, shrunk toward 1 by empirical Bayes (scripts/fit-age-shifts.mjs)',
}

/** Written by scripts/fit-age-shifts.mjs. */
export const ageShifts: readonly AgeShift[] = Object.freeze([
  shift(
    'cord',
    [22, 48, 46, 35],
    [0.849, 0.989, 1.053, 1.16],
    [0.701, 0.859, 0.911, 0.987],
    [1.027, 1.14, 1.217, 1.363],
  ),
  shift(
    'motor',
    [19, 39, 28, 16],
    [0.957, 1.117, 0.987, 0.951],
    [0.785, 0.957, 0.828, 0.773],
    [1.167, 1.304, 1.177, 1.169],
  ),
  shift(
    'blockage',
    [19, 24, 11, 7],
    [1.188, 1.11, 0.881, 0.921],
    [0.975, 0.924, 0.708, 0.729],
    [1.449, 1.332, 1.095, 1.164],
  ),
  shift(
    'internal',
    [15, 24, 27, 14],
    [0.967, 0.967, 1.102, 0.992],
    [0.785, 0.806, 0.923, 0.803],
    [1.192, 1.161, 1.317, 1.227],
  ),
  shift(
    'switch',
    [16, 15, 20, 11],
    [1.088, 0.901, 1.066, 1.0],
    [0.885, 0.734, 0.878, 0.801],
    [1.337, 1.106, 1.293, 1.247],
  ),
  shift(
    'filter',
    [10, 13, 10, 3],
    [1.086, 1.046, 1.003, 0.937],
    [0.869, 0.848, 0.804, 0.731],
    [1.358, 1.291, 1.251, 1.2],
  ),
  shift(
    'power',
    [11, 4, 9, 2],
    [1.23, 0.909, 1.062, 0.952],
    [0.987, 0.714, 0.849, 0.741],
    [1.533, 1.157, 1.329, 1.224],
  ),
  shift(
    'external',
    [0, 4, 6, 6],
    [0.97, 0.975, 1.064, 1.143],
    [0.749, 0.766, 0.842, 0.902],
    [1.257, 1.241, 1.346, 1.448],
  ),
  shift('hose', [2, 5, 3, 7], [0.971, 0.994, 0.961, 1.183], [0.755, 0.784, 0.752, 0.936], [1.248, 1.26, 1.23, 1.494]),
  shift(
    'overheating',
    [1, 7, 3, 1],
    [0.974, 1.148, 0.998, 0.981],
    [0.755, 0.912, 0.78, 0.76],
    [1.257, 1.445, 1.277, 1.266],
  ),
  shift('brush', [4, 1, 1, 2], [1.126, 0.968, 0.976, 1.035], [0.883, 0.751, 0.757, 0.805], [1.437, 1.248, 1.259, 1.33]),
  shift(
    'wheels',
    [2, 3, 0, 2],
    [1.035, 1.043, 0.975, 1.044],
    [0.805, 0.816, 0.753, 0.812],
    [1.33, 1.333, 1.263, 1.343],
  ),
  shift('bag', [3, 1, 2, 2], [1.071, 0.968, 1.003, 1.035], [0.837, 0.751, 0.781, 0.805], [1.372, 1.248, 1.288, 1.33]),
  shift(
    'liquid',
    [1, 3, 2, 1],
    [0.998, 1.043, 1.013, 1.004],
    [0.773, 0.816, 0.789, 0.778],
    [1.287, 1.333, 1.301, 1.295],
  ),
  shift(
    'display',
    [0, 2, 1, 0],
    [0.994, 1.07, 1.021, 0.996],
    [0.767, 0.834, 0.792, 0.769],
    [1.288, 1.374, 1.317, 1.291],
  ),
])

/** The fault type that most records of a component are labelled with. */
export const faultTypeOfComponent: Readonly<Record<string, FaultTypeId>> = Object.freeze({
  plug: 'cord',
  'flex-reel': 'cord',
  'flex-entry': 'cord',
  'flex-middle': 'cord',
  'reel-mechanism': 'cord',
  'reel-contacts': 'cord',
  fuse: 'power',
  'mains-switch': 'switch',
  'speed-control': 'internal',
  'suppression-capacitor': 'internal',
  'thermal-cut-out': 'overheating',
  'internal-wire': 'internal',
  'carbon-brushes': 'motor',
  'motor-winding': 'motor',
  'motor-bearings': 'motor',
  commutator: 'motor',
  'motor-dirt': 'motor',
  'fan-wheel': 'internal',
  belt: 'motor',
  'brush-roll': 'brush',
  hose: 'hose',
  wand: 'hose',
  filters: 'filter',
  'bag-or-bin': 'bag',
  'hose-blockage': 'blockage',
  'wand-blockage': 'blockage',
  'head-blockage': 'blockage',
  'bag-full': 'blockage',
  'blockage-unplaced': 'blockage',
  casing: 'external',
  wheels: 'wheels',
  water: 'liquid',
})

export const wearLevels = ['light', 'usual', 'heavy'] as const
export type Wear = (typeof wearLevels)[number]

/**
 * How much oftener what wears is worn on a machine that was used lightly or heavily: ratio and 90 % interval. Judgement: no
 * records tell hours of use. What does not wear by use is not shifted.
 */
export const wearShifts: Readonly<
  Record<Wear, { readonly ratio: number; readonly low: number; readonly high: number }>
> = Object.freeze({
  light: { ratio: 0.7, low: 0.45, high: 1.1 },
  usual: { ratio: 1, low: 1, high: 1 },
  heavy: { ratio: 1.5, low: 0.95, high: 2.4 },
})
export const wearSource: Source = { title: 'How hours of use shift what wears', evidence: 'judgement' }

/** Components that wear with hours of use. */
export const wearingComponents: readonly string[] = Object.freeze([
  'plug',
  'flex-reel',
  'flex-entry',
  'flex-middle',
  'reel-mechanism',
  'reel-contacts',
  'mains-switch',
  'carbon-brushes',
  'commutator',
  'motor-bearings',
  'belt',
  'brush-roll',
  'hose',
  'floor-head',
  'filters',
  'seals',
  'wheels',
])

/** No fault is ever taken to be there with more than this before anything was seen. */
export const mostPrior = 0.6
