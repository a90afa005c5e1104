import type { BlueprintFragment } from '../../fragment.ts'

export interface LoomOptions {
  readonly fromCover: string
  readonly toCover: string
}

const parts: NonNullable<BlueprintFragment['parts']> = [
  { id: 'loom', name: 'Handle loom', does: 'Two wires from the handle to the body', group: 'electrical' },
]

const circuit: NonNullable<BlueprintFragment['circuit']> = [
  { kind: 'wire', id: 'loom-line', part: 'loom', from: 'switch.out', to: 'body.line', lengthM: 1.4, areaMm2: 0.75 },
  {
    kind: 'wire',
    id: 'loom-neutral',
    part: 'loom',
    from: 'flex.neutral',
    to: 'body.neutral',
    lengthM: 1.4,
    areaMm2: 0.75,
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'loom-line-flickers',
    part: 'loom',
    name: 'Handle loom, line wire comes and goes',
    how: 'Breaks where the handle folds or slides.',
    rate: { rows: [['P08', 0.4]], component: { id: 'internal-wire', share: 0.15 } },
    electrical: [{ element: 'loom-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.5 },
    complaints: { intermittent: 0.85, dead: 0.5 },
    excludes: ['loom-line-open'],
  },
  {
    id: 'loom-line-open',
    part: 'loom',
    name: 'Handle loom, line wire broken',
    how: 'Broken right through where the handle folds or slides.',
    rate: { rows: [['P08', 0.267]], component: { id: 'internal-wire', share: 0.1 } },
    electrical: [{ element: 'loom-line', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.25 },
    excludes: ['loom-line-flickers'],
  },
  {
    id: 'loom-neutral-flickers',
    part: 'loom',
    name: 'Handle loom, neutral wire comes and goes',
    how: 'Breaks where the handle folds or slides.',
    rate: { rows: [['P08', 0.333]], component: { id: 'internal-wire', share: 0.12 } },
    electrical: [{ element: 'loom-neutral', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.85, dead: 0.5 },
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'meter',
    id: 'pins-move-handle',
    name: 'Pin to pin, move the handle',
    how: 'Plug out. Switch on, probes held on the pins. Slide, fold and twist the handle.',
    minutes: 1,
    red: 'plug.line',
    black: 'plug.neutral',
    controls: { 'mains-switch': 'on' },
    moving: ['loom'],
  },
  {
    kind: 'meter',
    id: 'loom-line-through',
    name: 'Loom, line wire',
    how: 'Plug out. Switch’s loom tag to the line connector in the body.',
    minutes: 1,
    red: 'switch.out',
    black: 'body.line',
  },
  {
    kind: 'meter',
    id: 'loom-line-move',
    name: 'Loom, line wire, move the handle',
    how: 'Plug out. As before; slide, fold and twist the handle.',
    minutes: 1.5,
    red: 'switch.out',
    black: 'body.line',
    moving: ['loom'],
  },
  {
    kind: 'meter',
    id: 'loom-neutral-through',
    name: 'Loom, neutral wire',
    how: 'Plug out. Blue core in the handle to the neutral connector in the body.',
    minutes: 1,
    red: 'flex.neutral',
    black: 'body.neutral',
  },
  {
    kind: 'meter',
    id: 'loom-neutral-move',
    name: 'Loom, neutral wire, move the handle',
    how: 'Plug out. As before; slide, fold and twist the handle.',
    minutes: 1.5,
    red: 'flex.neutral',
    black: 'body.neutral',
    moving: ['loom'],
  },
]

const repairs = (o: LoomOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'loom-new',
    name: 'New handle loom',
    part: 'loom',
    removes: ['loom-line-flickers', 'loom-line-open', 'loom-neutral-flickers'],
    coversOff: [o.fromCover, o.toCover],
    options: [
      {
        id: 'new',
        name: 'New two-core loom, old route',
        minutes: 30,
        costMinor: { low: 200, high: 600 },
        success: 0.95,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Loom from a donor',
        minutes: 30,
        costMinor: { low: 50, high: 300 },
        success: 0.9,
        breakRisk: 0.04,
      },
    ],
    note: 'Same clips, no pinch: slide paper round the seam.',
    forbidden: 'A joint inside the handle tube.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-move-flex': {
    'loom-line-flickers': { flickers: 0.9, steady: 0.1 },
    'loom-neutral-flickers': { flickers: 0.9, steady: 0.1 },
  },
  'run-soak': {
    'loom-line-flickers': { 'cuts-out': 0.5, cool: 0.5 },
    'loom-neutral-flickers': { 'cuts-out': 0.5, cool: 0.5 },
  },
  'run-full': {
    'loom-line-flickers': { 'cuts-out': 0.93, works: 0.07 },
    'loom-neutral-flickers': { 'cuts-out': 0.93, works: 0.07 },
  },
}

/** Two wires from the handle to the body; they break where the handle folds or slides. */
export const loom = (o: LoomOptions): BlueprintFragment => ({
  parts,
  circuit,
  faults,
  checks,
  repairs: repairs(o),
  addsTo,
})
