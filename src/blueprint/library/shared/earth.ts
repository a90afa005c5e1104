import type { BlueprintFragment } from '../../fragment.ts'
import { catalogue } from './sources.ts'

export interface EarthOptions {
  /** Where the flex ends, as “the handle”. */
  readonly entry: string
  readonly entryCover: string
  readonly lengthM: number
  readonly areaMm2: number
  /** The reading, pin to metal, above which the path is refused: the limit of 0.1 Ω plus the cord and what a cheap meter adds. */
  readonly passesAtMostOhm: number
}

const points = (o: EarthOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'plug.earth', name: 'Earth pin of the plug' },
  { id: 'flex.earth', name: `Earth core at ${o.entry}`, behind: o.entryCover },
]

const parts = (o: EarthOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'earth-core',
    name: 'Earth core of the flex',
    does: 'Joins the metal of the machine to the earth pin',
    group: 'electrical',
  },
  {
    id: 'earth-bond',
    name: 'Earth bond',
    does: 'Ring and screw that hold the earth core on the metal',
    group: 'electrical',
    behind: o.entryCover,
  },
]

const circuit = (o: EarthOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'wire',
    id: 'flex-earth',
    part: 'earth-core',
    from: 'plug.earth',
    to: 'flex.earth',
    lengthM: o.lengthM,
    areaMm2: o.areaMm2,
  },
  {
    kind: 'resistor',
    id: 'earth-bond',
    part: 'earth-bond',
    from: 'flex.earth',
    to: 'casing-metal',
    resistanceOhm: 0.02,
    spread: 0.5,
  },
]

const lost = 'Nothing would cut the mains if the metal went live'

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'earth-core-open',
    part: 'earth-core',
    name: 'Earth core broken',
    how: 'Broken where the flex bends, or cut off at the plug. The machine runs as before.',
    rate: {
      perHundred: 2,
      source: { ...catalogue, clause: 'after the two other cores, which break at the same places' },
    },
    electrical: [{ element: 'flex-earth', becomes: 'open' }],
    danger: lost,
  },
  {
    id: 'earth-bond-off',
    part: 'earth-bond',
    name: 'Earth bond off, loose or painted over',
    how: 'Left off after an earlier repair, or its screw worked loose and rusted.',
    rate: { rows: [['Z02', 0.4]], component: { id: 'internal-wire', share: 0.05 } },
    electrical: [{ element: 'earth-bond', becomes: { plusOhm: 30, spread: 2.5 } }],
    danger: lost,
  },
]

const checks = (o: EarthOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'meter',
    id: 'earth-pin-to-metal',
    name: 'Earth pin to bare metal',
    how: 'Plug out. Leads zeroed. Earth pin to each metal part; scratch through paint, bend the flex at its entry. A multimeter shows a lost earth; it does not prove a good one.',
    minutes: 1,
    beforeRunning: true,
    red: 'plug.earth',
    black: 'casing-metal',
    passesAtMostOhm: o.passesAtMostOhm,
  },
  {
    kind: 'meter',
    id: 'earth-pin-to-entry',
    name: `Earth pin to earth core at ${o.entry}`,
    how: 'Plug out. Earth pin to the far end of the earth core.',
    minutes: 1,
    red: 'plug.earth',
    black: 'flex.earth',
  },
  {
    kind: 'meter',
    id: 'earth-bond-through',
    name: 'Through the earth bond',
    how: 'Plug out. Ring of the earth core to bare metal beside it: near nothing.',
    minutes: 1,
    red: 'flex.earth',
    black: 'casing-metal',
  },
]

const repairs = (o: EarthOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'earth-bond-mend',
    name: 'Remake the earth bond',
    part: 'earth-bond',
    removes: ['earth-bond-off'],
    coversOff: [o.entryCover],
    options: [
      {
        id: 'refit',
        name: 'Bright metal, own ring, locking washer',
        minutes: 10,
        costMinor: { low: 0, high: 20 },
        success: 0.95,
        breakRisk: 0.01,
      },
    ],
    note: 'Then the protective conductor is measured with a proper tester.',
    forbidden: 'Leaving it off because the machine runs without it.',
  },
]

/** Class I: an earth core in the flex, and its bond to the metal that a hand can touch. */
export const earth = (o: EarthOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  circuit: circuit(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
})
