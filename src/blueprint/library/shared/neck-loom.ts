import type { BlueprintFragment } from '../../fragment.ts'

export interface NeckLoomOptions {
  /** Where the neutral wire of the neck ends. */
  readonly neutralTo: string
  readonly neckCover: string
  readonly headCover: string
}

const parts = (o: NeckLoomOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'neck-loom',
    name: 'Neck wiring',
    does: 'Two wires through the swivel neck',
    group: 'control',
    behind: o.neckCover,
  },
]

const circuit = (o: NeckLoomOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'wire',
    id: 'neck-line',
    part: 'neck-loom',
    from: 'overload.out',
    to: 'brush-motor.a',
    lengthM: 0.7,
    areaMm2: 0.5,
  },
  {
    kind: 'wire',
    id: 'neck-neutral',
    part: 'neck-loom',
    from: 'brush-motor.b',
    to: o.neutralTo,
    lengthM: 0.8,
    areaMm2: 0.5,
  },
  { kind: 'stray', id: 'neck-bridge', part: 'neck-loom', from: 'brush-motor.a', to: 'brush-motor.b' },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'neck-line-flickers',
    part: 'neck-loom',
    name: 'Neck wiring, line side comes and goes',
    how: 'Flexes with each turn of the neck; strands part in the loop.',
    rate: { rows: [['H14', 0.343]], component: { id: 'internal-wire', share: 0.05 } },
    electrical: [{ element: 'neck-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { 'brush-not-turning': 0.8, intermittent: 0.5 },
    excludes: ['neck-line-open'],
  },
  {
    id: 'neck-line-open',
    part: 'neck-loom',
    name: 'Neck wiring, line side broken',
    how: 'Broken right through in the loop.',
    rate: { rows: [['H14', 0.214]], component: { id: 'internal-wire', share: 0.03 } },
    electrical: [{ element: 'neck-line', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.96, intermittent: 0.1 },
    excludes: ['neck-line-flickers'],
  },
  {
    id: 'neck-neutral-flickers',
    part: 'neck-loom',
    name: 'Neck wiring, neutral side comes and goes',
    how: 'Flexes with each turn of the neck; strands part in the loop.',
    rate: { rows: [['H14', 0.343]], component: { id: 'internal-wire', share: 0.05 } },
    electrical: [{ element: 'neck-neutral', becomes: 'open' }],
    comesAndGoes: { badShare: 0.6 },
    complaints: { 'brush-not-turning': 0.82, intermittent: 0.45 },
  },
  {
    id: 'neck-wires-touch',
    part: 'neck-loom',
    name: 'Neck wires chafed, touching each other',
    how: 'Insulation worn through in the loop.',
    rate: { rows: [['H14', 0.1]], component: { id: 'internal-wire', share: 0.02 } },
    electrical: [{ element: 'neck-bridge', becomes: { ohm: 0.2, spread: 1 } }],
    complaints: { 'trips-supply': 0.6, 'brush-not-turning': 0.8, sparks: 0.3, smell: 0.2 },
    danger: 'A short in the moving neck; it takes the board with it',
  },
]

const checks = (o: NeckLoomOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-neck-wires',
    name: 'Neck wires',
    how: 'Plug out, neck cover off. Follow the loop while you swing the neck: cracked, stretched or bare?',
    minutes: 1.5,
    coversOff: [o.neckCover],
    outcomes: [
      { id: 'sound', name: 'Soft, whole, in the clips' },
      { id: 'stretched', name: 'Cracked or limp spot' },
      { id: 'bare', name: 'Bare copper', danger: true },
    ],
    sound: { sound: 0.96, stretched: 0.04 },
    under: {
      'neck-line-flickers': { stretched: 0.7, sound: 0.25, bare: 0.05 },
      'neck-line-open': { stretched: 0.75, sound: 0.18, bare: 0.07 },
      'neck-neutral-flickers': { stretched: 0.7, sound: 0.25, bare: 0.05 },
      'neck-wires-touch': { bare: 0.9, stretched: 0.1 },
    },
  },
  {
    kind: 'meter',
    id: 'neck-line-through',
    name: 'Neck, line wire',
    how: 'Plug out. Overload to the brush motor’s lead; swing the neck through its whole travel.',
    minutes: 1.5,
    red: 'overload.out',
    black: 'brush-motor.a',
    moving: ['neck-loom'],
  },
  {
    kind: 'meter',
    id: 'neck-neutral-through',
    name: 'Neck, neutral wire',
    how: 'Plug out. Brush motor’s lead to where the neutral wire ends; swing the neck through its whole travel.',
    minutes: 1.5,
    red: 'brush-motor.b',
    black: o.neutralTo,
    moving: ['neck-loom'],
  },
  {
    kind: 'run',
    id: 'run-swing-neck',
    name: 'Run and swing the neck',
    how: 'Covers on, RCD socket of 30 mA or less, head on the floor, hands clear of all that turns. Brush turning, swing the neck ten times. Plug out before touching.',
    minutes: 1.5,
    outcomes: [
      { id: 'steady', name: 'Brush steady' },
      { id: 'drops', name: 'Brush drops out' },
      { id: 'still', name: 'Brush never turns' },
    ],
    sound: { steady: 0.99, drops: 0.01 },
    under: {
      'neck-line-flickers': { drops: 0.88, steady: 0.12 },
      'neck-neutral-flickers': { drops: 0.88, steady: 0.12 },
    },
    controls: { 'mains-switch': 'on', 'handle-position': 'reclined', 'head-switch': 'on' },
    driven: { element: 'brush-motor', otherwise: 'still' },
  },
]

const repairs = (o: NeckLoomOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'neck-loom-new',
    name: 'New neck wiring',
    part: 'neck-loom',
    removes: ['neck-line-flickers', 'neck-line-open', 'neck-neutral-flickers', 'neck-wires-touch'],
    coversOff: [o.neckCover, o.headCover],
    options: [
      {
        id: 'new',
        name: 'Fine-strand silicone wire, loop and clips kept',
        minutes: 35,
        costMinor: { low: 100, high: 600 },
        success: 0.93,
        breakRisk: 0.1,
      },
      {
        id: 'salvaged',
        name: 'Neck loom from a donor',
        minutes: 35,
        costMinor: { low: 200, high: 600 },
        success: 0.85,
        breakRisk: 0.1,
      },
    ],
    note: 'A short loop breaks again.',
    forbidden: 'A joint in the loop: it breaks beside the joint.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'look-board': { 'neck-wires-touch': { burnt: 0.2, clean: 0.8 } },
  'run-brush': {
    'neck-line-flickers': { still: 0.2, turns: 0.8 },
    'neck-neutral-flickers': { still: 0.2, turns: 0.8 },
  },
  'run-full': {
    'neck-line-flickers': { 'brush-stops': 0.6, 'brush-still': 0.35, works: 0.05 },
    'neck-line-open': { 'brush-still': 0.97, works: 0.03 },
    'neck-neutral-flickers': { 'brush-stops': 0.6, 'brush-still': 0.35, works: 0.05 },
    'neck-wires-touch': { trips: 0.6, 'brush-still': 0.4 },
  },
}

/** Two wires through a swivel neck to the brush motor. */
export const neckLoom = (o: NeckLoomOptions): BlueprintFragment => ({
  parts: parts(o),
  circuit: circuit(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
