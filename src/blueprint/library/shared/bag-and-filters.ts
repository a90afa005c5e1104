import type { BlueprintInput } from '../../schema.ts'
import type { BlueprintFragment } from '../../compose.ts'
import { bagAndFilterRepairs } from './bag-and-filters-repairs.ts'
import { catalogue } from './sources.ts'

const faults: BlueprintInput['faults'] = [
  {
    id: 'bag-full',
    part: 'bag',
    name: 'Bag full',
    how: 'Full, or pores closed by fine dust. Its neck may be packed too.',
    rate: { component: { id: 'bag-full', share: 1 }, perHundred: 8, source: { ...catalogue, clause: 'row A01' } },
    complaints: { 'weak-suction': 0.85, 'cuts-out': 0.25, 'dust-leaks': 0.1, smell: 0.15 },
    saleShareIfLeft: 1,
  },
  {
    id: 'bag-split',
    part: 'bag',
    name: 'Bag split or off its collar',
    how: 'Dust loose in the chamber and on the filter.',
    rate: { component: { id: 'bag-or-bin', share: 0.6 }, perHundred: 3, source: { ...catalogue, clause: 'row A02' } },
    complaints: { 'dust-leaks': 0.7, 'weak-suction': 0.5, smell: 0.3 },
    saleShareIfLeft: 0.95,
  },
  {
    id: 'pre-motor-filter-clogged',
    part: 'pre-motor-filter',
    name: 'Pre-motor filter clogged or damp',
    how: 'Never changed, or put back wet.',
    rate: { component: { id: 'filters', share: 0.6 }, perHundred: 12, source: { ...catalogue, clause: 'row A06' } },
    complaints: { 'weak-suction': 0.85, 'cuts-out': 0.35, smell: 0.25 },
    saleShareIfLeft: 1,
  },
  {
    id: 'exhaust-filter-clogged',
    part: 'exhaust-filter',
    name: 'Exhaust filter clogged',
    how: 'Grey right through.',
    rate: { component: { id: 'filters', share: 0.35 }, perHundred: 8, source: { ...catalogue, clause: 'row A07' } },
    complaints: { 'weak-suction': 0.6, 'cuts-out': 0.3, smell: 0.3 },
    saleShareIfLeft: 1,
  },
  {
    id: 'bag-door-seal-perished',
    part: 'bag-door-seal',
    name: 'Bag door seal perished or rolled',
    how: 'Whistles; a paper strip slips out of the shut door.',
    rate: { component: { id: 'seals', share: 0.6 }, perHundred: 3, source: { ...catalogue, clause: 'row A04' } },
    complaints: { 'weak-suction': 0.7, 'dust-leaks': 0.3, noise: 0.25 },
    saleShareIfLeft: 0.6,
  },
  {
    id: 'bag-door-latch-broken',
    part: 'bag-door-latch',
    name: 'Bag door latch broken',
    how: 'The door springs open or gapes under suction.',
    rate: { component: { id: 'casing', share: 0.4 }, perHundred: 4, source: { ...catalogue, clause: 'row A05' } },
    complaints: { 'weak-suction': 0.55, 'dust-leaks': 0.3 },
    saleShareIfLeft: 0.3,
  },
]

const looks: BlueprintInput['checks'] = [
  {
    kind: 'look',
    id: 'look-bag',
    name: 'Bag',
    how: 'Plug out. Open the bag door outdoors. How full? Dust loose in the chamber?',
    minutes: 1,
    coversOff: ['bag-door'],
    outcomes: [
      { id: 'room', name: 'Room in it, chamber clean' },
      { id: 'full', name: 'Full or packed' },
      { id: 'split', name: 'Split or off its collar' },
    ],
    sound: { room: 0.93, full: 0.05, split: 0.02 },
    under: { 'bag-full': { full: 0.96, room: 0.04 }, 'bag-split': { split: 0.95, room: 0.05 } },
  },
  {
    kind: 'look',
    id: 'look-pre-motor-filter',
    name: 'Pre-motor filter',
    how: 'Plug out, filter out. Hold it to the light; feel for damp.',
    minutes: 1,
    coversOff: ['filter-cover'],
    outcomes: [
      { id: 'clean', name: 'Light comes through' },
      { id: 'clogged', name: 'Grey, packed or damp' },
    ],
    sound: { clean: 0.93, clogged: 0.07 },
    under: {
      'pre-motor-filter-clogged': { clogged: 0.96, clean: 0.04 },
      'bag-split': { clogged: 0.45, clean: 0.55 },
      'bag-full': { clogged: 0.3, clean: 0.7 },
    },
  },
  {
    kind: 'look',
    id: 'look-exhaust-filter',
    name: 'Exhaust filter',
    how: 'Plug out, filter out. Grey right through? Sniff it.',
    minutes: 1,
    coversOff: ['exhaust-cover'],
    outcomes: [
      { id: 'clean', name: 'Pale' },
      { id: 'clogged', name: 'Grey through and through' },
    ],
    sound: { clean: 0.9, clogged: 0.1 },
    under: {
      'exhaust-filter-clogged': { clogged: 0.95, clean: 0.05 },
    },
  },
]

/**
 * Bag, its door, the filter before the motor and the exhaust filter. The covers it is put behind are `bag-door`,
 * `filter-cover` and `exhaust-cover`.
 */
export const bagAndFilters: BlueprintFragment = { faults, checks: looks, repairs: bagAndFilterRepairs }
