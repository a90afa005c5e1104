import type { BlueprintFragment } from '../../fragment.ts'

export interface BrushMotorOptions {
  /** Where the overload is fed from. */
  readonly from: string
  readonly shareOfPlate: number
  readonly headCover: string
  readonly overloadCover: string
}

const points = (o: BrushMotorOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'overload.out', name: 'Overload, neck side', behind: o.overloadCover },
  { id: 'brush-motor.a', name: 'Brush motor lead, line side', behind: o.headCover },
  { id: 'brush-motor.b', name: 'Brush motor lead, neutral side', behind: o.headCover },
]

const parts = (o: BrushMotorOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'brush-overload',
    name: 'Brush overload',
    does: 'Trips when the roll jams; button resets it',
    group: 'control',
  },
  {
    id: 'brush-motor',
    name: 'Brush motor',
    does: 'Turns the roll',
    group: 'control',
    behind: o.headCover,
    spareShare: { low: 0.12, high: 0.2 },
  },
]

const circuit = (o: BrushMotorOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'resistor',
    id: 'brush-overload',
    part: 'brush-overload',
    from: o.from,
    to: 'overload.out',
    resistanceOhm: 0.3,
    spread: 0.4,
  },
  {
    kind: 'motor',
    id: 'brush-motor',
    part: 'brush-motor',
    from: 'brush-motor.a',
    to: 'brush-motor.b',
    power: { shareOfPlate: o.shareOfPlate },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'overload-tripped',
    part: 'brush-overload',
    name: 'Brush overload tripped',
    how: 'Button out. Something jammed the roll: find it, then press.',
    rate: { rows: [['H12', 0.75]], component: { id: 'brush-roll', share: 0.08 } },
    electrical: [{ element: 'brush-overload', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.97 },
    excludes: ['overload-faulty'],
  },
  {
    id: 'overload-faulty',
    part: 'brush-overload',
    name: 'Brush overload will not hold',
    how: 'Open when cold, or the button does not latch.',
    rate: { rows: [['H12', 0.25]], component: { id: 'brush-roll', share: 0.03 } },
    electrical: [{ element: 'brush-overload', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.95 },
    excludes: ['overload-tripped'],
  },
  {
    id: 'brush-motor-open',
    part: 'brush-motor',
    name: 'Brush motor dead: brushes or winding open',
    how: 'Path to it is good, the motor itself reads open.',
    rate: { rows: [['H10', 1]], component: { id: 'brush-roll', share: 0.15 } },
    electrical: [{ element: 'brush-motor', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.97, smell: 0.15, sparks: 0.1 },
  },
  {
    id: 'brush-motor-seized',
    part: 'brush-motor',
    name: 'Brush motor seized',
    how: 'Hair wound into its bearing; the shaft will not turn with the belt off.',
    rate: { rows: [['H11', 1]], component: { id: 'brush-roll', share: 0.08 } },
    complaints: { 'brush-not-turning': 0.95, smell: 0.35, noise: 0.15 },
  },
]

const checks = (o: BrushMotorOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'overload-button',
    name: 'Overload button',
    how: 'Plug out. Press it. Out means tripped: look for the jam before the next run.',
    minutes: 0.3,
    outcomes: [
      { id: 'in', name: 'In' },
      { id: 'out', name: 'Was out, now holds' },
      { id: 'will-not-hold', name: 'Will not stay in' },
    ],
    sound: { in: 0.97, out: 0.03 },
    under: {
      'overload-tripped': { out: 0.93, in: 0.05, 'will-not-hold': 0.02 },
      'overload-faulty': { 'will-not-hold': 0.55, in: 0.35, out: 0.1 },
      'brush-motor-seized': { in: 0.75, out: 0.25 },
    },
  },
  {
    kind: 'meter',
    id: 'overload-through',
    name: 'Through the overload',
    how: 'Plug out. Button in. Tag to tag: near nothing.',
    minutes: 0.7,
    red: o.from,
    black: 'overload.out',
  },
  {
    kind: 'meter',
    id: 'brush-motor-at-leads',
    name: 'Brush motor at its own leads',
    how: 'Plug out. Pull its line lead. Lead to lead; turn it by hand for the lowest.',
    minutes: 1.5,
    red: 'brush-motor.a',
    black: 'brush-motor.b',
    unplug: ['neck-line'],
  },
  {
    kind: 'look',
    id: 'turn-brush-motor',
    name: 'Turn the brush motor by hand',
    how: 'Plug out, head open, belt off. Its shaft must turn with a light finger.',
    minutes: 1,
    coversOff: [o.headCover],
    outcomes: [
      { id: 'turns', name: 'Turns' },
      { id: 'stiff', name: 'Stiff or locked' },
    ],
    sound: { turns: 0.98, stiff: 0.02 },
    under: { 'brush-motor-seized': { stiff: 0.96, turns: 0.04 } },
  },
  {
    kind: 'run',
    id: 'run-brush',
    name: 'Brush turns',
    how: 'Covers on, RCD socket of 30 mA or less, head on carpet, hands clear of all that turns. Switch on, brush in its working position, ten seconds. Plug out before touching.',
    minutes: 1.5,
    outcomes: [
      { id: 'turns', name: 'Turns' },
      { id: 'slow', name: 'Turns slowly or rattles' },
      { id: 'stops', name: 'Starts, stops after two seconds' },
      { id: 'whirrs', name: 'Motor whirrs, brush still' },
      { id: 'trips', name: 'Trips or blows the fuse', danger: true },
      { id: 'still', name: 'Brush drive silent' },
    ],
    sound: { turns: 0.98, slow: 0.02 },
    under: { 'brush-motor-seized': { still: 0.6, stops: 0.38, slow: 0.02 } },
    controls: { 'mains-switch': 'on', 'handle-position': 'reclined', 'head-switch': 'on' },
    driven: { element: 'brush-motor', otherwise: 'still' },
    whenTrips: 'trips',
  },
  {
    kind: 'run',
    id: 'run-jam',
    name: 'Jam protection',
    how: 'Covers on, RCD socket of 30 mA or less. Brush turning; hold the roll with a wooden batten, two seconds at most, hands clear of all that turns. Must cut out. Plug out before touching.',
    minutes: 3,
    caution: 'Two seconds, no longer.',
    outcomes: [
      { id: 'protects', name: 'Cuts out, resets' },
      { id: 'drives-on', name: 'Drives on against the batten', danger: true },
      { id: 'trips', name: 'Trips or blows the fuse', danger: true },
      { id: 'no-drive', name: 'Brush never turned' },
    ],
    sound: { protects: 0.98, 'drives-on': 0.02 },
    under: { 'brush-motor-seized': { 'no-drive': 0.97, protects: 0.03 } },
    controls: { 'mains-switch': 'on', 'handle-position': 'reclined', 'head-switch': 'on' },
    driven: { element: 'brush-motor', otherwise: 'no-drive' },
    whenTrips: 'trips',
  },
]

const repairs = (o: BrushMotorOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'overload-reset',
    name: 'Press the overload button',
    part: 'brush-overload',
    removes: ['overload-tripped'],
    options: [
      {
        id: 'adjust',
        name: 'Clear the jam, then press',
        minutes: 2,
        costMinor: { low: 0, high: 0 },
        success: 0.95,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'overload-new',
    name: 'New brush overload',
    part: 'brush-overload',
    removes: ['overload-faulty', 'overload-tripped'],
    coversOff: [o.overloadCover],
    options: [
      {
        id: 'new',
        name: 'Same rating',
        minutes: 12,
        costMinor: { low: 300, high: 600 },
        success: 0.97,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'From a donor, same rating',
        minutes: 12,
        costMinor: { low: 50, high: 300 },
        success: 0.92,
        breakRisk: 0.01,
      },
    ],
    forbidden: 'Bridging it: the next jam burns the brush motor.',
  },
  {
    id: 'brush-motor-swap',
    name: 'Change the brush motor',
    part: 'brush-motor',
    removes: ['brush-motor-open', 'brush-motor-seized'],
    coversOff: [o.headCover],
    options: [
      {
        id: 'new',
        name: 'New brush motor',
        minutes: 30,
        costMinor: { low: 1800, high: 4000 },
        success: 0.97,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Tested used brush motor',
        minutes: 30,
        costMinor: { low: 900, high: 2000 },
        success: 0.92,
        breakRisk: 0.04,
      },
    ],
  },
  {
    id: 'brush-motor-free',
    name: 'Free the brush motor',
    part: 'brush-motor',
    removes: ['brush-motor-seized'],
    coversOff: [o.headCover],
    options: [
      {
        id: 'clean',
        name: 'Cut hair from the shaft, clean the bearing',
        minutes: 30,
        costMinor: { low: 0, high: 50 },
        success: 0.6,
        breakRisk: 0.04,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'spin-roll': { 'brush-motor-seized': { locked: 0.75, drags: 0.2, turns: 0.05 } },
  'run-smell': { 'brush-motor-seized': { varnish: 0.3, rubber: 0.2, clean: 0.5 } },
  'run-swing-neck': { 'brush-motor-seized': { still: 0.97, steady: 0.03 } },
  'run-lamps': { 'brush-motor-seized': { warning: 0.5, right: 0.5 } },
  'run-full': {
    'overload-tripped': { 'brush-still': 0.97, works: 0.03 },
    'overload-faulty': { 'brush-still': 0.97, works: 0.03 },
    'brush-motor-open': { 'brush-still': 0.97, works: 0.03 },
    'brush-motor-seized': { 'brush-still': 0.9, 'brush-stops': 0.1 },
  },
}

/** A brush motor of its own with the overload that guards it. */
export const brushMotor = (o: BrushMotorOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  circuit: circuit(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
