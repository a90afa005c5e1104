import type { BlueprintInput } from '../../schema.ts'

/** The covers to be off before the motor can be lifted out, and before its brushes and bearings can be reached. */
export interface SuctionMotorCovers {
  readonly motorCover: string
  readonly motorEnd: string
}

/** Minutes are those once the covers are off; costs, success and break risk from the trade catalogue (judgement). */
export const suctionMotorRepairs = ({ motorCover, motorEnd }: SuctionMotorCovers): BlueprintInput['repairs'] => [
  {
    id: 'suction-motor-swap',
    name: 'Change the suction motor',
    part: 'suction-motor',
    removes: [
      'brushes-worn',
      'brush-stuck',
      'commutator-glazed',
      'commutator-burnt',
      'armature-coil-open',
      'armature-shorted',
      'field-open',
      'winding-to-metal',
      'water-in-motor',
      'bearing-brush-end-noisy',
      'bearing-fan-end-noisy',
      'motor-seized',
      'fan-choked',
      'motor-seal-leaks',
      'cooling-vents-felted',
    ],
    coversOff: [motorCover],
    options: [
      {
        id: 'new',
        name: 'New motor with seal',
        minutes: 30,
        costMinor: { low: 1800, high: 4500 },
        success: 0.96,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Tested used motor',
        minutes: 30,
        costMinor: { low: 1200, high: 2500 },
        success: 0.9,
        breakRisk: 0.04,
      },
    ],
    note: 'Carbon brushes, commutator and motor fan come with it; fit a new motor seal and clear the vents. Worth it only if the rest is good.',
  },
  {
    id: 'carbon-brushes-new',
    name: 'New carbon brushes',
    part: 'carbon-brushes',
    removes: ['brushes-worn', 'brush-stuck'],
    coversOff: [motorEnd],
    options: [
      {
        id: 'new',
        name: 'Pair, same grade and size',
        minutes: 25,
        costMinor: { low: 400, high: 1000 },
        success: 0.88,
        breakRisk: 0.04,
      },
    ],
    note: 'Same way round. Run in gently for half an hour. No emery: its grit conducts.',
    forbidden: 'Packing a short brush out: it breaks up.',
  },
  {
    id: 'brush-free',
    name: 'Free the stuck brush',
    part: 'carbon-brushes',
    removes: ['brush-stuck'],
    coversOff: [motorEnd],
    options: [
      {
        id: 'clean',
        name: 'Clean slot and brush, no oil',
        minutes: 20,
        costMinor: { low: 0, high: 30 },
        success: 0.82,
        breakRisk: 0.04,
      },
    ],
  },
  {
    id: 'commutator-clean',
    name: 'Clean the commutator',
    part: 'commutator',
    removes: ['commutator-glazed'],
    coversOff: [motorEnd],
    options: [
      {
        id: 'clean',
        name: 'Fine abrasive strip, clear the slots',
        minutes: 25,
        costMinor: { low: 0, high: 300 },
        success: 0.82,
        breakRisk: 0.04,
      },
    ],
    note: 'Blow and vacuum out all copper dust.',
    forbidden: 'Emery cloth: its grit conducts between the bars.',
  },
  {
    id: 'bearings-new',
    name: 'New motor bearings',
    part: 'suction-motor',
    removes: ['bearing-brush-end-noisy', 'bearing-fan-end-noisy'],
    coversOff: [motorEnd],
    options: [
      {
        id: 'new',
        name: 'Both ends, measured size',
        minutes: 45,
        costMinor: { low: 200, high: 600 },
        success: 0.75,
        breakRisk: 0.1,
      },
    ],
    note: 'The fan nut is often left-handed and the fan bends. Only if a motor costs over £45 or cannot be had.',
    forbidden: 'Oil in a sealed bearing: quiet for a week.',
  },
  {
    id: 'motor-dry-out',
    name: 'Strip and dry the motor',
    part: 'suction-motor',
    removes: ['water-in-motor'],
    coversOff: [motorEnd],
    options: [
      {
        id: 'clean',
        name: '48 h warm and dry, then 500 V test',
        minutes: 40,
        costMinor: { low: 0, high: 100 },
        success: 0.3,
        breakRisk: 0.01,
      },
    ],
    note: 'Below 1 MΩ after drying: condemn it.',
    forbidden: 'Running it to dry it.',
  },
  {
    id: 'fan-clean',
    name: 'Clean the fan',
    part: 'motor-fan',
    removes: ['fan-choked'],
    coversOff: [motorEnd],
    options: [
      {
        id: 'clean',
        name: 'Brush and vacuum, no liquid',
        minutes: 30,
        costMinor: { low: 0, high: 50 },
        success: 0.6,
        breakRisk: 0.04,
      },
    ],
    note: 'Only if the bearings are silent.',
  },
  {
    id: 'motor-seal-new',
    name: 'New motor seal',
    part: 'motor-seal',
    removes: ['motor-seal-leaks'],
    coversOff: [motorCover],
    options: [
      { id: 'new', name: 'New seal', minutes: 25, costMinor: { low: 200, high: 500 }, success: 0.94, breakRisk: 0.04 },
      {
        id: 'refit',
        name: 'Own seal, seated right',
        minutes: 20,
        costMinor: { low: 0, high: 0 },
        success: 0.6,
        breakRisk: 0.04,
      },
    ],
  },
  {
    id: 'vents-clean',
    name: 'Clear the cooling vents',
    part: 'suction-motor',
    removes: ['cooling-vents-felted'],
    coversOff: [motorCover],
    options: [
      {
        id: 'clean',
        name: 'Brush and vacuum',
        minutes: 12,
        costMinor: { low: 0, high: 0 },
        success: 0.96,
        breakRisk: 0.01,
      },
    ],
  },
]
