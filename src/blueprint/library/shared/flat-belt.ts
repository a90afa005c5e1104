import type { BlueprintFragment } from '../../fragment.ts'

export interface FlatBeltOptions {
  /** The cover over belt and roll. */
  readonly cover: string
  /** A lever or the handle's position lifts the belt off the spindle. */
  readonly lifter: boolean
}

const parts = (o: FlatBeltOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'belt',
    name: 'Flat belt',
    does: 'Turns the roll from the motor’s shaft',
    group: 'mechanical',
    behind: o.cover,
  },
  { id: 'spindle', name: 'Motor spindle', does: 'Drives the belt', group: 'mechanical', behind: o.cover },
  ...(o.lifter ? [lifter(o.cover)] : []),
]

const lifter = (behind: string): NonNullable<BlueprintFragment['parts']>[number] => ({
  id: 'belt-lifter',
  name: 'Belt lifter',
  does: 'Takes the belt off the spindle when the roll must stand still',
  group: 'mechanical',
  behind,
})

const lifterStuck: NonNullable<BlueprintFragment['faults']>[number] = {
  id: 'belt-lifter-stuck',
  part: 'belt-lifter',
  name: 'Belt lifter stuck or its spring off',
  how: 'The roll stands still, or turns, in both positions.',
  rate: { rows: [['H09', 1]], component: { id: 'brush-roll', share: 0.04 } },
  complaints: { 'brush-not-turning': 0.6, 'will-not-park': 0.35, noise: 0.1 },
  saleShareIfLeft: 0.45,
}

const faults = (o: FlatBeltOptions): NonNullable<BlueprintFragment['faults']> => [
  {
    id: 'flat-belt-snapped',
    part: 'belt',
    name: 'Flat belt snapped',
    how: 'Rubber dust and a curl of belt under the plate. Look why: a jammed roll snaps the next one.',
    rate: { rows: [['H01', 1]], component: { id: 'belt', share: 0.55 } },
    complaints: { 'brush-not-turning': 0.9, smell: 0.4, 'poor-pickup': 0.5 },
    saleShareIfLeft: 0.3,
    excludes: ['flat-belt-slips'],
  },
  {
    id: 'flat-belt-slips',
    part: 'belt',
    name: 'Flat belt stretched, glazed, slipping',
    how: 'Longer than a new one, shiny inside: the roll stalls on carpet.',
    rate: { rows: [['H02', 1]], component: { id: 'belt', share: 0.45 } },
    complaints: { 'poor-pickup': 0.85, 'brush-not-turning': 0.35, smell: 0.35 },
    saleShareIfLeft: 0.6,
    excludes: ['flat-belt-snapped'],
  },
  {
    id: 'spindle-worn',
    part: 'spindle',
    name: 'Motor spindle grooved or wrapped',
    how: 'A groove or a ring of melted rubber and hair: new belts do not last.',
    rate: { rows: [['H08', 1]], component: { id: 'brush-roll', share: 0.05 } },
    complaints: { 'poor-pickup': 0.5, noise: 0.3, smell: 0.3, 'brush-not-turning': 0.2 },
    saleShareIfLeft: 0.5,
  },
  ...(o.lifter ? [lifterStuck] : []),
]

const checks = (o: FlatBeltOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-flat-belt',
    name: 'Belt and spindle',
    how: 'Plug out, plate off. Belt whole? Lay it on a new one: longer, shiny, edges frayed? Run a nail over the spindle.',
    minutes: 1.5,
    coversOff: [o.cover],
    outcomes: [
      { id: 'good', name: 'Whole, grips, spindle smooth' },
      { id: 'stretched', name: 'Stretched, shiny or frayed' },
      { id: 'groove', name: 'Spindle grooved or wrapped' },
      { id: 'snapped', name: 'Snapped or off' },
    ],
    sound: { good: 0.95, stretched: 0.05 },
    under: {
      'flat-belt-snapped': { snapped: 0.99, stretched: 0.01 },
      'flat-belt-slips': { stretched: 0.92, good: 0.08 },
      'spindle-worn': { groove: 0.9, good: 0.1 },
    },
  },
  {
    kind: 'run',
    id: 'run-brush',
    name: 'Brush turns',
    how: 'Covers on, RCD socket of 30 mA or less, head on carpet, hands clear of all that turns. Brush in its working position, ten seconds; watch the pile. Plug out before touching.',
    minutes: 1.5,
    outcomes: [
      { id: 'turns', name: 'Turns, lifts the pile' },
      { id: 'slow', name: 'Turns slowly, stalls or rattles' },
      { id: 'still', name: 'Does not turn' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { turns: 0.97, slow: 0.03 },
    under: {
      'flat-belt-snapped': { still: 0.99, slow: 0.01 },
      'flat-belt-slips': { slow: 0.85, still: 0.1, turns: 0.05 },
      'spindle-worn': { slow: 0.5, turns: 0.5 },
    },
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
  ...(o.lifter ? [workLifter(o.cover)] : []),
]

const workLifter = (cover: string): NonNullable<BlueprintFragment['checks']>[number] => ({
  kind: 'look',
  id: 'work-belt-lifter',
  name: 'Belt lifter',
  how: 'Plug out, plate off. Work the lever or lock the handle: the belt must slide off and back on.',
  minutes: 1,
  coversOff: [cover],
  outcomes: [
    { id: 'moves', name: 'Moves the belt both ways' },
    { id: 'stuck', name: 'Stuck or loose' },
  ],
  sound: { moves: 0.98, stuck: 0.02 },
  under: { 'belt-lifter-stuck': { stuck: 0.95, moves: 0.05 } },
})

const repairs = (o: FlatBeltOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'flat-belt-new',
    name: 'New flat belt',
    part: 'belt',
    removes: ['flat-belt-snapped', 'flat-belt-slips'],
    coversOff: [o.cover],
    options: [
      {
        id: 'new',
        name: 'Same width and length, arrow the right way',
        minutes: 8,
        costMinor: { low: 150, high: 400 },
        success: 0.97,
        breakRisk: 0.01,
      },
    ],
    note: 'Roll free and pulley clean first. Twisted once too often it turns the roll backwards.',
  },
  {
    id: 'spindle-clean',
    name: 'Clean or swap the spindle',
    part: 'spindle',
    removes: ['spindle-worn'],
    coversOff: [o.cover],
    options: [
      {
        id: 'clean',
        name: 'Rubber and hair cut off, smoothed',
        minutes: 12,
        costMinor: { low: 0, high: 20 },
        success: 0.7,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Spindle sleeve from a donor',
        minutes: 25,
        costMinor: { low: 100, high: 800 },
        success: 0.85,
        breakRisk: 0.06,
      },
    ],
  },
  ...(o.lifter ? [freeLifter(o.cover)] : []),
]

const freeLifter = (cover: string): NonNullable<BlueprintFragment['repairs']>[number] => ({
  id: 'belt-lifter-free',
  name: 'Free the belt lifter',
  part: 'belt-lifter',
  removes: ['belt-lifter-stuck'],
  coversOff: [cover],
  options: [
    {
      id: 'refit',
      name: 'Freed, spring back',
      minutes: 15,
      costMinor: { low: 0, high: 50 },
      success: 0.85,
      breakRisk: 0.04,
    },
    {
      id: 'salvaged',
      name: 'Lifter from a donor',
      minutes: 20,
      costMinor: { low: 100, high: 600 },
      success: 0.93,
      breakRisk: 0.04,
    },
  ],
})

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-brush': { 'belt-lifter-stuck': { still: 0.6, turns: 0.4 } },
  'run-smell': {
    'flat-belt-slips': { rubber: 0.6, clean: 0.3, dusty: 0.1 },
    'flat-belt-snapped': { rubber: 0.3, clean: 0.6, dusty: 0.1 },
    'spindle-worn': { rubber: 0.4, clean: 0.5, dusty: 0.1 },
  },
  'run-full': {
    'flat-belt-snapped': { 'brush-still': 0.99, works: 0.01 },
    'flat-belt-slips': { 'poor-pickup': 0.65, 'brush-stops': 0.25, works: 0.1 },
    'spindle-worn': { 'poor-pickup': 0.35, smells: 0.2, works: 0.45 },
    'belt-lifter-stuck': { 'brush-still': 0.6, park: 0.35, works: 0.05 },
  },
}

/** A flat rubber belt from the suction motor's own shaft to the roll. */
export const flatBelt = (o: FlatBeltOptions): BlueprintFragment => ({
  parts: parts(o),
  faults: faults(o),
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
