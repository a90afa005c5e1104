import type { Source } from '../base/source.ts'
import { openRepairData } from './fault-rates.ts'

const faultTypeSource: Source = {
  ...openRepairData,
  clause:
    'corded machines, fault type as labelled by volunteers; “cause named”: the text names a component other than what is complained of',
}

/**
 * One fault type. `records`: labelled records. Shares are 0..1: `causeNamedShare` among the records whose text names a cause;
 * `fixedShare` and `endOfLifeShare` of what became of the machine at the event.
 */
type FaultTypeRow = {
  readonly id: string
  readonly source: Source
  readonly name: string
  readonly records: number
  readonly causeNamedShare: number
  readonly fixedShare: number
  readonly endOfLifeShare: number
}

/** Per cent as printed. */
const type = (
  id: string,
  name: string,
  records: number,
  causeNamed: number,
  fixed: number,
  endOfLife: number,
): FaultTypeRow =>
  Object.freeze({
    id,
    source: faultTypeSource,
    name,
    records,
    causeNamedShare: causeNamed / 100,
    fixedShare: fixed / 100,
    endOfLifeShare: endOfLife / 100,
  })

export const faultTypes: readonly FaultTypeRow[] = Object.freeze([
  type('cord', 'Cable or cord', 329, 27.7, 82.5, 9.2),
  type('motor', 'Motor, its brushes and belt', 234, 17.6, 35.9, 42.4),
  type('blockage', 'Blockage', 169, 10.9, 87.9, 7.8),
  type('internal', 'Internal damage', 165, 11.8, 64.2, 23.0),
  type('switch', 'Button or switch', 139, 10.9, 70.5, 11.5),
  type('filter', 'Filter', 79, 6.9, 86.1, 0),
  type('power', 'No power, cause unknown', 66, 1.1, 50.8, 26.2),
  type('external', 'External damage', 44, 2.9, 60.5, 16.3),
  type('hose', 'Hose, tube or pipe', 40, 3.1, 84.6, 7.7),
  type('overheating', 'Overheating', 39, 1.4, 38.9, 52.8),
  type('brush', 'Brush', 23, 0.9, 59.1, 18.2),
  type('wheels', 'Wheels or rollers', 22, 1.1, 36.4, 27.3),
  type('bag', 'Dust bag or canister', 21, 1.7, 71.4, 14.3),
  type('liquid', 'Liquid damage', 12, 1.1, 33.3, 66.7),
  type('accessories', 'Accessories', 9, 0.7, 100, 0),
  type('display', 'Display or lamp', 6, 0.1, 80, 20),
])

/** The columns of the symptom counts; `other` holds every type that has no column. */
export const symptomColumns = [
  'cord',
  'motor',
  'internal',
  'blockage',
  'switch',
  'filter',
  'overheating',
  'other',
] as const
export type SymptomColumn = (typeof symptomColumns)[number]

type SymptomRow = {
  readonly id: string
  readonly name: string
  readonly counts: Readonly<Record<SymptomColumn, number>>
}

const symptom = (id: string, name: string, ...counts: readonly number[]): SymptomRow => {
  const entries = symptomColumns.map((column, i) => [column, counts[i] ?? 0] as const)
  return Object.freeze({ id, name, counts: Object.freeze(Object.fromEntries(entries) as SymptomRow['counts']) })
}

/** Symptom → fault type: counts among records of corded machines that name a cause. A record can have several symptoms. */
export const symptomCounts: readonly SymptomRow[] = Object.freeze([
  symptom('dead', 'Dead', 49, 29, 29, 1, 19, 3, 1, 6),
  symptom('not-working', 'Does not work', 63, 53, 26, 10, 16, 5, 2, 10),
  symptom('stopped-suddenly', 'Stopped suddenly', 7, 4, 1, 0, 2, 1, 0, 1),
  symptom('intermittent', 'Comes and goes', 12, 5, 7, 2, 5, 1, 0, 0),
  symptom('cuts-out', 'Cuts out', 3, 3, 2, 5, 3, 2, 1, 0),
  symptom('stops-hot', 'Stops when hot', 2, 4, 1, 1, 2, 1, 10, 1),
  symptom('weak-suction', 'Weak suction', 0, 13, 13, 49, 1, 27, 3, 5),
  symptom('burning', 'Burning smell or smoke', 0, 11, 1, 1, 0, 0, 4, 0),
  symptom('noise', 'Noise', 0, 18, 5, 14, 1, 13, 2, 6),
  symptom('trips', 'Trips the supply', 5, 1, 8, 0, 0, 0, 0, 2),
  symptom('cord-no-retract', 'Cord does not retract', 48, 0, 0, 0, 1, 0, 0, 0),
  symptom('brush-not-turning', 'Brush does not turn', 1, 6, 1, 0, 0, 0, 0, 7),
  symptom('speed-ctrl', 'Speed control', 2, 4, 13, 2, 3, 0, 0, 0),
  symptom('switch-complaint', 'Switch complaint', 1, 3, 5, 2, 34, 0, 0, 1),
])
