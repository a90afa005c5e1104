import type { BlueprintFragment } from '../../fragment.ts'

export interface UprightDuctsOptions {
  readonly ductCover: string
  readonly neckCover: string
}

const parts = (o: UprightDuctsOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'lower-hose',
    name: 'Lower hose',
    does: 'Head to body, flexes as you recline',
    group: 'air',
    spareShare: { low: 0.04, high: 0.07 },
    air: { kind: 'hose', make: 'stretch', diameterM: 0.035, lengthM: 0.35 },
  },
  {
    id: 'duct',
    name: 'Duct',
    does: 'Air way through neck and back',
    group: 'air',
    behind: o.ductCover,
    air: { kind: 'passage', like: 'duct' },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'lower-hose-split',
    part: 'lower-hose',
    name: 'Lower hose split or off its spigot',
    how: 'Folds each time the handle goes down; hisses low down.',
    rate: { rows: [['A17', 1]], component: { id: 'hose', share: 0.25 } },
    complaints: { 'poor-pickup': 0.6, 'weak-suction': 0.6, 'dust-leaks': 0.3 },
    saleShareIfLeft: 0.3,
    air: { does: 'leaks', part: 'lower-hose', side: 'after' },
  },
  {
    id: 'duct-blocked',
    part: 'duct',
    name: 'Lower duct or neck blocked',
    how: 'Something caught at the elbow: good at the hose, nothing at the head.',
    rate: { rows: [['A16', 1]], component: { id: 'blockage-unplaced', share: 0.4 } },
    complaints: { 'weak-suction': 0.7, 'poor-pickup': 0.6, 'cuts-out': 0.1 },
    saleShareIfLeft: 0.6,
    air: { does: 'blocks', part: 'duct' },
  },
]

const checks = (o: UprightDuctsOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'fold-lower-hose',
    name: 'Lower hose, fold the handle',
    how: 'Plug out. Fold and straighten it at the neck; look all round the short hose and pull gently at both ends.',
    minutes: 1,
    outcomes: [
      { id: 'whole', name: 'Whole, both ends on' },
      { id: 'split', name: 'Split or off' },
    ],
    sound: { whole: 0.985, split: 0.015 },
    under: { 'lower-hose-split': { split: 0.88, whole: 0.12 } },
  },
  {
    kind: 'look',
    id: 'torch-lower-duct',
    name: 'Lower duct by torch',
    how: 'Plug out. Torch from one end, look from the other; bend-wire through the elbow.',
    minutes: 2,
    coversOff: [o.ductCover],
    outcomes: [
      { id: 'clear', name: 'Clear' },
      { id: 'blocked', name: 'Something in it' },
    ],
    sound: { clear: 0.98, blocked: 0.02 },
    under: { 'duct-blocked': { blocked: 0.93, clear: 0.07 } },
  },
]

const repairs = (o: UprightDuctsOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'lower-hose-new',
    name: 'Change the lower hose',
    part: 'lower-hose',
    removes: ['lower-hose-split'],
    coversOff: [o.neckCover],
    options: [
      {
        id: 'new',
        name: 'New lower hose',
        minutes: 15,
        costMinor: { low: 600, high: 1400 },
        success: 0.97,
        breakRisk: 0.04,
      },
      {
        id: 'refit',
        name: 'Back on its spigot, new clip',
        minutes: 10,
        costMinor: { low: 0, high: 80 },
        success: 0.45,
        breakRisk: 0.04,
      },
    ],
    note: 'Its clip ears break: warm them.',
  },
  {
    id: 'duct-clear',
    name: 'Clear the lower duct',
    part: 'duct',
    removes: ['duct-blocked'],
    coversOff: [o.ductCover],
    options: [
      {
        id: 'clean',
        name: 'Clear it, smooth the burr that caught it',
        minutes: 15,
        costMinor: { low: 0, high: 0 },
        success: 0.96,
        breakRisk: 0.01,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-listen': { 'lower-hose-split': { whistle: 0.5, even: 0.5 }, 'duct-blocked': { high: 0.55, even: 0.45 } },
  'run-lamps': { 'duct-blocked': { warning: 0.5, right: 0.5 } },
  'air-head': {
    'duct-blocked': { weak: 0.85, fair: 0.13, strong: 0.02 },
    'lower-hose-split': { weak: 0.85, fair: 0.13, strong: 0.02 },
  },
  'run-full': {
    'lower-hose-split': { weak: 0.6, 'poor-pickup': 0.33, works: 0.07 },
    'duct-blocked': { weak: 0.75, 'poor-pickup': 0.22, works: 0.03 },
  },
}

/** The way of the air from the head up to the dust: a short hose at the neck and a duct. */
export const uprightDucts = (o: UprightDuctsOptions): BlueprintFragment => ({
  parts: parts(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
