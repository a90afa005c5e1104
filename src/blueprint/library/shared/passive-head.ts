import type { Family } from '../../../facts/fault-catalogue.ts'
import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'floor-head',
    name: 'Floor head',
    does: 'Glides on the floor; a pedal lets its bristles down',
    group: 'mechanical',
    spareShare: { low: 0.08, high: 0.15 },
  },
]

export interface PassiveHeadOptions {
  /** The kind of machine whose rates hold for the head, where the machine’s own kind has no such heads. */
  readonly ratedAs?: Family
}

const faults = (o: PassiveHeadOptions): NonNullable<BlueprintFragment['faults']> => [
  {
    id: 'head-pedal-stuck',
    part: 'floor-head',
    name: 'Head pedal or bristle bar stuck',
    how: 'Fluff in the linkage, or its spring off: the bristles stay up or down.',
    rate: { ratedAs: o.ratedAs, rows: [['H23', 1]], component: { id: 'floor-head', share: 0.35 } },
    complaints: { 'poor-pickup': 0.6, 'hard-to-push': 0.5 },
    saleShareIfLeft: 0.75,
  },
  {
    id: 'head-worn',
    part: 'floor-head',
    name: 'Head plate, lips or bristles worn',
    how: 'Edges ground down, bristles short: scratches the floor and leaves grit.',
    rate: {
      ratedAs: o.ratedAs,
      rows: [
        ['H22', 1],
        ['H06', 0.5],
      ],
      component: { id: 'floor-head', share: 0.3 },
    },
    complaints: { 'poor-pickup': 0.6, 'hard-to-push': 0.25 },
    saleShareIfLeft: 0.8,
  },
  {
    id: 'head-neck-leaks',
    part: 'floor-head',
    name: 'Head neck cracked or its joint leaking',
    how: 'Whistles at the swivel; a tissue is drawn in there.',
    rate: { ratedAs: o.ratedAs, rows: [['A15', 0.3]], component: { id: 'floor-head', share: 0.2 } },
    complaints: { 'weak-suction': 0.45, 'poor-pickup': 0.5, noise: 0.3 },
    saleShareIfLeft: 0.7,
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'work-head-pedal',
    name: 'Head pedal and bristles',
    how: 'Plug out, head off. Press the pedal both ways; straight-edge along plate and bristles; twist the neck.',
    minutes: 1,
    outcomes: [
      { id: 'good', name: 'Bristles drop and lift, plate sound' },
      { id: 'stuck', name: 'Stuck or half way' },
      { id: 'worn', name: 'Worn down' },
      { id: 'cracked', name: 'Neck cracked or loose' },
    ],
    sound: { good: 0.95, worn: 0.04, stuck: 0.01 },
    under: {
      'head-pedal-stuck': { stuck: 0.94, good: 0.06 },
      'head-worn': { worn: 0.9, good: 0.1 },
      'head-neck-leaks': { cracked: 0.85, good: 0.15 },
    },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'head-pedal-free',
    name: 'Free the head pedal',
    part: 'floor-head',
    removes: ['head-pedal-stuck'],
    options: [
      {
        id: 'clean',
        name: 'Fluff out, spring back',
        minutes: 12,
        costMinor: { low: 0, high: 20 },
        success: 0.85,
        breakRisk: 0.03,
      },
    ],
  },
  {
    id: 'floor-head-swap',
    name: 'Change the floor head',
    part: 'floor-head',
    removes: ['head-pedal-stuck', 'head-worn', 'head-neck-leaks'],
    options: [
      {
        id: 'salvaged',
        name: 'Head from a donor, same tube',
        minutes: 2,
        costMinor: { low: 150, high: 800 },
        success: 0.97,
        breakRisk: 0.01,
      },
      {
        id: 'new',
        name: 'New head, same tube',
        minutes: 2,
        costMinor: { low: 600, high: 1500 },
        success: 0.99,
        breakRisk: 0.01,
      },
    ],
    note: 'Tubes are 32, 35 or 38 mm: measure.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'air-head': {
    'head-neck-leaks': { fair: 0.55, weak: 0.35, strong: 0.1 },
    'head-worn': { fair: 0.4, strong: 0.6 },
  },
  'run-full': {
    'head-pedal-stuck': { 'poor-pickup': 0.5, height: 0.4, works: 0.1 },
    'head-worn': { 'poor-pickup': 0.6, works: 0.4 },
    'head-neck-leaks': { 'poor-pickup': 0.5, weak: 0.3, works: 0.2 },
  },
}

/** A head without a roll. */
export const passiveHead = (o: PassiveHeadOptions): BlueprintFragment => ({
  parts,
  faults: faults(o),
  checks,
  repairs,
  addsTo,
})
