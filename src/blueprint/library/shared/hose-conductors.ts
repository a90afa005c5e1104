import type { BlueprintFragment } from '../../fragment.ts'
import { hoseConductorsChecks } from './hose-conductors-checks.ts'
import { hoseConductorsFaults } from './hose-conductors-faults.ts'
import type { HoseConductorsOptions } from './hose-conductors-options.ts'
import { hoseConductorsRepairs } from './hose-conductors-repairs.ts'

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
  faults: hoseConductorsFaults,
  checks: hoseConductorsChecks(o),
  repairs: hoseConductorsRepairs(o),
  addsTo,
})
