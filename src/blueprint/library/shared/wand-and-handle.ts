import type { BlueprintFragment } from '../../fragment.ts'
import { catalogue } from './sources.ts'

export interface WandOptions {
  /** False where the wand carries contacts and is already a part of the electrics. */
  readonly ownsWand: boolean
}

const wand: NonNullable<BlueprintFragment['parts']>[number] = {
  id: 'wand',
  name: 'Wand',
  does: 'Joins hose and head',
  group: 'air',
  spareShare: { low: 0.08, high: 0.15 },
}

const parts = (o: WandOptions): NonNullable<BlueprintFragment['parts']> => [
  ...(o.ownsWand ? [wand] : []),
  { id: 'hose-grip', name: 'Hose handle with slider', does: 'Held by the hand; its slider lets air in', group: 'air' },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'wand-leaks',
    part: 'wand',
    name: 'Wand cracked, push-fit worn or its lock slipping',
    how: 'Daylight through the joint, whistles; the telescope will not stay out.',
    rate: { rows: [['A15', 0.7]], component: { id: 'wand', share: 0.6 } },
    complaints: { 'weak-suction': 0.5, noise: 0.2, 'poor-pickup': 0.3 },
    saleShareIfLeft: 0.65,
  },
  {
    id: 'wand-blocked',
    part: 'wand',
    name: 'Wand blocked',
    how: 'A twig or a toy across the tube.',
    rate: {
      component: { id: 'wand-blockage', share: 1 },
      perHundred: 1.5,
      source: { ...catalogue, clause: 'a tenth of the blockages in hoses' },
    },
    complaints: { 'weak-suction': 0.75, 'poor-pickup': 0.5, noise: 0.15 },
    saleShareIfLeft: 0.8,
  },
  {
    id: 'grip-slider-open',
    part: 'hose-grip',
    name: 'Slider on the hose handle open, cracked or lost',
    how: 'Air goes in at the hand. The owner never knew of it.',
    rate: { rows: [['A20', 1]], component: { id: 'hose', share: 0.1 } },
    complaints: { 'weak-suction': 0.8, 'poor-pickup': 0.4 },
    saleShareIfLeft: 0.9,
    air: { does: 'stands-open', part: 'hose', side: 'before' },
  },
  {
    id: 'cuff-catch-broken',
    part: 'hose-grip',
    name: 'Hose cuff, catch or swivel broken',
    how: 'Falls out of the machine, or leaks at the swivel.',
    rate: { rows: [['A14', 1]], component: { id: 'hose', share: 0.15 } },
    complaints: { 'weak-suction': 0.55 },
    saleShareIfLeft: 0.6,
    air: { does: 'leaks', part: 'hose', side: 'after' },
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-wand',
    name: 'Wand against the light',
    how: 'Plug out. Look through it; push the joints together and rock them; work the lock.',
    minutes: 1,
    outcomes: [
      { id: 'clear', name: 'Clear, tight, locks' },
      { id: 'leaks', name: 'Cracked, loose or slips' },
      { id: 'blocked', name: 'Something in it' },
    ],
    sound: { clear: 0.96, leaks: 0.04 },
    under: { 'wand-leaks': { leaks: 0.92, clear: 0.08 }, 'wand-blocked': { blocked: 0.98, clear: 0.02 } },
  },
  {
    kind: 'look',
    id: 'look-grip',
    name: 'Slider and cuffs',
    how: 'Plug out. Slider shut and whole? Cuff clicks in and holds, swivel tight?',
    minutes: 0.5,
    outcomes: [
      { id: 'shut', name: 'Shut, clicks in, tight' },
      { id: 'open', name: 'Slider open or broken' },
      { id: 'loose', name: 'Cuff or swivel broken' },
    ],
    sound: { shut: 0.93, open: 0.05, loose: 0.02 },
    under: { 'grip-slider-open': { open: 0.97, shut: 0.03 }, 'cuff-catch-broken': { loose: 0.94, shut: 0.06 } },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'wand-clear',
    name: 'Clear the wand',
    part: 'wand',
    removes: ['wand-blocked'],
    options: [
      {
        id: 'clean',
        name: 'Pushed out from the narrow end',
        minutes: 4,
        costMinor: { low: 0, high: 0 },
        success: 0.98,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'wand-swap',
    name: 'Change the wand',
    part: 'wand',
    removes: ['wand-leaks', 'wand-blocked', 'wand-contacts-burnt'],
    options: [
      {
        id: 'salvaged',
        name: 'Wand from a donor',
        minutes: 3,
        costMinor: { low: 150, high: 900 },
        success: 0.97,
        breakRisk: 0.01,
      },
      {
        id: 'new',
        name: 'New wand, same tube',
        minutes: 3,
        costMinor: { low: 600, high: 1500 },
        success: 0.98,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'slider-shut',
    name: 'Shut or replace the slider',
    part: 'hose-grip',
    removes: ['grip-slider-open'],
    options: [
      {
        id: 'refit',
        name: 'Shut, or back on its rail',
        minutes: 2,
        costMinor: { low: 0, high: 0 },
        success: 0.75,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'Slider from a donor',
        minutes: 3,
        costMinor: { low: 50, high: 300 },
        success: 0.97,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'cuff-new',
    name: 'New hose end',
    part: 'hose-grip',
    removes: ['cuff-catch-broken'],
    options: [
      {
        id: 'new',
        name: 'New end, screwed on the spiral',
        minutes: 8,
        costMinor: { low: 300, high: 800 },
        success: 0.95,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'End from a donor hose',
        minutes: 10,
        costMinor: { low: 50, high: 300 },
        success: 0.92,
        breakRisk: 0.02,
      },
    ],
  },
]

const leaksAtHand = { weak: 0.5, fair: 0.45, strong: 0.05 }

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-listen': {
    'wand-leaks': { whistle: 0.4, even: 0.6 },
    'wand-blocked': { high: 0.6, even: 0.4 },
    'grip-slider-open': { whistle: 0.4, even: 0.6 },
    'cuff-catch-broken': { whistle: 0.4, even: 0.6 },
  },
  'air-hose-end': { 'grip-slider-open': leaksAtHand, 'cuff-catch-broken': { fair: 0.55, weak: 0.35, strong: 0.1 } },
  'air-head': {
    'wand-leaks': { fair: 0.55, weak: 0.35, strong: 0.1 },
    'wand-blocked': { weak: 0.9, fair: 0.1 },
    'grip-slider-open': leaksAtHand,
    'cuff-catch-broken': { fair: 0.55, weak: 0.35, strong: 0.1 },
  },
  'run-full': {
    'wand-leaks': { weak: 0.6, 'poor-pickup': 0.3, works: 0.1 },
    'wand-blocked': { weak: 0.8, 'poor-pickup': 0.18, works: 0.02 },
    'grip-slider-open': { weak: 0.8, works: 0.2 },
    'cuff-catch-broken': { weak: 0.8, works: 0.2 },
  },
}

/** What a machine pulled by its hose has between hose and head. */
export const wandAndHandle = (o: WandOptions): BlueprintFragment => ({
  parts: parts(o),
  faults,
  checks,
  repairs,
  addsTo,
})
