import type { Source } from '../base/source.ts'
import { sharpEdges, waitForCapacitor } from './safety-steps.ts'

/** What can hurt where a machine is taken apart, and the parts that it comes with. */
export type StripCaution = {
  readonly text: string
  /** As it goes back: its own words, null where nothing is to be said; left out where the same holds. */
  readonly back?: string | null
  /** Ids of parts of a blueprint; a cover has the cautions of what is behind it. */
  readonly parts: readonly string[]
  readonly source: Source
}

const usualCautions: Source = {
  title: 'Usual cautions of appliance repair: old dust, springs, sheet metal, carbon dust',
  evidence: 'from memory',
}
const benchPractice: Source = { title: 'Teardown practice of a small bench', evidence: 'judgement' }

/** Before the first cover. */
export const beforeStripping: readonly string[] = ['The plug stays out of the socket and in sight.', waitForCapacitor]

/** As it goes together again. */
export const whilePuttingBack = 'The plug stays out until all covers are on.'

/** What to look out for where the hand is. */
export const stripCautions: readonly StripCaution[] = [
  {
    text: 'The spring bites: count the turns and tape the drum before it is lifted, gloves on.',
    back: 'The spring bites: the drum stays taped until it sits, gloves on. Then as many turns as were counted.',
    parts: ['cord-reel', 'reel-contacts', 'flex-reel'],
    source: benchPractice,
  },
  {
    text: 'A spring may fly: cover it with a cloth while lifting, and photograph both of its legs first.',
    back: 'A spring goes under tension again: cloth over it, both of its legs as on the photograph.',
    parts: ['release-pedal', 'bag-door-latch', 'park-latch', 'belt-lifter', 'clutch', 'relief-valve', 'bin-catch'],
    source: benchPractice,
  },
  {
    text: sharpEdges,
    parts: ['suction-motor', 'motor-fan', 'dirt-fan', 'brush-motor', 'turbine', 'sole-plate', 'brush-roll'],
    source: usualCautions,
  },
  {
    text: 'Carbon dust: wipe it up damp, wear a mask, blow nothing about indoors.',
    back: null,
    parts: ['carbon-brushes', 'commutator'],
    source: usualCautions,
  },
  {
    text: 'Old dust: outdoors, with a mask. A bag can hold glass and pins.',
    back: null,
    parts: ['bag', 'cloth-bag', 'bin', 'cyclone', 'pre-motor-filter', 'exhaust-filter', 'drum'],
    source: usualCautions,
  },
  {
    text: 'Touch no leads or contacts before the capacitor is known to be empty.',
    parts: ['x2-capacitor', 'board', 'speed-board'],
    source: usualCautions,
  },
]

/** How screws go back into plastic, to be read as a machine goes together again. */
export const screwsIntoPlastic: { readonly text: string; readonly source: Source } = {
  text: 'Screws into plastic: turn backwards until it drops into the old thread, then in with the fingertips; stop at the first firm seat.',
  source: { title: 'Usual way with screws that cut their own thread in plastic', evidence: 'common practice' },
}
