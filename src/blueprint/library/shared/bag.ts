import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  { id: 'bag', name: 'Bag', does: 'Keeps the dust', group: 'air', behind: 'bag-door' },
  { id: 'bag-door-seal', name: 'Bag door seal', does: 'Seals the bag chamber', group: 'air', behind: 'bag-door' },
  {
    id: 'bag-door-latch',
    name: 'Bag door and latch',
    does: 'Holds the door shut',
    group: 'air',
    spareShare: { low: 0.05, high: 0.1 },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'bag-full',
    part: 'bag',
    name: 'Bag full',
    how: 'Full, or pores closed by fine dust. Its neck may be packed too.',
    rate: { rows: [['A01', 1]], component: { id: 'bag-full', share: 1 } },
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
  {
    id: 'bag-door-seal-perished',
    part: 'bag-door-seal',
    name: 'Bag door seal perished or rolled',
    how: 'Whistles; a paper strip slips out of the shut door.',
    rate: { rows: [['A04', 1]], component: { id: 'seals', share: 0.6 } },
    complaints: { 'weak-suction': 0.7, 'dust-leaks': 0.3, noise: 0.25 },
    saleShareIfLeft: 0.6,
  },
  {
    id: 'bag-door-latch-broken',
    part: 'bag-door-latch',
    name: 'Bag door latch broken',
    how: 'The door springs open or gapes under suction.',
    rate: { rows: [['A05', 1]], component: { id: 'casing', share: 0.4 } },
    complaints: { 'weak-suction': 0.55, 'dust-leaks': 0.3 },
    saleShareIfLeft: 0.3,
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-bag',
    name: 'Bag',
    how: 'Plug out. Open the bag door outdoors. How full? Dust loose in the chamber?',
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
    kind: 'look',
    id: 'paper-strip-door',
    name: 'Paper strip round the bag door',
    how: 'Plug out. Shut the door on a paper strip, pull; six places. The door must stay shut.',
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
  {
    kind: 'air',
    id: 'air-new-bag',
    name: 'Suction with a new bag',
    how: 'Plug out, new bag in, door shut. Covers on, RCD socket of 30 mA or less, hands clear of brush and impeller. Palm over the hose end. Plug out before touching.',
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
  {
    id: 'door-seal-mend',
    name: 'Mend the bag door seal',
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
    name: 'Mend the bag door latch',
    part: 'bag-door-latch',
    removes: ['bag-door-latch-broken'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'salvaged',
        name: 'Latch or door from a donor',
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
  'look-pre-motor-filter': { 'bag-split': { clogged: 0.45, clean: 0.55 }, 'bag-full': { clogged: 0.3, clean: 0.7 } },
  'look-fan-inlet': { 'bag-split': { film: 0.6, clean: 0.25, caked: 0.15 } },
  'run-listen': {
    'bag-door-seal-perished': { whistle: 0.6, even: 0.4 },
    'bag-door-latch-broken': { whistle: 0.5, even: 0.5 },
    'bag-full': { high: 0.6, even: 0.4 },
  },
  'run-smell': { 'bag-full': { dusty: 0.6, clean: 0.4 }, 'bag-split': { dusty: 0.7, clean: 0.3 } },
  'run-lamps': { 'bag-full': { warning: 0.7, right: 0.3 } },
  'air-hose-end': {
    'bag-full': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-split': { fair: 0.45, strong: 0.5, weak: 0.05 },
    'bag-door-seal-perished': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-door-latch-broken': { fair: 0.6, weak: 0.3, strong: 0.1 },
  },
  'air-head': {
    'bag-full': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-split': { fair: 0.45, strong: 0.5, weak: 0.05 },
    'bag-door-seal-perished': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'bag-door-latch-broken': { fair: 0.6, weak: 0.3, strong: 0.1 },
  },
  'air-sealed': {
    'bag-door-seal-perished': { fair: 0.65, weak: 0.3, strong: 0.05 },
    'bag-door-latch-broken': { fair: 0.5, weak: 0.45, strong: 0.05 },
  },
  'air-blockage-lamp': {
    'bag-full': { 'stays-lit': 0.6, right: 0.4 },
    'bag-door-seal-perished': { 'stays-dark': 0.3, right: 0.7 },
  },
  'run-soak': { 'bag-full': { 'cuts-out': 0.55, cool: 0.35, smells: 0.1 } },
  'run-full': {
    'bag-door-seal-perished': { weak: 0.88, works: 0.12 },
    'bag-door-latch-broken': { weak: 0.75, leaks: 0.15, works: 0.1 },
  },
}

/** Bag, its door, seal and latch. The door is the cover `bag-door`. */
export const bag: BlueprintFragment = { parts, faults, checks, repairs, addsTo }
