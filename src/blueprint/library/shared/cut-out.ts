import type { BlueprintFragment } from '../../fragment.ts'

export interface CutOutOptions {
  readonly cover: string
}

const points = (o: CutOutOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'cutout.in', name: 'Cut-out, supply side', behind: o.cover },
  { id: 'cutout.out', name: 'Cut-out, motor side', behind: o.cover },
]

const parts = (o: CutOutOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'cut-out',
    name: 'Thermal cut-out',
    does: 'Stops the suction motor when it is too hot',
    group: 'electrical',
    behind: o.cover,
    spareShare: { low: 0.01, high: 0.02 },
  },
]

const circuit: NonNullable<BlueprintFragment['circuit']> = [
  {
    kind: 'resistor',
    id: 'cut-out',
    part: 'cut-out',
    from: 'cutout.in',
    to: 'cutout.out',
    resistanceOhm: 0.03,
    spread: 0.5,
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'cut-out-blown',
    part: 'cut-out',
    name: 'Cut-out blown: one-shot type',
    how: 'Opened once for good when the motor was starved of air. Find the blockage.',
    rate: { rows: [['P16', 0.367]], component: { id: 'thermal-cut-out', share: 0.35 } },
    electrical: [{ element: 'cut-out', becomes: 'open' }],
    complaints: { dead: 0.9, 'brush-not-turning': 0.03, smell: 0.15, 'cuts-out': 0.1 },
    excludes: ['cut-out-stays-open', 'cut-out-weak'],
  },
  {
    id: 'cut-out-stays-open',
    part: 'cut-out',
    name: 'Cut-out stays open when cold',
    how: 'Self-resetting type, worn out by years of tripping.',
    rate: { rows: [['P16', 0.383]], component: { id: 'thermal-cut-out', share: 0.4 } },
    electrical: [{ element: 'cut-out', becomes: 'open' }],
    complaints: { dead: 0.9, 'cuts-out': 0.35 },
    excludes: ['cut-out-blown', 'cut-out-weak'],
  },
  {
    id: 'cut-out-weak',
    part: 'cut-out',
    name: 'Cut-out trips too early',
    how: 'Opens at 15 to 40 minutes with good air and a cool motor.',
    rate: { rows: [['P16', 0.25]], component: { id: 'thermal-cut-out', share: 0.25 } },
    complaints: { 'cuts-out': 0.95 },
    excludes: ['cut-out-blown', 'cut-out-stays-open'],
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'meter',
    id: 'cut-out-through',
    name: 'Through the cut-out',
    how: 'Plug out. Cold for an hour, motor push-on off. Tag to tag: near nothing is good, open is finished.',
    minutes: 1,
    red: 'cutout.in',
    black: 'cutout.out',
    unplug: ['motor-tag'],
  },
]

const repairs = (o: CutOutOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'cut-out-new',
    name: 'New thermal cut-out',
    part: 'cut-out',
    removes: ['cut-out-blown', 'cut-out-stays-open', 'cut-out-weak'],
    coversOff: [o.cover],
    options: [
      {
        id: 'new',
        name: 'Same temperature and current',
        minutes: 20,
        costMinor: { low: 100, high: 400 },
        success: 0.96,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'From a donor of the same rating',
        minutes: 20,
        costMinor: { low: 20, high: 150 },
        success: 0.88,
        breakRisk: 0.04,
      },
    ],
    note: 'Find why it was hot: something starved it of air. Crimp a one-shot, do not solder it.',
    forbidden: 'Bridging the cut-out: the next blockage sets the motor on fire.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-soak': { 'cut-out-weak': { 'cuts-out': 0.93, cool: 0.07 } },
  'run-full': { 'cut-out-weak': { 'cuts-out': 0.15, works: 0.85 } },
}

/** The thermal cut-out in the motor’s line. */
export const cutOut = (o: CutOutOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  circuit,
  faults,
  checks,
  repairs: repairs(o),
  addsTo,
})
