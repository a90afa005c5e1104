import type { BlueprintFragment } from '../../fragment.ts'

export interface SpeedControlOptions {
  /** `slider`: a knob or slide sets the speed. `soft-start`: the board only eases the motor in. */
  readonly kind: 'slider' | 'soft-start'
  /** The point that feeds the board. */
  readonly from: string
  /** The neutral that the board’s own supply returns to. */
  readonly neutral: string
  /** What a meter sees of its standby supply or bleed resistor, or null when there is none. */
  readonly standbyOhm: number | null
  readonly boardCover: string
}

const points = (o: SpeedControlOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'speed.in', name: 'Control board, supply tag', behind: o.boardCover },
  { id: 'speed.out', name: 'Control board, motor tag', behind: o.boardCover },
]

const parts = (o: SpeedControlOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'speed-board',
    name: o.kind === 'slider' ? 'Speed board' : 'Soft-start board',
    does: o.kind === 'slider' ? 'Lets through part of each mains wave' : 'Eases the motor in over half a second',
    group: 'control',
    behind: o.boardCover,
    spareShare: { low: 0.12, high: 0.25 },
  },
  ...(o.kind === 'slider' ? [slider(o.boardCover)] : []),
]

const slider = (behind: string): NonNullable<BlueprintFragment['parts']>[number] => ({
  id: 'speed-slider',
  name: 'Speed slider',
  does: 'Sets the speed',
  group: 'control',
  behind,
})

const circuit = (o: SpeedControlOptions): NonNullable<BlueprintFragment['circuit']> => [
  { kind: 'wire', id: 'speed-feed', part: 'body-wires', from: o.from, to: 'speed.in', lengthM: 0.2, areaMm2: 0.75 },
  {
    kind: 'triac',
    id: 'speed-triac',
    part: 'speed-board',
    from: 'speed.in',
    to: 'speed.out',
    onOhm: 0.3,
    offOhm: null,
  },
  ...(o.standbyOhm === null ? [] : [standby(o.standbyOhm, o.neutral)]),
]

const standby = (resistanceOhm: number, to: string): NonNullable<BlueprintFragment['circuit']>[number] => ({
  kind: 'resistor',
  id: 'speed-standby',
  part: 'speed-board',
  from: 'speed.in',
  to,
  resistanceOhm,
  spread: 0.25,
})

const faults = (o: SpeedControlOptions): NonNullable<BlueprintFragment['faults']> => [
  {
    id: 'speed-board-dead',
    part: 'speed-board',
    name: o.kind === 'slider' ? 'Speed board dead: never lets through' : 'Soft-start board dead: never lets through',
    how: 'Track or trigger burnt. A meter does not show it: a sound board reads the same.',
    rate: { rows: [['P21', 0.6]], component: { id: 'speed-control', share: 0.4 } },
    electrical: [{ element: 'speed-triac', becomes: 'open' }],
    complaints: { dead: 0.93, intermittent: 0.15, smell: 0.1 },
    excludes: ['speed-triac-open', 'speed-triac-shorted', 'speed-slider-worn'],
  },
  {
    id: 'speed-triac-open',
    part: 'speed-board',
    name: 'Triac open',
    how: 'Blown by a motor that drew too much: look at the brushes too.',
    rate: { rows: [['P21', 0.4]], component: { id: 'speed-control', share: 0.25 } },
    electrical: [{ element: 'speed-triac', becomes: 'open' }],
    complaints: { dead: 0.95 },
    excludes: ['speed-board-dead', 'speed-triac-shorted', 'speed-slider-worn'],
  },
  {
    id: 'speed-triac-shorted',
    part: 'speed-board',
    name: o.kind === 'slider' ? 'Triac shorted: full speed only' : 'Triac shorted: starts with a jerk',
    how: o.kind === 'slider' ? 'The slider does nothing; full speed at any setting.' : 'The motor kicks at the start.',
    rate: { rows: [['P20', 1]], component: { id: 'speed-control', share: 0.25 } },
    electrical: [{ element: 'speed-triac', becomes: 'short' }],
    complaints: o.kind === 'slider' ? { 'speed-wrong': 0.9 } : { noise: 0.1 },
    saleShareIfLeft: o.kind === 'slider' ? 0.65 : 0.9,
    excludes: ['speed-board-dead', 'speed-triac-open'],
  },
  ...(o.kind === 'slider' ? [sliderWorn] : []),
]

const sliderWorn: NonNullable<BlueprintFragment['faults']>[number] = {
  id: 'speed-slider-worn',
  part: 'speed-slider',
  name: 'Speed slider dirty or worn',
  how: 'Surges at one place; the speed jumps as it is moved.',
  rate: { rows: [['P22', 1]], component: { id: 'speed-control', share: 0.1 } },
  complaints: { 'speed-wrong': 0.85, intermittent: 0.25 },
  saleShareIfLeft: 0.6,
  excludes: ['speed-board-dead', 'speed-triac-open'],
}

const checks = (o: SpeedControlOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-speed-board',
    name: 'Control board',
    how: 'Plug out, wait a minute. Burn mark, split part, cracked joint, dust across the tracks? Note the board code.',
    minutes: 1.5,
    coversOff: [o.boardCover],
    outcomes: [
      { id: 'clean', name: 'Clean' },
      { id: 'burnt', name: 'Burn mark or split part' },
    ],
    sound: { clean: 0.97, burnt: 0.03 },
    under: {
      'speed-board-dead': { burnt: 0.55, clean: 0.45 },
      'speed-triac-open': { burnt: 0.35, clean: 0.65 },
      'speed-triac-shorted': { burnt: 0.15, clean: 0.85 },
    },
  },
  {
    kind: 'meter',
    id: 'speed-triac-across',
    name: 'Across the triac',
    how: 'Plug out. Supply tag to motor tag of the board, both ways: open is right, near nothing is shorted.',
    minutes: 1,
    red: 'speed.in',
    black: 'speed.out',
  },
  {
    kind: 'meter',
    id: 'behind-the-board',
    name: 'Motor path behind the board',
    how: 'Plug out. Motor tag of the board to the neutral pin: all that lies behind, without the electronics.',
    minutes: 1,
    red: 'speed.out',
    black: 'plug.neutral',
    moving: ['carbon-brushes', 'motor-terminal'],
  },
  {
    kind: 'meter',
    id: 'line-pin-to-board',
    name: 'Line pin to the board',
    how: 'Plug out. Switch on. Line pin to the supply tag of the board: flex and switch in one.',
    minutes: 1,
    red: 'plug.line',
    black: 'speed.in',
    controls: { 'mains-switch': 'on' },
    moving: ['mains-switch'],
  },
  ...(o.kind === 'slider' ? [runSpeed] : []),
]

const runSpeed: NonNullable<BlueprintFragment['checks']>[number] = {
  kind: 'run',
  id: 'run-speed',
  name: 'Speed, low to high and back',
  how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Slide slowly from low to high and back. Plug out before touching.',
  minutes: 1,
  outcomes: [
    { id: 'follows', name: 'Follows, low to high' },
    { id: 'surges', name: 'Surges or jumps' },
    { id: 'full-only', name: 'Full speed only' },
    { id: 'dead', name: 'Does not run' },
  ],
  sound: { follows: 0.98, surges: 0.02 },
  under: {
    'speed-slider-worn': { surges: 0.9, follows: 0.1 },
    'speed-triac-shorted': { 'full-only': 0.96, follows: 0.04 },
  },
  controls: { 'mains-switch': 'on' },
  driven: { element: 'suction-motor', otherwise: 'dead' },
}

const repairs = (o: SpeedControlOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'speed-board-swap',
    name: 'Change the control board',
    part: 'speed-board',
    removes: ['speed-board-dead', 'speed-triac-open', 'speed-triac-shorted', 'speed-slider-worn'],
    coversOff: [o.boardCover],
    options: [
      {
        id: 'salvaged',
        name: 'Used board, same code',
        minutes: 20,
        costMinor: { low: 600, high: 2000 },
        success: 0.9,
        breakRisk: 0.04,
      },
      {
        id: 'new',
        name: 'New board, same code',
        minutes: 20,
        costMinor: { low: 1500, high: 4000 },
        success: 0.96,
        breakRisk: 0.04,
      },
    ],
    note: 'The speed slider comes with it. Look at the motor’s brushes first: a dragging motor kills the next board.',
    forbidden: 'Bridging the board: full speed at once, and its cut-out may hang on it.',
  },
  {
    id: 'speed-triac-new',
    name: 'New triac',
    part: 'speed-board',
    removes: ['speed-triac-open', 'speed-triac-shorted'],
    coversOff: [o.boardCover],
    options: [
      {
        id: 'new',
        name: 'Same type, insulated tab, same heat sink',
        minutes: 25,
        costMinor: { low: 100, high: 300 },
        success: 0.8,
        breakRisk: 0.04,
      },
    ],
  },
  {
    id: 'speed-slider-clean',
    name: 'Clean the speed slider',
    part: 'speed-slider',
    removes: ['speed-slider-worn'],
    coversOff: [o.boardCover],
    options: [
      {
        id: 'clean',
        name: 'Contact cleaner, slide it fifty times',
        minutes: 10,
        costMinor: { low: 0, high: 40 },
        success: 0.7,
        breakRisk: 0.01,
      },
    ],
    note: 'Let it dry for an hour.',
  },
]

const addsTo = (o: SpeedControlOptions): NonNullable<BlueprintFragment['addsTo']> => ({
  'run-first': {
    'speed-triac-shorted': o.kind === 'slider' ? { runs: 0.9, rough: 0.1 } : { rough: 0.35, runs: 0.65 },
  },
  'run-full': {
    'speed-triac-shorted': o.kind === 'slider' ? { speed: 0.96, works: 0.04 } : { noisy: 0.2, works: 0.8 },
    'speed-slider-worn': { speed: 0.85, works: 0.15 },
  },
})

/**
 * An electronic control in the motor’s line. A meter cannot drive its triac: sound or dead, the way through it reads open.
 * It hands the mains on at `speed.out`.
 */
export const speedControl = (o: SpeedControlOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  circuit: circuit(o),
  faults: faults(o),
  checks: checks(o),
  repairs: repairs(o),
  addsTo: addsTo(o),
})
