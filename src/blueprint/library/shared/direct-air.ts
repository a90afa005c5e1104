import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'dirt-fan',
    name: 'Dirt fan',
    does: 'Throws dirt and air up into the bag',
    group: 'air',
    behind: 'fan-cover',
    spareShare: { low: 0.08, high: 0.15 },
  },
  { id: 'fill-tube', name: 'Fill tube', does: 'Leads the dirt up to the bag', group: 'air', behind: 'fan-cover' },
  { id: 'cloth-bag', name: 'Outer bag', does: 'Lets the air out', group: 'air', spareShare: { low: 0.08, high: 0.15 } },
  { id: 'bag', name: 'Paper bag', does: 'Keeps the dust', group: 'air', behind: 'bag-door' },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'dirt-fan-chipped',
    part: 'dirt-fan',
    name: 'Dirt fan chipped or cracked',
    how: 'A coin or screw went through it: strong vibration, a missing blade by torch.',
    rate: { rows: [['M14', 1]], component: { id: 'fan-wheel', share: 0.7 } },
    complaints: { noise: 0.85, 'weak-suction': 0.5, 'poor-pickup': 0.3 },
    danger: 'A cracked fan can fly apart at speed',
    excludes: ['dirt-fan-loose'],
  },
  {
    id: 'dirt-fan-loose',
    part: 'dirt-fan',
    name: 'Dirt fan loose on its shaft',
    how: 'Its nut worked loose, or its thread stripped: the motor spins, the fan does not.',
    rate: { rows: [['M15', 1]], component: { id: 'fan-wheel', share: 0.3 } },
    complaints: { 'weak-suction': 0.85, noise: 0.5 },
    excludes: ['dirt-fan-chipped'],
  },
  {
    id: 'fill-tube-blocked',
    part: 'fill-tube',
    name: 'Fill tube or fan housing blocked',
    how: 'Damp fluff, a sock, a straw across the bend. It spits dirt back at the floor.',
    rate: { rows: [['A16', 1]], component: { id: 'blockage-unplaced', share: 0.4 } },
    complaints: { 'weak-suction': 0.8, 'poor-pickup': 0.5, 'dust-leaks': 0.3 },
    saleShareIfLeft: 0.8,
  },
  {
    id: 'bag-full',
    part: 'bag',
    name: 'Bag full',
    how: 'Full, or pores closed by fine dust: it balloons.',
    rate: { rows: [['A01', 1]], component: { id: 'bag-full', share: 1 } },
    complaints: { 'weak-suction': 0.8, 'poor-pickup': 0.5, 'dust-leaks': 0.25 },
    saleShareIfLeft: 1,
  },
  {
    id: 'bag-split',
    part: 'bag',
    name: 'Bag split or off its collar',
    how: 'Dust loose in the outer bag.',
    rate: { rows: [['A02', 1]], component: { id: 'bag-or-bin', share: 0.4 } },
    complaints: { 'dust-leaks': 0.9, smell: 0.3 },
    saleShareIfLeft: 0.95,
  },
  {
    id: 'cloth-bag-torn',
    part: 'cloth-bag',
    name: 'Outer bag torn, its zip or clamp broken',
    how: 'Dust in the air as soon as it runs.',
    rate: {
      rows: [
        ['A04', 0.5],
        ['A05', 0.5],
      ],
      component: { id: 'bag-or-bin', share: 0.3 },
    },
    complaints: { 'dust-leaks': 0.9 },
    saleShareIfLeft: 0.4,
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-dirt-fan',
    name: 'Dirt fan by torch',
    how: 'Plug out, plate off. Turn the fan by a stick: all blades there, no crack, no rub? Hold the shaft: does the fan slip on it?',
    minutes: 1.5,
    coversOff: ['fan-cover'],
    outcomes: [
      { id: 'whole', name: 'Whole, firm on its shaft' },
      { id: 'slips', name: 'Slips on its shaft' },
      { id: 'chipped', name: 'Blade missing or cracked', danger: true },
    ],
    sound: { whole: 0.98, chipped: 0.02 },
    under: {
      'dirt-fan-chipped': { chipped: 0.93, whole: 0.07 },
      'dirt-fan-loose': { slips: 0.92, whole: 0.08 },
    },
  },
  {
    kind: 'look',
    id: 'look-fill-tube',
    name: 'Fill tube by torch',
    how: 'Plug out, plate off, bag off its collar. Torch from one end, look from the other; bend-wire round the bend.',
    minutes: 2,
    coversOff: ['fan-cover', 'bag-door'],
    outcomes: [
      { id: 'clear', name: 'Clear' },
      { id: 'blocked', name: 'Something in it' },
    ],
    sound: { clear: 0.97, blocked: 0.03 },
    under: { 'fill-tube-blocked': { blocked: 0.94, clear: 0.06 } },
  },
  {
    kind: 'look',
    id: 'look-bag',
    name: 'Bag',
    how: 'Plug out, outdoors. Outer bag open. How full? Dust loose in the outer bag?',
    minutes: 1.5,
    coversOff: ['bag-door'],
    outcomes: [
      { id: 'room', name: 'Room in it, outer bag clean' },
      { id: 'full', name: 'Full or packed' },
      { id: 'split', name: 'Split or off its collar' },
    ],
    sound: { room: 0.93, full: 0.05, split: 0.02 },
    under: { 'bag-full': { full: 0.96, room: 0.04 }, 'bag-split': { split: 0.95, room: 0.05 } },
  },
  {
    kind: 'look',
    id: 'look-outer-bag',
    name: 'Outer bag against the light',
    how: 'Plug out. Hold the cloth to a lamp: holes, open seam? Work zip or clamp.',
    minutes: 1,
    outcomes: [
      { id: 'whole', name: 'Whole, closes' },
      { id: 'torn', name: 'Hole, open seam, zip or clamp broken' },
    ],
    sound: { whole: 0.96, torn: 0.04 },
    under: { 'cloth-bag-torn': { torn: 0.95, whole: 0.05 } },
  },
  {
    kind: 'air',
    id: 'air-new-bag',
    name: 'Pick-up with a new bag',
    how: 'Plug out, new bag on, outer bag closed. Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Two strokes over bicarbonate. Plug out before touching.',
    minutes: 3,
    costMinor: 120,
    controls: { 'mains-switch': 'on' },
    outcomes: [
      { id: 'same', name: 'As before' },
      { id: 'better', name: 'Much better' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { same: 0.95, better: 0.05 },
    under: { 'bag-full': { better: 0.93, same: 0.07 }, 'bag-split': { better: 0.2, same: 0.8 } },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
  {
    kind: 'air',
    id: 'air-head',
    name: 'Paper under the head',
    how: 'Covers on, RCD socket of 30 mA or less. Brush lifted or standing still if it can be; slide paper under the lip of the head, hands clear of all that turns. Plug out before touching.',
    minutes: 1.5,
    controls: { 'mains-switch': 'on' },
    outcomes: [
      { id: 'strong', name: 'Sticks fast' },
      { id: 'fair', name: 'Sticks loosely' },
      { id: 'weak', name: 'Does not stick, or dirt is spat back' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { strong: 0.95, fair: 0.05 },
    under: {
      'dirt-fan-chipped': { fair: 0.5, weak: 0.3, strong: 0.2 },
      'dirt-fan-loose': { weak: 0.9, fair: 0.1 },
      'fill-tube-blocked': { weak: 0.85, fair: 0.13, strong: 0.02 },
      'bag-full': { fair: 0.6, weak: 0.3, strong: 0.1 },
    },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'dirt-fan-new',
    name: 'New dirt fan',
    part: 'dirt-fan',
    removes: ['dirt-fan-chipped', 'dirt-fan-loose'],
    coversOff: ['fan-cover'],
    options: [
      {
        id: 'new',
        name: 'Same fan, shaft and bearing looked at',
        minutes: 30,
        costMinor: { low: 600, high: 1400 },
        success: 0.93,
        breakRisk: 0.06,
      },
      {
        id: 'salvaged',
        name: 'Fan from a donor',
        minutes: 30,
        costMinor: { low: 200, high: 700 },
        success: 0.88,
        breakRisk: 0.06,
      },
    ],
    note: 'The nut is often left-handed: try both ways gently, with the shaft held.',
  },
  {
    id: 'dirt-fan-tighten',
    name: 'Tighten the dirt fan',
    part: 'dirt-fan',
    removes: ['dirt-fan-loose'],
    coversOff: ['fan-cover'],
    options: [
      {
        id: 'refit',
        name: 'Threads cleaned, nut with thread-lock',
        minutes: 20,
        costMinor: { low: 0, high: 30 },
        success: 0.75,
        breakRisk: 0.06,
      },
    ],
  },
  {
    id: 'fill-tube-clear',
    name: 'Clear the fill tube',
    part: 'fill-tube',
    removes: ['fill-tube-blocked'],
    coversOff: ['fan-cover'],
    options: [
      {
        id: 'clean',
        name: 'Cleared from both ends',
        minutes: 12,
        costMinor: { low: 0, high: 0 },
        success: 0.96,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'bag-new',
    name: 'New bag',
    part: 'bag',
    removes: ['bag-full', 'bag-split'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'new',
        name: 'New bag, outer bag shaken out outdoors',
        minutes: 5,
        costMinor: { low: 100, high: 250 },
        success: 0.98,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'outer-bag-mend',
    name: 'Mend the outer bag',
    part: 'cloth-bag',
    removes: ['cloth-bag-torn'],
    options: [
      {
        id: 'refit',
        name: 'Sewn, zip or clamp replaced',
        minutes: 20,
        costMinor: { low: 0, high: 200 },
        success: 0.8,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'Outer bag from a donor, washed',
        minutes: 10,
        costMinor: { low: 300, high: 1000 },
        success: 0.95,
        breakRisk: 0.01,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-first': { 'dirt-fan-chipped': { rough: 0.9, runs: 0.1 }, 'dirt-fan-loose': { rough: 0.4, runs: 0.6 } },
  'run-listen': {
    'dirt-fan-chipped': { rumble: 0.85, even: 0.15 },
    'dirt-fan-loose': { high: 0.7, rumble: 0.2, even: 0.1 },
    'fill-tube-blocked': { high: 0.4, even: 0.6 },
    'bag-full': { high: 0.4, even: 0.6 },
  },
  'run-smell': { 'bag-full': { dusty: 0.6, clean: 0.4 }, 'bag-split': { dusty: 0.8, clean: 0.2 } },
  'run-full': {
    'dirt-fan-chipped': { noisy: 0.9, weak: 0.08, works: 0.02 },
    'dirt-fan-loose': { weak: 0.95, works: 0.05 },
    'fill-tube-blocked': { weak: 0.8, 'poor-pickup': 0.18, works: 0.02 },
    'cloth-bag-torn': { leaks: 0.96, works: 0.04 },
  },
}

/** The way of the air in a machine whose dirt goes through the fan: fan, fill tube, paper bag inside a cloth one. */
export const directAir: BlueprintFragment = { parts, faults, checks, repairs, addsTo }
