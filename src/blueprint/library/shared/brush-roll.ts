import type { BlueprintFragment } from '../../fragment.ts'

export interface BrushRollOptions {
  /** What turns the roll. */
  readonly drive: 'own-motor' | 'belt' | 'air'
  readonly rollCover: string
}

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'sole-plate',
    name: 'Sole plate',
    does: 'Rides on the floor',
    group: 'mechanical',
    spareShare: { low: 0.03, high: 0.06 },
  },
  {
    id: 'brush-roll',
    name: 'Brush roll',
    does: 'Beats and sweeps the carpet',
    group: 'mechanical',
    spareShare: { low: 0.08, high: 0.12 },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'roll-jammed',
    part: 'brush-roll',
    name: 'Brush roll jammed with hair',
    how: 'Hair and thread round the roll and in the end caps.',
    rate: { rows: [['H04', 1]], component: { id: 'brush-roll', share: 0.35 } },
    complaints: {
      'brush-not-turning': 0.65,
      'poor-pickup': 0.5,
      smell: 0.25,
      'cuts-out': 0.15,
      'hard-to-push': 0.2,
      'lamp-wrong': 0.1,
    },
    saleShareIfLeft: 0.95,
  },
  {
    id: 'roll-bearing-seized',
    part: 'brush-roll',
    name: 'Brush roll bearing seized or melted',
    how: 'Hot end, squeal, wobble; melted end cap.',
    rate: { rows: [['H05', 1]], component: { id: 'brush-roll', share: 0.1 } },
    complaints: { 'brush-not-turning': 0.65, noise: 0.5, smell: 0.4 },
    saleShareIfLeft: 0.2,
  },
  {
    id: 'bristles-worn',
    part: 'brush-roll',
    name: 'Bristles worn',
    how: 'They no longer reach past the sole plate.',
    rate: { rows: [['H06', 1]], component: { id: 'brush-roll', share: 0.1 } },
    complaints: { 'poor-pickup': 0.75, 'lamp-wrong': 0.1 },
    saleShareIfLeft: 0.75,
  },
  {
    id: 'sole-plate-worn',
    part: 'sole-plate',
    name: 'Sole plate worn or cracked',
    how: 'Edges ground down; scratches the floor.',
    rate: { rows: [['H22', 1]], component: { id: 'floor-head', share: 0.3 } },
    complaints: { 'poor-pickup': 0.4, 'hard-to-push': 0.25 },
    saleShareIfLeft: 0.85,
  },
]

const checks = (o: BrushRollOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'spin-roll',
    name: 'Spin the brush roll',
    how: 'Plug out. Head up, flick the roll with a finger.',
    minutes: 0.7,
    outcomes: [
      { id: 'turns', name: 'Turns, even drag of the belt' },
      { id: 'free', name: 'Turns too free: no belt on it' },
      { id: 'drags', name: 'Drags or squeals' },
      { id: 'locked', name: 'Locked' },
    ],
    sound: { turns: 0.95, free: 0.02, drags: 0.03 },
    under: {
      'roll-jammed': { drags: 0.55, locked: 0.35, turns: 0.1 },
      'roll-bearing-seized': { drags: 0.55, locked: 0.4, turns: 0.05 },
    },
  },
  {
    kind: 'look',
    id: 'bristles-straight-edge',
    name: 'Bristles by straight-edge',
    how: 'Plug out. Straight-edge over the sole plate. Bristles should touch it; look at the plate’s edges.',
    minutes: 1,
    outcomes: [
      { id: 'reach', name: 'Bristles reach, plate good' },
      { id: 'plate', name: 'Sole plate worn or cracked' },
      { id: 'short', name: 'Bristles short' },
    ],
    sound: { reach: 0.94, plate: 0.03, short: 0.03 },
    under: { 'bristles-worn': { short: 0.93, reach: 0.07 }, 'sole-plate-worn': { plate: 0.9, reach: 0.1 } },
  },
  {
    kind: 'look',
    id: 'roll-out',
    name: 'Brush roll out',
    how: 'Plug out, belt cover off. Roll out: hair in the end caps? Turn each bearing; melted cap?',
    minutes: 2,
    coversOff: [o.rollCover],
    outcomes: [
      { id: 'clean', name: 'Clean, turns freely' },
      { id: 'hair', name: 'Hair round roll or caps' },
      { id: 'bearing', name: 'Bearing stiff or cap melted' },
    ],
    sound: { clean: 0.9, hair: 0.09, bearing: 0.01 },
    under: { 'roll-jammed': { hair: 0.96, bearing: 0.04 }, 'roll-bearing-seized': { bearing: 0.93, hair: 0.07 } },
  },
]

const repairs = (o: BrushRollOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'roll-clean',
    name: 'Cut the hair out of the roll',
    part: 'brush-roll',
    removes: ['roll-jammed'],
    coversOff: [o.rollCover],
    options: [
      {
        id: 'clean',
        name: 'Roll out, caps and pulley cleared',
        minutes: 15,
        costMinor: { low: 0, high: 20 },
        success: 0.96,
        breakRisk: 0.01,
      },
    ],
    ...(o.drive === 'own-motor' ? { note: 'Press the overload button afterwards.' } : {}),
  },
  {
    id: 'roll-bearings-new',
    name: 'New roll bearings',
    part: 'brush-roll',
    removes: ['roll-bearing-seized'],
    coversOff: [o.rollCover],
    options: [
      {
        id: 'new',
        name: 'End caps and bearings',
        minutes: 20,
        costMinor: { low: 300, high: 900 },
        success: 0.92,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'roll-new',
    name: 'Change the brush roll',
    part: 'brush-roll',
    removes: ['bristles-worn', 'roll-bearing-seized', 'roll-jammed'],
    coversOff: [o.rollCover],
    options: [
      {
        id: 'new',
        name: 'New roll',
        minutes: 12,
        costMinor: { low: 1200, high: 2500 },
        success: 0.98,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'Used roll, bristles long',
        minutes: 12,
        costMinor: { low: 500, high: 1100 },
        success: 0.92,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'sole-plate-new',
    name: 'Change the sole plate',
    part: 'sole-plate',
    removes: ['sole-plate-worn'],
    coversOff: ['sole-plate'],
    options: [
      {
        id: 'new',
        name: 'New plate',
        minutes: 10,
        costMinor: { low: 700, high: 1200 },
        success: 0.98,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'Used plate',
        minutes: 10,
        costMinor: { low: 300, high: 700 },
        success: 0.95,
        breakRisk: 0.01,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-smell': {
    'roll-jammed': { rubber: 0.45, dusty: 0.15, clean: 0.4 },
    'roll-bearing-seized': { rubber: 0.5, dusty: 0.15, clean: 0.35 },
  },
  'air-head': { 'sole-plate-worn': { fair: 0.45, strong: 0.5, weak: 0.05 } },
}

/** A belt slips, and air is not strong enough: the roll slows or stands. */
const otherShows: NonNullable<BlueprintFragment['addsTo']> = {
  'run-brush': {
    'roll-jammed': { still: 0.65, slow: 0.3, turns: 0.05 },
    'roll-bearing-seized': { still: 0.45, slow: 0.5, turns: 0.05 },
  },
  'run-full': {
    'roll-bearing-seized': { 'brush-still': 0.55, noisy: 0.42, works: 0.03 },
    'bristles-worn': { 'poor-pickup': 0.8, works: 0.2 },
    'sole-plate-worn': { 'poor-pickup': 0.5, height: 0.15, works: 0.35 },
  },
}

/** What a brush motor's own protection makes of a stiff roll. */
const ownMotorShows: NonNullable<BlueprintFragment['addsTo']> = {
  'overload-button': { 'roll-jammed': { in: 0.8, out: 0.2 } },
  'look-belt': { 'roll-jammed': { stripped: 0.05, good: 0.95 } },
  'look-drag-sensor': { 'roll-jammed': { dirty: 0.15, clean: 0.85 } },
  'run-brush': {
    'roll-jammed': { stops: 0.45, slow: 0.3, still: 0.15, turns: 0.1 },
    'roll-bearing-seized': { stops: 0.4, slow: 0.4, still: 0.15, turns: 0.05 },
  },
  'run-swing-neck': {
    'roll-jammed': { still: 0.6, drops: 0.15, steady: 0.25 },
    'roll-bearing-seized': { still: 0.6, drops: 0.15, steady: 0.25 },
  },
  'run-jam': {
    'roll-jammed': { 'no-drive': 0.6, protects: 0.4 },
    'roll-bearing-seized': { 'no-drive': 0.6, protects: 0.4 },
  },
  'run-lamps': {
    'roll-jammed': { warning: 0.5, right: 0.5 },
    'roll-bearing-seized': { warning: 0.45, right: 0.55 },
    'bristles-worn': { warning: 0.1, right: 0.9 },
  },
  'run-full': {
    'roll-bearing-seized': { 'brush-stops': 0.4, 'brush-still': 0.3, noisy: 0.28, works: 0.02 },
    'bristles-worn': { 'poor-pickup': 0.8, works: 0.2 },
    'sole-plate-worn': { 'poor-pickup': 0.5, height: 0.15, works: 0.35 },
  },
}

/** The brush roll and the sole plate under it, whatever turns the roll. */
export const brushRoll = (o: BrushRollOptions): BlueprintFragment => ({
  parts,
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo: { ...addsTo, ...(o.drive === 'own-motor' ? ownMotorShows : otherShows) },
})
