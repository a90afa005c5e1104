import type { BlueprintFragment } from '../../fragment.ts'

export interface SuppressionCapacitorOptions {
  /** The two points it lies across. */
  readonly from: string
  readonly to: string
  readonly capacitanceF: number
  /** Elements pulled off to measure it alone. */
  readonly unplug: string[]
  readonly cover: string
}

const parts = (o: SuppressionCapacitorOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'x2-capacitor',
    name: 'Suppression capacitor',
    does: 'Keeps motor noise off the mains',
    group: 'electrical',
    behind: o.cover,
  },
]

const circuit = (o: SuppressionCapacitorOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'capacitor',
    id: 'x2-capacitor',
    part: 'x2-capacitor',
    from: o.from,
    to: o.to,
    capacitanceF: o.capacitanceF,
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'capacitor-shorted',
    part: 'x2-capacitor',
    name: 'Suppression capacitor shorted',
    how: 'Burst or bulged after a surge.',
    rate: { rows: [['P19', 0.4]], component: { id: 'suppression-capacitor', share: 0.4 } },
    electrical: [{ element: 'x2-capacitor', becomes: { ohm: 0.4, spread: 1 } }],
    complaints: { 'trips-supply': 0.92, dead: 0.45, smell: 0.3, sparks: 0.1 },
    danger: 'A short inside the body',
    excludes: ['capacitor-leaky'],
  },
  {
    id: 'capacitor-leaky',
    part: 'x2-capacitor',
    name: 'Suppression capacitor leaky or cracked',
    how: 'Cracked epoxy, damp inside; gets warm and will go short in time.',
    rate: { rows: [['P19', 0.6]], component: { id: 'suppression-capacitor', share: 0.5 } },
    electrical: [{ element: 'x2-capacitor', becomes: { ohm: 20000, spread: 1 } }],
    complaints: { smell: 0.2, 'trips-supply': 0.05 },
    excludes: ['capacitor-shorted'],
    saleShareIfLeft: 0.3,
  },
]

const checks = (o: SuppressionCapacitorOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-capacitor',
    name: 'Suppression capacitor',
    how: 'Plug out. Bulged, cracked, weeping?',
    minutes: 0.7,
    coversOff: [o.cover],
    outcomes: [
      { id: 'whole', name: 'Whole' },
      { id: 'cracked', name: 'Bulged or cracked' },
    ],
    sound: { whole: 0.97, cracked: 0.03 },
    under: { 'capacitor-shorted': { cracked: 0.75, whole: 0.25 }, 'capacitor-leaky': { cracked: 0.65, whole: 0.35 } },
  },
  {
    kind: 'meter',
    id: 'capacitor-across',
    name: 'Across the capacitor alone',
    how: 'Plug out; discharge it through 10 kΩ first. All else pulled off. Open after a moment is good, a steady reading is leaky.',
    minutes: 2,
    red: o.from,
    black: o.to,
    unplug: o.unplug,
  },
]

const repairs = (o: SuppressionCapacitorOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'capacitor-new',
    name: 'New suppression capacitor',
    part: 'x2-capacitor',
    removes: ['capacitor-shorted', 'capacitor-leaky'],
    coversOff: [o.cover],
    options: [
      {
        id: 'new',
        name: 'Class X2, same value',
        minutes: 15,
        costMinor: { low: 60, high: 400 },
        success: 0.98,
        breakRisk: 0.01,
      },
    ],
    forbidden: 'Leaving it out: the motor then puts its noise on the mains, and it no longer meets its approval.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-soak': { 'capacitor-leaky': { smells: 0.2, cool: 0.8 } },
}

/** The capacitor across the mains that keeps motor noise off it. */
export const suppressionCapacitor = (o: SuppressionCapacitorOptions): BlueprintFragment => ({
  parts: parts(o),
  circuit: circuit(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
