import type { BlueprintFragment } from '../../fragment.ts'

export interface FlexEntryOptions {
  /** Where the flex goes in, as “the handle”. */
  readonly entry: string
  readonly entryCover: string
  /** What wears it there, as “Bends at the cord grip with every stroke”. */
  readonly wear: string
}

const parts = (o: FlexEntryOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'flex-entry',
    name: `Flex at ${o.entry}`,
    does: o.wear,
    group: 'electrical',
  },
]

const faults = (o: FlexEntryOptions): NonNullable<BlueprintFragment['faults']> => [
  {
    id: 'flex-entry-line-flickers',
    part: 'flex-entry',
    name: `Flex at ${o.entry}, line core comes and goes`,
    how: `${o.wear}; strands part inside the sheath.`,
    rate: { rows: [['P05', 0.36]], component: { id: 'flex-entry', share: 0.36 } },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.88, dead: 0.5, sparks: 0.08, smell: 0.06 },
    excludes: ['flex-plug-line-flickers', 'flex-plug-line-open', 'flex-entry-line-open', 'flex-mid-line-open'],
  },
  {
    id: 'flex-entry-line-open',
    part: 'flex-entry',
    name: `Flex at ${o.entry}, line core broken`,
    how: 'Worn through at the cord grip, often after weeks of coming and going.',
    rate: { rows: [['P05', 0.22]], component: { id: 'flex-entry', share: 0.22 } },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.3 },
    excludes: ['flex-plug-line-flickers', 'flex-plug-line-open', 'flex-entry-line-flickers', 'flex-mid-line-open'],
  },
  {
    id: 'flex-entry-neutral-flickers',
    part: 'flex-entry',
    name: `Flex at ${o.entry}, neutral core comes and goes`,
    how: `${o.wear}; strands part inside the sheath.`,
    rate: { rows: [['P05', 0.26]], component: { id: 'flex-entry', share: 0.26 } },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.88, dead: 0.5, sparks: 0.08, smell: 0.06 },
    excludes: ['flex-plug-neutral-flickers', 'flex-plug-neutral-open', 'flex-entry-neutral-open'],
  },
  {
    id: 'flex-entry-neutral-open',
    part: 'flex-entry',
    name: `Flex at ${o.entry}, neutral core broken`,
    how: 'Worn through at the cord grip, often after weeks of coming and going.',
    rate: { rows: [['P05', 0.16]], component: { id: 'flex-entry', share: 0.16 } },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.3 },
    excludes: ['flex-plug-neutral-flickers', 'flex-plug-neutral-open', 'flex-entry-neutral-flickers'],
  },
]

const checks = (o: FlexEntryOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'meter',
    id: 'pins-bend-entry',
    name: `Pin to pin, bend the flex at ${o.entry}`,
    how: 'Plug out. Switch on, probes held on the pins. Bend and push the flex at the cord grip.',
    minutes: 1,
    red: 'plug.line',
    black: 'plug.neutral',
    controls: { 'mains-switch': 'on' },
    moving: ['flex-entry'],
  },
  {
    kind: 'meter',
    id: 'line-core-bend-entry',
    name: `Brown core, bend at ${o.entry}`,
    how: `Plug out. Probes on line pin and brown core at ${o.entry}. Bend the flex in its cord grip.`,
    minutes: 1,
    red: 'plug.line',
    black: 'flex.line',
    moving: ['flex-entry'],
  },
  {
    kind: 'meter',
    id: 'neutral-core-bend-entry',
    name: `Blue core, bend at ${o.entry}`,
    how: `Plug out. Probes on neutral pin and blue core at ${o.entry}. Bend the flex in its cord grip.`,
    minutes: 1,
    red: 'plug.neutral',
    black: 'flex.neutral',
    moving: ['flex-entry'],
  },
]

const repairs = (o: FlexEntryOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'flex-shorten-entry',
    name: `Shorten the flex at ${o.entry}`,
    part: 'flex-entry',
    removes: [
      'flex-entry-line-flickers',
      'flex-entry-line-open',
      'flex-entry-neutral-flickers',
      'flex-entry-neutral-open',
    ],
    coversOff: [o.entryCover],
    options: [
      {
        id: 'refit',
        name: 'Cut back 100 mm, own cord grip',
        minutes: 20,
        costMinor: { low: 0, high: 40 },
        success: 0.93,
        breakRisk: 0.04,
      },
      {
        id: 'new',
        name: 'Cut back 100 mm, new cord grip',
        minutes: 20,
        costMinor: { low: 80, high: 200 },
        success: 0.95,
        breakRisk: 0.04,
      },
    ],
    note: 'Warm a stiff grip before you open it. State the shorter length.',
    forbidden: `A joint outside ${o.entry}: it pulls apart and heats.`,
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'feel-flex-ends': {
    'flex-entry-line-flickers': { 'soft-entry': 0.65, even: 0.34, 'soft-plug': 0.01 },
    'flex-entry-line-open': { 'soft-entry': 0.75, even: 0.24, 'soft-plug': 0.01 },
    'flex-entry-neutral-flickers': { 'soft-entry': 0.65, even: 0.34, 'soft-plug': 0.01 },
    'flex-entry-neutral-open': { 'soft-entry': 0.75, even: 0.24, 'soft-plug': 0.01 },
  },
  'run-move-flex': {
    'flex-entry-line-flickers': { flickers: 0.9, steady: 0.1 },
    'flex-entry-neutral-flickers': { flickers: 0.9, steady: 0.1 },
  },
  'run-soak': {
    'flex-entry-line-flickers': { 'cuts-out': 0.6, 'hot-lead': 0.2, cool: 0.2 },
    'flex-entry-neutral-flickers': { 'cuts-out': 0.6, 'hot-lead': 0.2, cool: 0.2 },
  },
  'run-full': {
    'flex-entry-line-flickers': { 'cuts-out': 0.95, works: 0.05 },
    'flex-entry-neutral-flickers': { 'cuts-out': 0.95, works: 0.05 },
  },
}

/** A flex that ends in a cord grip: it breaks where it bends. */
export const flexEntry = (o: FlexEntryOptions): BlueprintFragment => ({
  parts: parts(o),
  faults: faults(o),
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
