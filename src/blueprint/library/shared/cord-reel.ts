import type { BlueprintFragment } from '../../fragment.ts'
import { cordReelChecks } from './cord-reel-checks.ts'
import { cordReelFaults } from './cord-reel-faults.ts'
import { cordReelRepairs } from './cord-reel-repairs.ts'

const points: NonNullable<BlueprintFragment['points']> = [
  { id: 'reel.line', name: 'Fixed line contact of the reel', behind: 'reel-cover' },
  { id: 'reel.neutral', name: 'Fixed neutral contact of the reel', behind: 'reel-cover' },
]

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'cord-reel',
    name: 'Cord reel',
    does: 'Winds the flex in: drum, spring and brake',
    group: 'mechanical',
    behind: 'reel-cover',
    spareShare: { low: 0.08, high: 0.15 },
  },
  {
    id: 'reel-contacts',
    name: 'Reel contacts',
    does: 'Springs on rings: carry the mains into the body as the drum turns',
    group: 'electrical',
    behind: 'reel-cover',
    within: 'cord-reel',
  },
  {
    id: 'flex-reel',
    name: 'Flex at the drum',
    does: 'Anchored to the drum; bends there when the flex is pulled to its end',
    group: 'electrical',
    behind: 'reel-cover',
  },
]

const circuit: NonNullable<BlueprintFragment['circuit']> = [
  {
    kind: 'resistor',
    id: 'reel-line-contact',
    part: 'reel-contacts',
    from: 'flex.line',
    to: 'reel.line',
    resistanceOhm: 0.05,
    spread: 0.5,
  },
  {
    kind: 'resistor',
    id: 'reel-neutral-contact',
    part: 'reel-contacts',
    from: 'flex.neutral',
    to: 'reel.neutral',
    resistanceOhm: 0.05,
    spread: 0.5,
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-move-flex': {
    'reel-line-contact-worn': { flickers: 0.7, steady: 0.3 },
    'reel-neutral-contact-worn': { flickers: 0.7, steady: 0.3 },
    'reel-contact-burnt': { flickers: 0.5, steady: 0.5 },
    'flex-drum-line-flickers': { flickers: 0.85, steady: 0.15 },
    'flex-drum-neutral-flickers': { flickers: 0.85, steady: 0.15 },
  },
  'run-soak': {
    'reel-line-contact-worn': { 'cuts-out': 0.35, smells: 0.35, cool: 0.3 },
    'reel-neutral-contact-worn': { 'cuts-out': 0.35, smells: 0.35, cool: 0.3 },
    'reel-contact-burnt': { smells: 0.6, 'cuts-out': 0.3, cool: 0.1 },
    'flex-drum-line-flickers': { 'cuts-out': 0.6, 'hot-lead': 0.15, cool: 0.25 },
    'flex-drum-neutral-flickers': { 'cuts-out': 0.6, 'hot-lead': 0.15, cool: 0.25 },
  },
  'run-full': {
    'reel-line-contact-worn': { 'cuts-out': 0.8, works: 0.2 },
    'reel-neutral-contact-worn': { 'cuts-out': 0.8, works: 0.2 },
    'reel-contact-burnt': { 'cuts-out': 0.7, smells: 0.2, works: 0.1 },
    'flex-drum-line-flickers': { 'cuts-out': 0.9, works: 0.1 },
    'flex-drum-neutral-flickers': { 'cuts-out': 0.9, works: 0.1 },
    'reel-spring-weak': { reel: 0.96, works: 0.04 },
    'reel-brake-slips': { reel: 0.94, works: 0.06 },
  },
}

/**
 * A reel that winds the flex in. The flex comes from `lead` with its far ends at the drum; the reel hands the mains on at
 * `reel.line` and `reel.neutral`. Behind the cover `reel-cover`.
 */
export const cordReel: BlueprintFragment = {
  points,
  parts,
  circuit,
  faults: cordReelFaults,
  checks: cordReelChecks,
  repairs: cordReelRepairs,
  addsTo,
}
