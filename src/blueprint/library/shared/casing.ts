import type { BlueprintFragment } from '../../fragment.ts'

export interface CasingOptions {
  /** The cover that casing parts sit under. */
  readonly cover: string
  /** What is opened to look for water marks. */
  readonly lookIn: string
}

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'casing',
    name: 'Casing',
    does: 'Keeps hands off live parts',
    group: 'mechanical',
    spareShare: { low: 0.03, high: 0.08 },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'casing-cracked',
    part: 'casing',
    name: 'Casing cracked, nothing live within reach',
    how: 'Dropped. A test finger reaches nothing.',
    rate: { rows: [['X06', 0.65]], component: { id: 'casing', share: 0.35 } },
    complaints: { noise: 0.05 },
    excludes: ['casing-open'],
    saleShareIfLeft: 0.8,
  },
  {
    id: 'casing-open',
    part: 'casing',
    name: 'Casing broken or a cover missing, live parts within reach',
    how: 'Hole, missing cover or screw: a finger could get to live metal.',
    rate: {
      rows: [
        ['X06', 0.35],
        ['Z03', 0.333],
      ],
      component: { id: 'casing', share: 0.15 },
    },
    complaints: { noise: 0.05 },
    danger: 'The double insulation is broken: live parts can be touched',
    excludes: ['casing-cracked'],
  },
]

const checks = (o: CasingOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-casing',
    name: 'Casing and covers',
    how: 'Plug out. All screws in, all covers on? Try each gap with a 12 mm probe: could it reach live metal?',
    minutes: 2,
    beforeRunning: true,
    coversOn: true,
    outcomes: [
      { id: 'closed', name: 'Closed, nothing live within reach' },
      { id: 'missing', name: 'Cover or screws missing', danger: true },
      { id: 'gap', name: 'Live parts within reach', danger: true },
    ],
    sound: { closed: 0.99, missing: 0.01 },
    under: { 'casing-open': { gap: 0.7, missing: 0.26, closed: 0.04 } },
  },
  {
    kind: 'look',
    id: 'look-cracks',
    name: 'Cracks in the casing',
    how: 'Plug out. Torch along seams and corners, tap: a crack sounds dull.',
    minutes: 1,
    outcomes: [
      { id: 'whole', name: 'Whole, or scratched' },
      { id: 'cracked', name: 'Cracked' },
    ],
    sound: { whole: 0.97, cracked: 0.03 },
    under: { 'casing-cracked': { cracked: 0.95, whole: 0.05 }, 'casing-open': { cracked: 0.8, whole: 0.2 } },
  },
  {
    kind: 'look',
    id: 'look-wet',
    name: 'Water marks, smell of wet',
    how: 'Plug out. Torch into the dust chamber: tide line, rust, crust? Sniff: drains or wet dog?',
    minutes: 1,
    coversOff: [o.lookIn],
    beforeRunning: true,
    outcomes: [
      { id: 'dry', name: 'No water marks' },
      { id: 'tide', name: 'Tide line, rust or wet', danger: true },
    ],
    sound: { dry: 0.99, tide: 0.01 },
    under: {},
  },
]

const repairs = (o: CasingOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'casing-part',
    name: 'Replace the broken casing part',
    part: 'casing',
    removes: ['casing-open', 'casing-cracked'],
    coversOff: [o.cover],
    options: [
      {
        id: 'salvaged',
        name: 'Casing half and screws from a donor',
        minutes: 25,
        costMinor: { low: 300, high: 1500 },
        success: 0.95,
        breakRisk: 0.04,
      },
    ],
    note: 'Then the safety test again.',
    forbidden: 'Glue or tape over live parts: the double insulation would hang on it.',
  },
  {
    id: 'casing-brace',
    name: 'Cement and brace the crack',
    part: 'casing',
    removes: ['casing-cracked'],
    coversOff: [o.cover],
    options: [
      {
        id: 'refit',
        name: 'Solvent cement, brace inside',
        minutes: 25,
        costMinor: { low: 50, high: 200 },
        success: 0.8,
        breakRisk: 0.04,
      },
    ],
    note: 'Only where nothing live is behind it.',
  },
]

/** The casing that keeps hands off live parts, and looks at the whole machine. */
export const casing = (o: CasingOptions): BlueprintFragment => ({
  parts,
  faults,
  checks: checks(o),
  repairs: repairs(o),
})
