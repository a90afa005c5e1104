import type { BlueprintFragment } from '../../fragment.ts'

export interface HeightDriveOptions {
  readonly headCover: string
}

const points: NonNullable<BlueprintFragment['points']> = [
  { id: 'board.height', name: 'Height drive tag on the board', behind: 'board-cover' },
]

const parts = (o: HeightDriveOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'height-drive',
    name: 'Height drive',
    does: 'Lifts and lowers the head',
    group: 'control',
    behind: o.headCover,
    spareShare: { low: 0.04, high: 0.08 },
  },
  {
    id: 'height-sensor',
    name: 'Height sensor',
    does: 'Feels the load on the brush',
    group: 'control',
    behind: o.headCover,
  },
]

const circuit: NonNullable<BlueprintFragment['circuit']> = [
  {
    kind: 'resistor',
    id: 'height-motor',
    part: 'height-drive',
    from: 'board.height',
    to: 'board.neutral',
    resistanceOhm: 45,
    spread: 0.3,
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'height-drive-stuck',
    part: 'height-drive',
    name: 'Height drive jammed or gear stripped',
    how: 'Ticks; the head moves by hand only.',
    rate: { rows: [['H19', 0.8]], component: { id: 'floor-head', share: 0.25 } },
    complaints: { 'hard-to-push': 0.75, noise: 0.35, 'poor-pickup': 0.3, 'lamp-wrong': 0.3 },
    saleShareIfLeft: 0.5,
  },
  {
    id: 'height-motor-open',
    part: 'height-drive',
    name: 'Height motor open',
    how: 'Small motor burnt out or its plug off.',
    rate: { rows: [['H19', 0.2]], component: { id: 'floor-head', share: 0.05 } },
    electrical: [{ element: 'height-motor', becomes: 'open' }],
    complaints: { 'hard-to-push': 0.75, 'poor-pickup': 0.3, 'lamp-wrong': 0.3 },
    saleShareIfLeft: 0.5,
  },
  {
    id: 'height-sensor-off',
    part: 'height-sensor',
    name: 'Height sensing lost: load sensor or tube off',
    how: 'Hunts, or stays at one end.',
    rate: { rows: [['H18', 1]], component: { id: 'floor-head', share: 0.2 } },
    complaints: { 'hard-to-push': 0.7, 'poor-pickup': 0.35, 'lamp-wrong': 0.4 },
    saleShareIfLeft: 0.5,
  },
]

const checks = (o: HeightDriveOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-height-drive',
    name: 'Height drive and sensor',
    how: 'Plug out, head open. Turn the gear by hand through its travel. Teeth whole, sensor tube on?',
    minutes: 1.5,
    coversOff: [o.headCover],
    outcomes: [
      { id: 'moves', name: 'Moves, tube on' },
      { id: 'tube', name: 'Sensor or tube off, or dirty' },
      { id: 'jammed', name: 'Jammed or teeth gone' },
    ],
    sound: { moves: 0.96, tube: 0.02, jammed: 0.02 },
    under: { 'height-drive-stuck': { jammed: 0.92, moves: 0.08 }, 'height-sensor-off': { tube: 0.75, moves: 0.25 } },
  },
  {
    kind: 'meter',
    id: 'height-motor-through',
    name: 'Height motor',
    how: 'Plug out. Height tag to neutral tag: some tens of ohms.',
    minutes: 1,
    red: 'board.height',
    black: 'board.neutral',
  },
  {
    kind: 'run',
    id: 'run-height',
    name: 'Head height rises and falls',
    how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Handle back, from hard floor to carpet: height settles within ten seconds. Plug out before touching.',
    minutes: 2,
    outcomes: [
      { id: 'settles', name: 'Rises, falls, settles' },
      { id: 'hunts', name: 'Hunts up and down' },
      { id: 'stays', name: 'Stays at one height' },
      { id: 'ticks', name: 'Ticks, does not move' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { settles: 0.97, hunts: 0.03 },
    under: {
      'height-drive-stuck': { ticks: 0.65, stays: 0.33, settles: 0.02 },
      'height-motor-open': { stays: 0.97, settles: 0.03 },
      'height-sensor-off': { hunts: 0.5, stays: 0.45, settles: 0.05 },
    },
    controls: { 'mains-switch': 'on', 'handle-position': 'reclined' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

const repairs = (o: HeightDriveOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'height-drive-mend',
    name: 'Mend the height drive',
    part: 'height-drive',
    removes: ['height-drive-stuck', 'height-motor-open'],
    coversOff: [o.headCover],
    options: [
      {
        id: 'salvaged',
        name: 'Drive from a donor',
        minutes: 35,
        costMinor: { low: 400, high: 1500 },
        success: 0.92,
        breakRisk: 0.1,
      },
    ],
    note: 'Mark the gears before they part.',
  },
  {
    id: 'height-drive-clean',
    name: 'Free the height drive',
    part: 'height-drive',
    removes: ['height-drive-stuck'],
    coversOff: [o.headCover],
    options: [
      {
        id: 'clean',
        name: 'Clean and grease the gears',
        minutes: 25,
        costMinor: { low: 0, high: 50 },
        success: 0.6,
        breakRisk: 0.1,
      },
    ],
    note: 'Mark the gears before they part.',
  },
  {
    id: 'height-sensor-mend',
    name: 'Mend the height sensing',
    part: 'height-sensor',
    removes: ['height-sensor-off'],
    coversOff: [o.headCover],
    options: [
      {
        id: 'refit',
        name: 'Tube back on, sensor cleaned',
        minutes: 20,
        costMinor: { low: 0, high: 30 },
        success: 0.7,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Sensor from a donor',
        minutes: 25,
        costMinor: { low: 300, high: 1500 },
        success: 0.92,
        breakRisk: 0.04,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-lamps': {
    'height-sensor-off': { warning: 0.3, right: 0.7 },
    'height-drive-stuck': { warning: 0.25, right: 0.75 },
  },
  'run-full': {
    'height-drive-stuck': { height: 0.93, works: 0.07 },
    'height-motor-open': { height: 0.95, works: 0.05 },
    'height-sensor-off': { height: 0.93, works: 0.07 },
  },
}

/** Automatic head height: its motor, gear and load sensing. */
export const heightDrive = (o: HeightDriveOptions): BlueprintFragment => ({
  points,
  parts: parts(o),
  circuit,
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
