import type { BlueprintFragment } from '../../fragment.ts'

export interface CoggedBeltOptions {
  /** What drives the belt: `own-motor`, or a shaft or turbine that runs on when the belt does not. */
  readonly drive: 'own-motor' | 'other'
  readonly cover: string
}

const parts = (o: CoggedBeltOptions): NonNullable<BlueprintFragment['parts']> => [
  { id: 'belt', name: 'Cogged belt', does: 'Turns the roll', group: 'mechanical', behind: o.cover },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'belt-stripped',
    part: 'belt',
    name: 'Cogged belt snapped or stripped',
    how: 'Teeth gone, jumped or wrong size: motor whirrs, roll still.',
    rate: { rows: [['H03', 1]], component: { id: 'belt', share: 1 } },
    complaints: { 'brush-not-turning': 0.85, noise: 0.3, 'poor-pickup': 0.5, smell: 0.15, 'lamp-wrong': 0.1 },
    saleShareIfLeft: 0.3,
  },
]

const checks = (o: CoggedBeltOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-belt',
    name: 'Cogged belt',
    how: 'Plug out, belt cover off. All teeth there, right width, tight?',
    minutes: 1,
    coversOff: [o.cover],
    outcomes: [
      { id: 'good', name: 'All teeth, tight' },
      { id: 'stripped', name: 'Snapped, stripped or jumped' },
    ],
    sound: { good: 0.98, stripped: 0.02 },
    under: { 'belt-stripped': { stripped: 0.97, good: 0.03 } },
  },
]

const repairs = (o: CoggedBeltOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'belt-new',
    name: 'New cogged belt',
    part: 'belt',
    removes: ['belt-stripped'],
    coversOff: [o.cover],
    options: [
      {
        id: 'new',
        name: 'Exact tooth count and width',
        minutes: 20,
        costMinor: { low: 400, high: 1000 },
        success: 0.95,
        breakRisk: 0.04,
      },
    ],
    note: 'Find what stopped the roll.',
  },
]

const ownMotorShows: NonNullable<BlueprintFragment['addsTo']> = {
  'run-brush': { 'belt-stripped': { whirrs: 0.75, stops: 0.2, slow: 0.05 } },
  'run-swing-neck': { 'belt-stripped': { still: 0.93, steady: 0.07 } },
  'run-jam': { 'belt-stripped': { 'no-drive': 0.95, protects: 0.05 } },
  'run-lamps': { 'belt-stripped': { warning: 0.4, right: 0.6 } },
  'run-full': { 'belt-stripped': { 'brush-still': 0.97, works: 0.03 } },
}

const otherShows: NonNullable<BlueprintFragment['addsTo']> = {
  'run-brush': { 'belt-stripped': { whirrs: 0.9, slow: 0.1 } },
  'run-full': { 'belt-stripped': { 'brush-still': 0.97, works: 0.03 } },
}

/** A toothed belt to the roll. */
export const coggedBelt = (o: CoggedBeltOptions): BlueprintFragment => ({
  parts: parts(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo: {
    'spin-roll': { 'belt-stripped': { free: 0.8, turns: 0.2 } },
    ...(o.drive === 'own-motor' ? ownMotorShows : otherShows),
  },
})
