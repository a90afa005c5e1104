import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'bag',
    name: 'Bag',
    does: 'Keeps the dust',
    group: 'air',
    behind: 'bag-door',
    air: { kind: 'passage', like: 'paper-bag' },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'bag-full',
    part: 'bag',
    name: 'Bag full',
    how: 'Full, or pores closed by fine dust. Its neck may be packed too.',
    rate: { rows: [['A01', 1]], component: { id: 'bag-full', share: 1 } },
    air: { does: 'blocks', part: 'bag' },
    complaints: { 'weak-suction': 0.85, 'cuts-out': 0.25, 'dust-leaks': 0.1, smell: 0.15 },
    saleShareIfLeft: 1,
  },
  {
    id: 'bag-split',
    part: 'bag',
    name: 'Bag split or off its collar',
    how: 'Dust loose in the chamber and on the filter.',
    rate: { rows: [['A02', 1]], component: { id: 'bag-or-bin', share: 0.6 } },
    complaints: { 'dust-leaks': 0.7, 'weak-suction': 0.5, smell: 0.3 },
    saleShareIfLeft: 0.95,
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-bag',
    name: 'Bag',
    how: 'Plug out. Open it outdoors. How full? Dust loose in the chamber?',
    minutes: 1,
    coversOff: ['bag-door'],
    outcomes: [
      { id: 'room', name: 'Room in it, chamber clean' },
      { id: 'full', name: 'Full or packed' },
      { id: 'split', name: 'Split or off its collar' },
    ],
    sound: { room: 0.93, full: 0.05, split: 0.02 },
    under: { 'bag-full': { full: 0.96, room: 0.04 }, 'bag-split': { split: 0.95, room: 0.05 } },
  },
  {
    kind: 'air',
    id: 'air-new-bag',
    name: 'Suction with a new bag',
    how: 'Plug out, new bag in, closed up. Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Palm over the hose end or inlet. Plug out before touching.',
    minutes: 2.5,
    costMinor: 120,
    outcomes: [
      { id: 'same', name: 'Pulls as before' },
      { id: 'better', name: 'Pulls harder' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { same: 0.95, better: 0.05 },
    under: { 'bag-full': { better: 0.93, same: 0.07 }, 'bag-split': { better: 0.3, same: 0.7 } },
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'bag-new',
    name: 'New bag',
    part: 'bag',
    removes: ['bag-full'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'new',
        name: 'New bag, neck cleared',
        minutes: 3,
        costMinor: { low: 100, high: 200 },
        success: 0.99,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'bag-split-mend',
    name: 'New bag, chamber cleaned',
    part: 'bag',
    removes: ['bag-split', 'bag-full'],
    coversOff: ['filter-cover'],
    options: [
      {
        id: 'new',
        name: 'New bag, chamber and filter vacuumed',
        minutes: 20,
        costMinor: { low: 200, high: 800 },
        success: 0.96,
        breakRisk: 0.01,
      },
    ],
    note: 'Look at the motor for dust.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'look-pre-motor-filter': { 'bag-full': { clogged: 0.3, clean: 0.7 }, 'bag-split': { clogged: 0.45, clean: 0.55 } },
  'run-listen': { 'bag-full': { high: 0.6, even: 0.4 } },
  'run-smell': { 'bag-full': { dusty: 0.6, clean: 0.4 }, 'bag-split': { dusty: 0.7, clean: 0.3 } },
  'run-lamps': { 'bag-full': { warning: 0.7, right: 0.3 } },
  'air-hose-end': {
    'bag-full': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-split': { fair: 0.45, strong: 0.5, weak: 0.05 },
  },
  'air-head': {
    'bag-full': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-split': { fair: 0.45, strong: 0.5, weak: 0.05 },
  },
  'air-blockage-lamp': { 'bag-full': { 'stays-lit': 0.6, right: 0.4 } },
  'run-soak': { 'bag-full': { 'cuts-out': 0.55, cool: 0.35, smells: 0.1 } },
  'look-fan-inlet': { 'bag-split': { film: 0.6, clean: 0.25, caked: 0.15 } },
}

/** The bag, behind the cover `bag-door`. */
export const bag: BlueprintFragment = { parts, faults, checks, repairs, addsTo }
