import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'wheels',
    name: 'Wheels and castors',
    does: 'Carry the machine',
    group: 'mechanical',
    spareShare: { low: 0.04, high: 0.06 },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'wheel-stuck',
    part: 'wheels',
    name: 'Wheel or castor jammed, split or lost',
    how: 'Hair round the axle, a flat on the tread, a castor gone.',
    rate: {
      rows: [
        ['X03', 0.6],
        ['X04', 0.6],
        ['H24', 0.5],
      ],
      component: { id: 'wheels', share: 0.8 },
    },
    complaints: { 'hard-to-push': 0.6, noise: 0.3 },
    saleShareIfLeft: 0.7,
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'roll-wheels',
    name: 'Wheels on the bench',
    how: 'Plug out. Roll it, spin each wheel and castor by finger.',
    minutes: 0.7,
    outcomes: [
      { id: 'roll', name: 'Roll freely, all there' },
      { id: 'stuck', name: 'One jammed, split or missing' },
    ],
    sound: { roll: 0.96, stuck: 0.04 },
    under: { 'wheel-stuck': { stuck: 0.95, roll: 0.05 } },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'wheel-mend',
    name: 'Clean or change the wheel',
    part: 'wheels',
    removes: ['wheel-stuck'],
    options: [
      {
        id: 'clean',
        name: 'Hair cut out, axle back',
        minutes: 8,
        costMinor: { low: 0, high: 0 },
        success: 0.65,
        breakRisk: 0.02,
      },
      {
        id: 'salvaged',
        name: 'Pair from a donor',
        minutes: 8,
        costMinor: { low: 50, high: 500 },
        success: 0.95,
        breakRisk: 0.02,
      },
    ],
  },
]

/** Wheels and castors. */
export const wheels: BlueprintFragment = {
  parts,
  faults,
  checks,
  repairs,
  addsTo: { 'run-full': { 'wheel-stuck': { height: 0.8, noisy: 0.1, works: 0.1 } } },
}
