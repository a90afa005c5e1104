import type { BlueprintFragment } from '../../fragment.ts'

export interface BagDoorOptions {
  /** As “Bag door” or “Lid”. */
  readonly name: string
}

const parts = (o: BagDoorOptions): NonNullable<BlueprintFragment['parts']> => [
  { id: 'bag-door-seal', name: `${o.name} seal`, does: 'Seals the bag chamber', group: 'air', behind: 'bag-door' },
  {
    id: 'bag-door-latch',
    name: `${o.name} and latch`,
    does: 'Keeps it shut',
    group: 'air',
    spareShare: { low: 0.05, high: 0.1 },
  },
]

const faults = (o: BagDoorOptions): NonNullable<BlueprintFragment['faults']> => [
  {
    id: 'bag-door-seal-perished',
    part: 'bag-door-seal',
    name: `${o.name} seal perished or rolled`,
    how: 'Whistles; a paper strip slips out of the shut edge.',
    rate: { rows: [['A04', 1]], component: { id: 'seals', share: 0.6 } },
    complaints: { 'weak-suction': 0.7, 'dust-leaks': 0.3, noise: 0.25 },
    saleShareIfLeft: 0.6,
    air: { does: 'leaks', part: 'pre-motor-filter', side: 'before' },
  },
  {
    id: 'bag-door-latch-broken',
    part: 'bag-door-latch',
    name: `${o.name} latch broken`,
    how: 'Springs open or gapes under suction.',
    rate: { rows: [['A05', 1]], component: { id: 'casing', share: 0.4 } },
    complaints: { 'weak-suction': 0.55, 'dust-leaks': 0.3 },
    saleShareIfLeft: 0.3,
    air: { does: 'leaks', part: 'pre-motor-filter', side: 'before' },
  },
]

const checks = (o: BagDoorOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'paper-strip-door',
    name: `Paper strip round the ${o.name.toLowerCase()}`,
    how: 'Plug out. Shut it on a paper strip, pull; six places. It must stay shut.',
    minutes: 2,
    outcomes: [
      { id: 'grips', name: 'Grips all round' },
      { id: 'slips', name: 'Slips out somewhere' },
      { id: 'gapes', name: 'Latch does not hold' },
    ],
    sound: { grips: 0.94, slips: 0.05, gapes: 0.01 },
    under: {
      'bag-door-seal-perished': { slips: 0.9, grips: 0.1 },
      'bag-door-latch-broken': { gapes: 0.92, slips: 0.06, grips: 0.02 },
    },
  },
]

const repairs = (o: BagDoorOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'door-seal-mend',
    name: `Mend the ${o.name.toLowerCase()} seal`,
    part: 'bag-door-seal',
    removes: ['bag-door-seal-perished'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'new',
        name: 'New seal or same section',
        minutes: 10,
        costMinor: { low: 100, high: 600 },
        success: 0.95,
        breakRisk: 0.01,
      },
      {
        id: 'clean',
        name: 'Wash and seat again',
        minutes: 8,
        costMinor: { low: 0, high: 20 },
        success: 0.6,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'door-latch-mend',
    name: `Mend the ${o.name.toLowerCase()} latch`,
    part: 'bag-door-latch',
    removes: ['bag-door-latch-broken'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'salvaged',
        name: `Latch or ${o.name.toLowerCase()} from a donor`,
        minutes: 12,
        costMinor: { low: 200, high: 900 },
        success: 0.95,
        breakRisk: 0.04,
      },
      {
        id: 'refit',
        name: 'Pin the old one',
        minutes: 15,
        costMinor: { low: 0, high: 50 },
        success: 0.7,
        breakRisk: 0.04,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-listen': {
    'bag-door-seal-perished': { whistle: 0.6, even: 0.4 },
    'bag-door-latch-broken': { whistle: 0.5, even: 0.5 },
  },
  'air-hose-end': {
    'bag-door-seal-perished': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-door-latch-broken': { fair: 0.6, weak: 0.3, strong: 0.1 },
  },
  'air-head': {
    'bag-door-seal-perished': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-door-latch-broken': { fair: 0.6, weak: 0.3, strong: 0.1 },
  },
  'air-sealed': {
    'bag-door-seal-perished': { fair: 0.65, weak: 0.3, strong: 0.05 },
    'bag-door-latch-broken': { fair: 0.5, weak: 0.45, strong: 0.05 },
  },
  'air-blockage-lamp': { 'bag-door-seal-perished': { 'stays-dark': 0.3, right: 0.7 } },
  'run-full': {
    'bag-door-seal-perished': { weak: 0.88, works: 0.12 },
    'bag-door-latch-broken': { weak: 0.75, leaks: 0.15, works: 0.1 },
  },
}

/** Door or lid over the bag, with its seal and latch. */
export const bagDoor = (o: BagDoorOptions): BlueprintFragment => ({
  parts: parts(o),
  faults: faults(o),
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
