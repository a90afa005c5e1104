import type { BlueprintInput } from '../../schema.ts'
import { catalogue } from '../shared/sources.ts'

const head: BlueprintInput['faults'] = [
  {
    id: 'belt-stripped',
    part: 'belt',
    name: 'Cogged belt snapped or stripped',
    how: 'Teeth gone, jumped or wrong size: motor whirrs, roll still.',
    rate: { component: { id: 'belt', share: 1 }, perHundred: 7, source: { ...catalogue, clause: 'row H03' } },
    complaints: { 'brush-not-turning': 0.85, noise: 0.3, 'poor-pickup': 0.5, smell: 0.15, 'lamp-wrong': 0.1 },
    saleShareIfLeft: 0.3,
  },
  {
    id: 'roll-jammed',
    part: 'brush-roll',
    name: 'Brush roll jammed with hair',
    how: 'Hair and thread round the roll and in the end caps.',
    rate: { component: { id: 'brush-roll', share: 0.35 }, perHundred: 14, source: { ...catalogue, clause: 'row H04' } },
    complaints: {
      'brush-not-turning': 0.65,
      'poor-pickup': 0.5,
      smell: 0.25,
      'cuts-out': 0.15,
      'hard-to-push': 0.2,
      'lamp-wrong': 0.1,
    },
    saleShareIfLeft: 0.95,
  },
  {
    id: 'roll-bearing-seized',
    part: 'brush-roll',
    name: 'Brush roll bearing seized or melted',
    how: 'Hot end, squeal, wobble; melted end cap.',
    rate: { component: { id: 'brush-roll', share: 0.1 }, perHundred: 5, source: { ...catalogue, clause: 'row H05' } },
    complaints: { 'brush-not-turning': 0.65, noise: 0.5, smell: 0.4 },
    saleShareIfLeft: 0.2,
  },
  {
    id: 'bristles-worn',
    part: 'brush-roll',
    name: 'Bristles worn',
    how: 'They no longer reach past the sole plate.',
    rate: { component: { id: 'brush-roll', share: 0.1 }, perHundred: 8, source: { ...catalogue, clause: 'row H06' } },
    complaints: { 'poor-pickup': 0.75, 'lamp-wrong': 0.1 },
    saleShareIfLeft: 0.75,
  },
  {
    id: 'sole-plate-worn',
    part: 'sole-plate',
    name: 'Sole plate worn or cracked',
    how: 'Edges ground down; scratches the floor.',
    rate: { component: { id: 'floor-head', share: 0.3 }, perHundred: 4, source: { ...catalogue, clause: 'row H22' } },
    complaints: { 'poor-pickup': 0.4, 'hard-to-push': 0.25 },
    saleShareIfLeft: 0.85,
  },
]

const body: BlueprintInput['faults'] = [
  {
    id: 'park-latch-broken',
    part: 'park-latch',
    name: 'Park latch broken or its spring gone',
    how: 'Will not stay upright, or will not let go.',
    rate: { perHundred: 4, source: { ...catalogue, clause: 'row X01' } },
    complaints: { 'will-not-park': 0.9, 'hard-to-push': 0.1 },
    saleShareIfLeft: 0.5,
  },
  {
    id: 'casing-cracked',
    part: 'casing',
    name: 'Casing cracked, nothing live within reach',
    how: 'Dropped. A test finger reaches nothing.',
    rate: {
      component: { id: 'casing', share: 0.35 },
      perHundred: 2.6,
      source: { ...catalogue, clause: 'row X06, its part' },
    },
    complaints: { noise: 0.05 },
    saleShareIfLeft: 0.8,
    excludes: ['casing-open'],
  },
  {
    id: 'casing-open',
    part: 'casing',
    name: 'Casing broken or a cover missing, live parts within reach',
    how: 'Hole, missing cover or screw: a finger could get to live metal.',
    rate: {
      component: { id: 'casing', share: 0.15 },
      perHundred: 2.4,
      source: { ...catalogue, clause: 'rows X06 and Z03, its part' },
    },
    complaints: { noise: 0.05 },
    danger: 'The double insulation is broken: live parts can be touched',
    excludes: ['casing-cracked'],
  },
]

export const mechanicalFaults: BlueprintInput['faults'] = [...head, ...body]
