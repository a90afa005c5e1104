import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'hose',
    name: 'Hose',
    does: 'Leads the air from the tool to the machine',
    group: 'air',
    spareShare: { low: 0.1, high: 0.2 },
    air: { kind: 'hose', make: 'stretch', diameterM: 0.032, lengthM: 1.8 },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'hose-blocked',
    part: 'hose',
    name: 'Hose blocked',
    how: 'A sock, a pen, hair at the bend.',
    rate: { rows: [['A11', 1]], component: { id: 'hose-blockage', share: 1 } },
    complaints: { 'weak-suction': 0.85, noise: 0.2, 'cuts-out': 0.2 },
    saleShareIfLeft: 0.8,
    air: { does: 'blocks', part: 'hose' },
  },
  {
    id: 'hose-split-cuff',
    part: 'hose',
    name: 'Hose split at the cuff',
    how: 'Torn where it is pulled; hisses when stretched.',
    rate: { rows: [['A12', 1]], component: { id: 'hose', share: 0.5 } },
    complaints: { 'weak-suction': 0.75, noise: 0.3 },
    excludes: ['hose-split-middle'],
    saleShareIfLeft: 0.6,
    air: { does: 'leaks', part: 'hose', side: 'after' },
  },
  {
    id: 'hose-split-middle',
    part: 'hose',
    name: 'Hose split or pin-holed along its length',
    how: 'Worn on the hook, trodden on, poked through.',
    rate: { rows: [['A13', 1]], component: { id: 'hose', share: 0.25 } },
    complaints: { 'weak-suction': 0.7, noise: 0.3 },
    excludes: ['hose-split-cuff'],
    saleShareIfLeft: 0.55,
    air: { does: 'leaks', part: 'hose', side: 'after' },
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'ball-through-hose',
    name: 'Ball through the hose',
    how: 'Plug out. Hose off. A 20 mm ball must drop right through.',
    minutes: 1.5,
    outcomes: [
      { id: 'drops', name: 'Drops through' },
      { id: 'sticks', name: 'Sticks' },
    ],
    sound: { drops: 0.985, sticks: 0.015 },
    under: { 'hose-blocked': { sticks: 0.97, drops: 0.03 } },
  },
  {
    kind: 'look',
    id: 'stretch-hose',
    name: 'Stretch the hose against the light',
    how: 'Plug out. Stretch and bend it, cuffs first. Lamp inside shows pin holes.',
    minutes: 1.5,
    outcomes: [
      { id: 'whole', name: 'Whole' },
      { id: 'cuff', name: 'Split at a cuff' },
      { id: 'middle', name: 'Split or holes along it' },
    ],
    sound: { whole: 0.97, cuff: 0.02, middle: 0.01 },
    under: { 'hose-split-cuff': { cuff: 0.94, whole: 0.06 }, 'hose-split-middle': { middle: 0.92, whole: 0.08 } },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'hose-clear',
    name: 'Clear the hose',
    part: 'hose',
    removes: ['hose-blocked'],
    options: [
      {
        id: 'clean',
        name: 'Push out from the other end',
        minutes: 8,
        costMinor: { low: 0, high: 0 },
        success: 0.95,
        breakRisk: 0.01,
      },
    ],
    note: 'Blunt rod: a sharp one goes through the wall.',
  },
  {
    id: 'hose-cut-back',
    name: 'Cut the hose back at the cuff',
    part: 'hose',
    removes: ['hose-split-cuff'],
    options: [
      {
        id: 'refit',
        name: 'Cut back, thread the cuff on again',
        minutes: 12,
        costMinor: { low: 0, high: 30 },
        success: 0.92,
        breakRisk: 0.01,
      },
    ],
    note: 'State the shorter length.',
    forbidden: 'Tape over the split: it leaks again and will not sell.',
  },
  {
    id: 'hose-new',
    name: 'Change the hose',
    part: 'hose',
    removes: ['hose-split-cuff', 'hose-split-middle', 'hose-blocked'],
    options: [
      { id: 'new', name: 'New hose', minutes: 5, costMinor: { low: 800, high: 1800 }, success: 0.99, breakRisk: 0.01 },
      {
        id: 'salvaged',
        name: 'Used hose, whole',
        minutes: 5,
        costMinor: { low: 300, high: 900 },
        success: 0.96,
        breakRisk: 0.01,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-listen': {
    'hose-split-cuff': { whistle: 0.6, even: 0.4 },
    'hose-split-middle': { whistle: 0.6, even: 0.4 },
    'hose-blocked': { high: 0.7, even: 0.3 },
  },
  'air-hose-end': {
    'hose-blocked': { weak: 0.85, fair: 0.13, strong: 0.02 },
    'hose-split-cuff': { fair: 0.6, weak: 0.3, strong: 0.1 },
    'hose-split-middle': { fair: 0.6, weak: 0.3, strong: 0.1 },
  },
  'air-blockage-lamp': { 'hose-blocked': { 'stays-lit': 0.75, right: 0.25 } },
  'run-soak': { 'hose-blocked': { 'cuts-out': 0.55, cool: 0.35, smells: 0.1 } },
  'run-full': {
    'hose-blocked': { weak: 0.95, works: 0.05 },
    'hose-split-cuff': { weak: 0.88, works: 0.12 },
    'hose-split-middle': { weak: 0.88, works: 0.12 },
  },
}

/** The hose for hand tools, or the one the machine is pulled by. */
export const hose: BlueprintFragment = { parts, faults, checks, repairs, addsTo }
