import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  { id: 'bin', name: 'Bin', does: 'Keeps the dust', group: 'air', spareShare: { low: 0.15, high: 0.25 } },
  { id: 'bin-seal', name: 'Bin seal', does: 'Seals bin and base flap', group: 'air' },
  { id: 'bin-catch', name: 'Base flap and catch', does: 'Holds the bin shut', group: 'mechanical' },
  {
    id: 'cyclone',
    name: 'Cyclone and shroud',
    does: 'Spins the dust out of the air',
    group: 'air',
    behind: 'cyclone-cover',
    air: { kind: 'passage', like: 'cyclone' },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'bin-full',
    part: 'bin',
    name: 'Bin over its mark',
    how: 'Dust is carried on into cyclone and filter.',
    rate: { rows: [['A01', 1]], component: { id: 'bag-full', share: 1 } },
    complaints: { 'weak-suction': 0.75, 'dust-leaks': 0.1, smell: 0.15 },
    saleShareIfLeft: 1,
    air: { does: 'blocks', part: 'cyclone' },
  },
  {
    id: 'bin-cracked',
    part: 'bin',
    name: 'Bin cracked',
    how: 'Dropped while full; a hairline beside the handle or the hinge.',
    rate: { rows: [['A10', 0.5]], component: { id: 'bag-or-bin', share: 0.3 } },
    complaints: { 'weak-suction': 0.6, 'dust-leaks': 0.4, noise: 0.2 },
    saleShareIfLeft: 0.5,
    air: { does: 'leaks', part: 'bin', side: 'before' },
  },
  {
    id: 'bin-catch-broken',
    part: 'bin-catch',
    name: 'Base flap catch or hinge broken',
    how: 'The flap drops open or gapes under suction.',
    rate: {
      rows: [
        ['A10', 0.5],
        ['A05', 0.5],
      ],
      component: { id: 'casing', share: 0.4 },
    },
    complaints: { 'weak-suction': 0.6, 'dust-leaks': 0.5 },
    saleShareIfLeft: 0.3,
    air: { does: 'leaks', part: 'bin', side: 'before' },
  },
  {
    id: 'bin-seal-leaks',
    part: 'bin-seal',
    name: 'Bin seal dirty, rolled or perished',
    how: 'Grit under the lip; whistles.',
    rate: {
      rows: [
        ['A04', 1],
        ['A09', 0.3],
      ],
      component: { id: 'seals', share: 0.6 },
    },
    complaints: { 'weak-suction': 0.75, 'dust-leaks': 0.3, noise: 0.25 },
    saleShareIfLeft: 0.6,
    air: { does: 'leaks', part: 'bin', side: 'before' },
  },
  {
    id: 'cyclone-choked',
    part: 'cyclone',
    name: 'Cyclone cones or shroud choked',
    how: 'Fine dust packed in the cones, hair felted round the shroud.',
    rate: { rows: [['A09', 0.7]], component: { id: 'blockage-unplaced', share: 0.3 } },
    complaints: { 'weak-suction': 0.85, 'cuts-out': 0.25, 'dust-leaks': 0.15, smell: 0.15 },
    saleShareIfLeft: 0.8,
    air: { does: 'blocks', part: 'cyclone' },
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-bin',
    name: 'Bin, flap and catch',
    how: 'Plug out. Bin off, outdoors. Over its mark? Lamp inside: cracks? Press the catch: does the flap stay shut?',
    minutes: 1.5,
    outcomes: [
      { id: 'good', name: 'Whole, shuts, room in it' },
      { id: 'full', name: 'Over its mark' },
      { id: 'cracked', name: 'Cracked' },
      { id: 'catch', name: 'Flap gapes or drops' },
    ],
    sound: { good: 0.93, full: 0.06, cracked: 0.01 },
    under: {
      'bin-full': { full: 0.96, good: 0.04 },
      'bin-cracked': { cracked: 0.9, good: 0.1 },
      'bin-catch-broken': { catch: 0.94, good: 0.06 },
    },
  },
  {
    kind: 'look',
    id: 'look-bin-seal',
    name: 'Bin seals, paper strip',
    how: 'Plug out. Wipe, look and feel all round; shut the bin on a paper strip and pull, six places.',
    minutes: 2,
    outcomes: [
      { id: 'grips', name: 'Clean, grips all round' },
      { id: 'slips', name: 'Gritty, torn, or slips somewhere' },
    ],
    sound: { grips: 0.93, slips: 0.07 },
    under: {
      'bin-seal-leaks': { slips: 0.9, grips: 0.1 },
      'bin-catch-broken': { slips: 0.7, grips: 0.3 },
      'bin-cracked': { slips: 0.1, grips: 0.9 },
    },
  },
  {
    kind: 'look',
    id: 'look-cyclone',
    name: 'Shroud and cones by torch',
    how: 'Plug out, separator in hand. Light through the shroud and the cones: clear holes, or packed?',
    minutes: 1.5,
    coversOff: ['cyclone-cover'],
    outcomes: [
      { id: 'clear', name: 'Clear, at most a film' },
      { id: 'packed', name: 'Packed or felted' },
    ],
    sound: { clear: 0.9, packed: 0.1 },
    under: { 'cyclone-choked': { packed: 0.95, clear: 0.05 }, 'bin-full': { packed: 0.3, clear: 0.7 } },
  },
  {
    kind: 'air',
    id: 'air-bin-emptied',
    name: 'Suction with the bin emptied',
    how: 'Plug out, bin emptied outdoors, back on. Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Palm over the hose end. Plug out before touching.',
    minutes: 2.5,
    controls: { 'mains-switch': 'on' },
    outcomes: [
      { id: 'same', name: 'Pulls as before' },
      { id: 'better', name: 'Pulls harder' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { same: 0.95, better: 0.05 },
    under: { 'bin-full': { better: 0.85, same: 0.15 }, 'bin-catch-broken': { better: 0.15, same: 0.85 } },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'bin-empty',
    name: 'Empty the bin',
    part: 'bin',
    removes: ['bin-full'],
    options: [
      {
        id: 'clean',
        name: 'Emptied outdoors, shroud brushed',
        minutes: 4,
        costMinor: { low: 0, high: 0 },
        success: 0.99,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'bin-swap',
    name: 'Change the bin',
    part: 'bin',
    removes: ['bin-cracked', 'bin-catch-broken', 'bin-full'],
    options: [
      {
        id: 'salvaged',
        name: 'Bin from a donor',
        minutes: 5,
        costMinor: { low: 300, high: 2000 },
        success: 0.95,
        breakRisk: 0.01,
      },
      { id: 'new', name: 'New bin', minutes: 5, costMinor: { low: 1000, high: 2500 }, success: 0.98, breakRisk: 0.01 },
    ],
    note: 'Base flap and catch come with it.',
    forbidden: 'Tape or glue over a crack: clear plastic creeps and the buyer gets the dust.',
  },
  {
    id: 'bin-catch-mend',
    name: 'Mend the catch',
    part: 'bin-catch',
    removes: ['bin-catch-broken'],
    options: [
      {
        id: 'refit',
        name: 'Pin or spring replaced',
        minutes: 12,
        costMinor: { low: 0, high: 50 },
        success: 0.7,
        breakRisk: 0.06,
      },
    ],
  },
  {
    id: 'bin-seal-mend',
    name: 'Mend the bin seals',
    part: 'bin-seal',
    removes: ['bin-seal-leaks'],
    options: [
      {
        id: 'clean',
        name: 'Washed, seated again',
        minutes: 8,
        costMinor: { low: 0, high: 20 },
        success: 0.75,
        breakRisk: 0.01,
      },
      { id: 'new', name: 'New seal', minutes: 8, costMinor: { low: 200, high: 700 }, success: 0.95, breakRisk: 0.01 },
    ],
  },
  {
    id: 'cyclone-wash',
    name: 'Wash the separator',
    part: 'cyclone',
    removes: ['cyclone-choked'],
    coversOff: ['cyclone-cover'],
    options: [
      {
        id: 'clean',
        name: 'Lukewarm water, shaken out, 24 to 48 h dry',
        minutes: 20,
        costMinor: { low: 0, high: 20 },
        success: 0.85,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Separator from a donor',
        minutes: 8,
        costMinor: { low: 300, high: 1500 },
        success: 0.93,
        breakRisk: 0.04,
      },
    ],
    note: 'The cones hold water: put back damp it ruins the motor.',
  },
]

const weakSuction = {
  'bin-cracked': { fair: 0.55, weak: 0.35, strong: 0.1 },
  'bin-catch-broken': { weak: 0.6, fair: 0.35, strong: 0.05 },
  'bin-seal-leaks': { fair: 0.6, weak: 0.3, strong: 0.1 },
  'cyclone-choked': { weak: 0.5, fair: 0.45, strong: 0.05 },
  'bin-full': { fair: 0.5, strong: 0.3, weak: 0.2 },
}

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'look-pre-motor-filter': {
    'cyclone-choked': { clogged: 0.5, clean: 0.5 },
    'bin-full': { clogged: 0.4, clean: 0.6 },
    'bin-seal-leaks': { clogged: 0.3, clean: 0.7 },
  },
  'run-listen': {
    'bin-cracked': { whistle: 0.6, even: 0.4 },
    'bin-catch-broken': { whistle: 0.5, even: 0.5 },
    'bin-seal-leaks': { whistle: 0.6, even: 0.4 },
    'cyclone-choked': { high: 0.55, even: 0.45 },
    'bin-full': { high: 0.4, even: 0.6 },
  },
  'air-hose-end': weakSuction,
  'air-head': weakSuction,
  'air-sealed': {
    'bin-cracked': { fair: 0.65, weak: 0.3, strong: 0.05 },
    'bin-catch-broken': { weak: 0.6, fair: 0.35, strong: 0.05 },
    'bin-seal-leaks': { fair: 0.65, weak: 0.3, strong: 0.05 },
  },
  'run-soak': { 'cyclone-choked': { 'cuts-out': 0.45, smells: 0.15, cool: 0.4 } },
  'run-full': {
    'bin-cracked': { weak: 0.7, leaks: 0.25, works: 0.05 },
    'bin-catch-broken': { leaks: 0.6, weak: 0.35, works: 0.05 },
    'bin-seal-leaks': { weak: 0.7, leaks: 0.2, works: 0.1 },
    'cyclone-choked': { weak: 0.9, works: 0.1 },
  },
}

/** A clear bin with its seals and the separator that spins the dust out, behind `cyclone-cover`. */
export const binAndCyclone: BlueprintFragment = { parts, faults, checks, repairs, addsTo }
