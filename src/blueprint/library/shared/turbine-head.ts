import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'turbine',
    name: 'Air turbine',
    does: 'Turned by the air that is sucked in, drives the roll',
    group: 'mechanical',
    behind: 'turbine-cover',
    spareShare: { low: 0.1, high: 0.18 },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'turbine-jammed',
    part: 'turbine',
    name: 'Turbine jammed with hair or its bearing dry',
    how: 'Hair in the shaft; stiff by finger.',
    rate: { rows: [['H21', 0.75]], component: { id: 'brush-roll', share: 0.15 } },
    complaints: { 'brush-not-turning': 0.85, noise: 0.3, 'poor-pickup': 0.5 },
    saleShareIfLeft: 0.6,
    excludes: ['turbine-broken'],
  },
  {
    id: 'turbine-broken',
    part: 'turbine',
    name: 'Turbine vanes broken',
    how: 'A stone went through it: rattles, no power on carpet.',
    rate: { rows: [['H21', 0.25]], component: { id: 'brush-roll', share: 0.05 } },
    complaints: { 'brush-not-turning': 0.6, noise: 0.7, 'poor-pickup': 0.5 },
    saleShareIfLeft: 0.5,
    excludes: ['turbine-jammed'],
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-turbine',
    name: 'Turbine by finger',
    how: 'Plug out, head off and open. Turn the turbine: light and even? Hair in the shaft, vanes whole?',
    minutes: 1.5,
    coversOff: ['turbine-cover'],
    outcomes: [
      { id: 'light', name: 'Turns light, vanes whole' },
      { id: 'stiff', name: 'Stiff, hair in the shaft' },
      { id: 'broken', name: 'Vanes broken' },
    ],
    sound: { light: 0.95, stiff: 0.05 },
    under: { 'turbine-jammed': { stiff: 0.95, light: 0.05 }, 'turbine-broken': { broken: 0.95, light: 0.05 } },
  },
  {
    kind: 'run',
    id: 'run-brush',
    name: 'Brush turns on carpet',
    how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Head on carpet, relief slider shut, ten seconds; watch the pile. Plug out before touching.',
    minutes: 1.5,
    outcomes: [
      { id: 'turns', name: 'Spins up, lifts the pile' },
      { id: 'slow', name: 'Slow, stalls or rattles' },
      { id: 'whirrs', name: 'Turbine whirrs, brush still' },
      { id: 'still', name: 'Turbine and brush still' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { turns: 0.96, slow: 0.04 },
    under: {
      'turbine-jammed': { still: 0.6, slow: 0.38, turns: 0.02 },
      'turbine-broken': { slow: 0.75, still: 0.2, turns: 0.05 },
    },
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'turbine-clean',
    name: 'Free the turbine',
    part: 'turbine',
    removes: ['turbine-jammed'],
    coversOff: ['turbine-cover'],
    options: [
      {
        id: 'clean',
        name: 'Hair out, a drop of oil on an open bearing',
        minutes: 15,
        costMinor: { low: 0, high: 20 },
        success: 0.8,
        breakRisk: 0.04,
      },
    ],
  },
  {
    id: 'turbine-head-swap',
    name: 'Change the turbine head',
    part: 'turbine',
    removes: [
      'turbine-jammed',
      'turbine-broken',
      'roll-jammed',
      'roll-bearing-seized',
      'bristles-worn',
      'belt-stripped',
      'sole-plate-worn',
    ],
    options: [
      {
        id: 'salvaged',
        name: 'Head from a donor',
        minutes: 3,
        costMinor: { low: 400, high: 1500 },
        success: 0.95,
        breakRisk: 0.01,
      },
      {
        id: 'new',
        name: 'New head, same tube',
        minutes: 3,
        costMinor: { low: 1500, high: 3500 },
        success: 0.98,
        breakRisk: 0.01,
      },
    ],
    note: 'Brush roll, cogged belt and sole plate come with it.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'spin-roll': {
    'turbine-jammed': { drags: 0.6, locked: 0.3, turns: 0.1 },
    'turbine-broken': { drags: 0.3, turns: 0.7 },
  },
  'run-full': {
    'turbine-jammed': { 'brush-still': 0.9, works: 0.1 },
    'turbine-broken': { 'brush-still': 0.6, noisy: 0.35, works: 0.05 },
  },
}

const covers: NonNullable<BlueprintFragment['covers']> = [
  {
    id: 'turbine-cover',
    name: 'Turbine cover of the head',
    openMin: 5,
    closeMin: 5,
    fixings: [{ count: 4, kind: 'TX10 plastic 3 × 12' }],
  },
]

/** A head whose roll is turned by the air. */
export const turbineHead: BlueprintFragment = { covers, parts, faults, checks, repairs, addsTo }
