import type { BlueprintFragment } from '../../fragment.ts'
import { catalogue } from './sources.ts'

export interface HoseConductorsOptions {
  /** Points in the body that feed the two conductors of the hose. */
  readonly line: string
  readonly neutral: string
  readonly bodyCover: string
}

const points: NonNullable<BlueprintFragment['points']> = [
  { id: 'socket.line', name: 'Line contact of the hose socket on the body' },
  { id: 'socket.neutral', name: 'Neutral contact of the hose socket on the body' },
  { id: 'handle.line', name: 'Line contact at the hose handle' },
  { id: 'handle.neutral', name: 'Neutral contact at the hose handle' },
  { id: 'wand.line', name: 'Line contact at the foot of the wand' },
  { id: 'wand.neutral', name: 'Neutral contact at the foot of the wand' },
]

const parts = (o: HoseConductorsOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'socket-wires',
    name: 'Wires to the hose socket',
    does: 'Bring the mains to the hose',
    group: 'electrical',
    behind: o.bodyCover,
  },
  {
    id: 'hose-conductors',
    name: 'Conductors in the hose',
    does: 'Two wires spun into the hose: mains for the head',
    group: 'electrical',
    within: 'hose',
  },
  {
    id: 'head-switch',
    name: 'Head switch on the handle',
    does: 'Switches the electric head',
    group: 'electrical',
    within: 'hose',
  },
  {
    id: 'wand',
    name: 'Wand with contacts',
    does: 'Air way and mains to the head',
    group: 'electrical',
    spareShare: { low: 0.08, high: 0.15 },
  },
]

const circuit = (o: HoseConductorsOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'wire',
    id: 'socket-line',
    part: 'socket-wires',
    from: o.line,
    to: 'socket.line',
    lengthM: 0.3,
    areaMm2: 0.75,
  },
  {
    kind: 'wire',
    id: 'socket-neutral',
    part: 'socket-wires',
    from: o.neutral,
    to: 'socket.neutral',
    lengthM: 0.3,
    areaMm2: 0.75,
  },
  {
    kind: 'wire',
    id: 'hose-line',
    part: 'hose-conductors',
    from: 'socket.line',
    to: 'handle.in',
    lengthM: 2.2,
    areaMm2: 0.5,
  },
  {
    kind: 'contact',
    id: 'head-switch',
    part: 'head-switch',
    from: 'handle.in',
    to: 'handle.line',
    contactOhm: 0.05,
    closedWhen: { control: 'head-switch', positions: ['on'] },
  },
  {
    kind: 'wire',
    id: 'hose-neutral',
    part: 'hose-conductors',
    from: 'socket.neutral',
    to: 'handle.neutral',
    lengthM: 2.2,
    areaMm2: 0.5,
  },
  {
    kind: 'resistor',
    id: 'wand-line',
    part: 'wand',
    from: 'handle.line',
    to: 'wand.line',
    resistanceOhm: 0.08,
    spread: 0.4,
  },
  {
    kind: 'resistor',
    id: 'wand-neutral',
    part: 'wand',
    from: 'handle.neutral',
    to: 'wand.neutral',
    resistanceOhm: 0.08,
    spread: 0.4,
  },
  { kind: 'stray', id: 'hose-bridge', part: 'hose-conductors', from: 'handle.in', to: 'handle.neutral' },
]

const mainsInHose = 'Mains runs in the hose: bare wire there can be touched'

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'hose-line-flickers',
    part: 'hose-conductors',
    name: 'Hose conductor, line, comes and goes',
    how: 'Broken at a cuff where the hose bends; touches when held one way.',
    rate: { rows: [['P23', 0.28]], component: { id: 'internal-wire', share: 0.04 } },
    electrical: [{ element: 'hose-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.6 },
    complaints: { 'brush-not-turning': 0.85, intermittent: 0.5 },
  },
  {
    id: 'hose-line-open',
    part: 'hose-conductors',
    name: 'Hose conductor, line, broken',
    how: 'Broken right through at a cuff.',
    rate: { rows: [['P23', 0.2]], component: { id: 'internal-wire', share: 0.03 } },
    electrical: [{ element: 'hose-line', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.95, intermittent: 0.2 },
    excludes: ['hose-line-flickers'],
  },
  {
    id: 'hose-neutral-flickers',
    part: 'hose-conductors',
    name: 'Hose conductor, neutral, comes and goes',
    how: 'Broken at a cuff where the hose bends; touches when held one way.',
    rate: { rows: [['P23', 0.18]], component: { id: 'internal-wire', share: 0.03 } },
    electrical: [{ element: 'hose-neutral', becomes: 'open' }],
    comesAndGoes: { badShare: 0.6 },
    complaints: { 'brush-not-turning': 0.85, intermittent: 0.5 },
    excludes: ['hose-neutral-open'],
  },
  {
    id: 'socket-wire-off',
    part: 'socket-wires',
    name: 'Wire off at the hose socket',
    how: 'Its push-on pulled off when the body was last closed.',
    rate: { perHundred: 0.8, source: { ...catalogue, clause: 'a push-on more than other machines have' } },
    electrical: [{ element: 'socket-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.8 },
    complaints: { 'brush-not-turning': 0.95 },
  },
  {
    id: 'hose-neutral-open',
    part: 'hose-conductors',
    name: 'Hose conductor, neutral, broken',
    how: 'Broken at a cuff where the hose bends.',
    rate: { rows: [['P23', 0.2]], component: { id: 'internal-wire', share: 0.03 } },
    electrical: [{ element: 'hose-neutral', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.95, intermittent: 0.2 },
  },
  {
    id: 'hose-conductors-touch',
    part: 'hose-conductors',
    name: 'Hose conductors worn through, touching',
    how: 'The spiral has cut its insulation at a bend.',
    rate: { rows: [['P23', 0.14]], component: { id: 'internal-wire', share: 0.02 } },
    electrical: [{ element: 'hose-bridge', becomes: { ohm: 0.3, spread: 1 } }],
    complaints: { 'trips-supply': 0.85, sparks: 0.3, smell: 0.3, 'brush-not-turning': 0.3 },
    danger: mainsInHose,
  },
  {
    id: 'wand-contacts-burnt',
    part: 'wand',
    name: 'Wand contacts burnt or loose',
    how: 'Browned pin, spring gone soft: the head stops when the wand is turned.',
    rate: { rows: [['H15', 0.8]], component: { id: 'wand', share: 0.4 } },
    electrical: [{ element: 'wand-line', becomes: { plusOhm: 60, spread: 2 } }],
    comesAndGoes: { badShare: 0.6 },
    complaints: { 'brush-not-turning': 0.85, intermittent: 0.5, smell: 0.2, sparks: 0.15 },
    danger: 'A loose mains contact in the wand burns on, even with the head off',
  },
  {
    id: 'head-switch-worn',
    part: 'head-switch',
    name: 'Head switch on the handle worn',
    how: 'Dust in it, or its slide broken: the head never gets its mains.',
    rate: { rows: [['H15', 0.2]] },
    electrical: [{ element: 'head-switch', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.95, intermittent: 0.2 },
  },
]

const on = { 'head-switch': 'on' }

const checks = (o: HoseConductorsOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-wand-contacts',
    name: 'Contacts at hose, wand and head',
    how: 'Plug out. Pull each joint apart. Browned, melted, bent, loose? Bare wire at a cuff?',
    minutes: 1.5,
    beforeRunning: true,
    outcomes: [
      { id: 'bright', name: 'Bright and firm' },
      { id: 'dull', name: 'Dull or bent' },
      { id: 'burnt', name: 'Browned or melted', danger: true },
      { id: 'bare', name: 'Bare wire at a cuff', danger: true },
    ],
    sound: { bright: 0.93, dull: 0.065, burnt: 0.005 },
    under: {
      'wand-contacts-burnt': { burnt: 0.8, dull: 0.15, bright: 0.05 },
      'hose-conductors-touch': { bare: 0.4, bright: 0.6 },
      'hose-line-flickers': { bare: 0.05, bright: 0.95 },
    },
  },
  {
    kind: 'meter',
    id: 'hose-line-through',
    name: 'Hose, line conductor, bend at the cuffs',
    how: 'Plug out. Hose off. Line contact at one end to the other, head switch on; bend the hose at both cuffs.',
    minutes: 1.5,
    red: 'socket.line',
    black: 'handle.line',
    controls: on,
    unplug: ['socket-line'],
    moving: ['hose-conductors', 'head-switch'],
  },
  {
    kind: 'meter',
    id: 'hose-neutral-through',
    name: 'Hose, neutral conductor, bend at the cuffs',
    how: 'Plug out. Hose off. Neutral contact at one end to the other; bend the hose at both cuffs.',
    minutes: 1.5,
    red: 'socket.neutral',
    black: 'handle.neutral',
    unplug: ['socket-neutral'],
    moving: ['hose-conductors'],
  },
  {
    kind: 'meter',
    id: 'hose-apart',
    name: 'Hose, one conductor to the other',
    how: 'Plug out. Hose off the body, wand off. Contact to contact at the body end: must be open. Bend it all along.',
    minutes: 1,
    beforeRunning: true,
    red: 'socket.line',
    black: 'socket.neutral',
    controls: on,
    unplug: ['socket-line', 'socket-neutral', 'wand-line', 'wand-neutral'],
    moving: ['hose-conductors'],
    passesAtLeastOhm: 1e6,
  },
  {
    kind: 'meter',
    id: 'head-branch',
    name: 'Hose, wand and head in one',
    how: 'Plug out. Hose off the body, head on, head switch on. Contact to contact at the body end; twist each joint.',
    minutes: 1,
    red: 'socket.line',
    black: 'socket.neutral',
    controls: on,
    unplug: ['socket-line', 'socket-neutral'],
    moving: ['wand', 'neck-loom', 'hose-conductors'],
  },
  {
    kind: 'meter',
    id: 'wand-line-through',
    name: 'Wand, line contact end to end',
    how: 'Plug out. Wand alone. Contact to contact, twist and pull it out to its full length.',
    minutes: 1,
    red: 'handle.line',
    black: 'wand.line',
    moving: ['wand'],
  },
  {
    kind: 'meter',
    id: 'socket-line-through',
    name: 'Feed to the hose socket, line',
    how: 'Plug out. Inside the body to the line contact of the hose socket.',
    minutes: 1,
    red: o.line,
    black: 'socket.line',
  },
]

const hoseSwap: NonNullable<BlueprintFragment['repairs']>[number] = {
  id: 'electric-hose-swap',
  name: 'Change the hose with its conductors',
  part: 'hose-conductors',
  removes: [
    'hose-line-flickers',
    'hose-line-open',
    'hose-neutral-flickers',
    'hose-neutral-open',
    'hose-conductors-touch',
    'head-switch-worn',
    'hose-split-cuff',
    'hose-split-middle',
    'hose-blocked',
  ],
  options: [
    {
      id: 'salvaged',
      name: 'Hose from a donor, tested bent at both cuffs',
      minutes: 5,
      costMinor: { low: 800, high: 3500 },
      success: 0.95,
      breakRisk: 0.01,
    },
    { id: 'new', name: 'New hose', minutes: 5, costMinor: { low: 2500, high: 6000 }, success: 0.98, breakRisk: 0.01 },
  ],
  note: 'The hose and the head switch on the handle come with it.',
}

const repairs = (o: HoseConductorsOptions): NonNullable<BlueprintFragment['repairs']> => [
  hoseSwap,
  {
    id: 'socket-wire-mend',
    name: 'Put the socket wire back on',
    part: 'socket-wires',
    removes: ['socket-wire-off'],
    coversOff: [o.bodyCover],
    options: [
      {
        id: 'refit',
        name: 'New crimp terminal, pushed home',
        minutes: 8,
        costMinor: { low: 10, high: 30 },
        success: 0.97,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'hose-conductors-cut-back',
    name: 'Cut the hose back past the break',
    part: 'hose-conductors',
    removes: ['hose-line-flickers', 'hose-line-open', 'hose-neutral-flickers', 'hose-neutral-open'],
    coversOff: ['hose-handle'],
    options: [
      {
        id: 'refit',
        name: 'Cut back, conductors on the cuff’s own terminals',
        minutes: 25,
        costMinor: { low: 0, high: 100 },
        success: 0.8,
        breakRisk: 0.06,
      },
    ],
    note: 'State the shorter length.',
    forbidden: 'A joint or tape along the hose: mains runs there.',
  },
  {
    id: 'wand-contacts-mend',
    name: 'Mend the wand contacts',
    part: 'wand',
    removes: ['wand-contacts-burnt'],
    options: [
      {
        id: 'salvaged',
        name: 'Wand from a donor',
        minutes: 4,
        costMinor: { low: 600, high: 1800 },
        success: 0.95,
        breakRisk: 0.01,
      },
      {
        id: 'clean',
        name: 'Cleaned, spring bent back; only where nothing has melted',
        minutes: 15,
        costMinor: { low: 0, high: 20 },
        success: 0.5,
        breakRisk: 0.02,
      },
    ],
  },
  {
    id: 'head-switch-clean',
    name: 'Open and clean the head switch',
    part: 'head-switch',
    removes: ['head-switch-worn'],
    coversOff: ['hose-handle'],
    options: [
      {
        id: 'clean',
        name: 'Cleaned, slide back',
        minutes: 20,
        costMinor: { low: 0, high: 30 },
        success: 0.7,
        breakRisk: 0.06,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'stretch-hose': { 'hose-conductors-touch': { cuff: 0.3, whole: 0.7 } },
  'run-brush': {
    'hose-line-flickers': { still: 0.3, turns: 0.7 },
    'hose-neutral-flickers': { still: 0.3, turns: 0.7 },
    'wand-contacts-burnt': { still: 0.3, turns: 0.7 },
  },
  'run-move-flex': { 'hose-conductors-touch': { flickers: 0.3, steady: 0.7 } },
  'run-full': {
    'hose-line-flickers': { 'brush-stops': 0.6, 'brush-still': 0.35, works: 0.05 },
    'hose-line-open': { 'brush-still': 0.98, works: 0.02 },
    'hose-neutral-flickers': { 'brush-stops': 0.6, 'brush-still': 0.35, works: 0.05 },
    'hose-neutral-open': { 'brush-still': 0.98, works: 0.02 },
    'socket-wire-off': { 'brush-still': 0.95, 'brush-stops': 0.05 },
    'hose-conductors-touch': { trips: 0.9, sparks: 0.1 },
    'wand-contacts-burnt': { 'brush-stops': 0.6, 'brush-still': 0.35, works: 0.05 },
    'head-switch-worn': { 'brush-still': 0.97, works: 0.03 },
  },
}

const controls: NonNullable<BlueprintFragment['controls']> = [
  { id: 'head-switch', name: 'Head switch', positions: ['off', 'on'] },
]

/** Mains for an electric head, through two conductors spun into the hose and through the wand. Ends at `wand.line`, `wand.neutral`. */
export const hoseConductors = (o: HoseConductorsOptions): BlueprintFragment => ({
  points: [...points, { id: 'handle.in', name: 'Feed of the head switch, in the handle', behind: 'hose-handle' }],
  parts: parts(o),
  controls,
  circuit: circuit(o),
  covers: [
    {
      id: 'hose-handle',
      name: 'Hose handle',
      openMin: 5,
      closeMin: 5,
      fixings: [{ count: 2, kind: 'TX10 plastic 3 × 12' }],
      hint: 'Often glued at one seam: start at the switch.',
    },
  ],
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
