import type { BlueprintFragment } from '../../fragment.ts'

export interface ClutchOptions {
  readonly cover: string
}

/** A slipping clutch between motor and roll, on a cogged belt: it lets go when the roll jams. */
export const clutch = ({ cover }: ClutchOptions): BlueprintFragment => ({
  parts: [
    {
      id: 'clutch',
      name: 'Belt clutch',
      does: 'Lets go when the roll jams',
      group: 'mechanical',
      behind: cover,
      spareShare: { low: 0.03, high: 0.06 },
    },
  ],
  faults: [
    {
      id: 'clutch-slips',
      part: 'clutch',
      name: 'Belt clutch worn, slips',
      how: 'Ratchets or screams as soon as the roll meets carpet.',
      rate: { rows: [['H09', 0.6]], component: { id: 'brush-roll', share: 0.04 } },
      complaints: { 'brush-not-turning': 0.5, 'poor-pickup': 0.7, noise: 0.7 },
      saleShareIfLeft: 0.35,
      excludes: ['clutch-seized'],
    },
    {
      id: 'clutch-seized',
      part: 'clutch',
      name: 'Belt clutch seized',
      how: 'Does not let go: a jam stops the motor or strips the belt.',
      rate: { rows: [['H09', 0.4]], component: { id: 'brush-roll', share: 0.02 } },
      complaints: { smell: 0.3, 'cuts-out': 0.3 },
      saleShareIfLeft: 0.6,
      excludes: ['clutch-slips'],
    },
  ],
  checks: [
    {
      kind: 'look',
      id: 'slip-clutch',
      name: 'Clutch by hand',
      how: 'Plug out, side cover off. Hold the motor pulley with a cloth, turn the roll: it must resist, then slip with a click.',
      minutes: 1,
      coversOff: [cover],
      outcomes: [
        { id: 'slips-late', name: 'Resists, then slips' },
        { id: 'slips-early', name: 'Slips at once' },
        { id: 'never', name: 'Never slips' },
      ],
      sound: { 'slips-late': 0.96, 'slips-early': 0.03, never: 0.01 },
      under: {
        'clutch-slips': { 'slips-early': 0.92, 'slips-late': 0.08 },
        'clutch-seized': { never: 0.92, 'slips-late': 0.08 },
      },
    },
    {
      kind: 'run',
      id: 'run-brush',
      name: 'Brush turns',
      how: 'Covers on, RCD socket of 30 mA or less, head on carpet, hands clear of all that turns. Handle back, ten seconds; watch the pile. Plug out before touching.',
      minutes: 1.5,
      outcomes: [
        { id: 'turns', name: 'Turns, lifts the pile' },
        { id: 'slow', name: 'Slow, ratchets or rattles' },
        { id: 'whirrs', name: 'Motor runs, brush still' },
        { id: 'still', name: 'Brush stuck, clutch clicks' },
        { id: 'dead', name: 'Nothing runs' },
      ],
      sound: { turns: 0.97, slow: 0.03 },
      under: { 'clutch-slips': { slow: 0.8, whirrs: 0.17, turns: 0.03 } },
      controls: { 'mains-switch': 'on', 'handle-position': 'reclined' },
      driven: { element: 'suction-motor', otherwise: 'dead' },
    },
  ],
  repairs: [
    {
      id: 'clutch-mend',
      name: 'Mend the belt clutch',
      part: 'clutch',
      removes: ['clutch-slips', 'clutch-seized'],
      coversOff: [cover],
      options: [
        {
          id: 'clean',
          name: 'Taken apart, cleaned, spring set',
          minutes: 20,
          costMinor: { low: 0, high: 50 },
          success: 0.65,
          breakRisk: 0.06,
        },
        {
          id: 'salvaged',
          name: 'Clutch from a donor',
          minutes: 20,
          costMinor: { low: 300, high: 900 },
          success: 0.92,
          breakRisk: 0.04,
        },
        {
          id: 'new',
          name: 'New clutch',
          minutes: 20,
          costMinor: { low: 900, high: 2000 },
          success: 0.97,
          breakRisk: 0.04,
        },
      ],
    },
  ],
  addsTo: {
    'run-listen': { 'clutch-slips': { rumble: 0.5, even: 0.5 } },
    'run-smell': { 'clutch-slips': { rubber: 0.4, clean: 0.6 }, 'clutch-seized': { rubber: 0.15, clean: 0.85 } },
    'run-soak': { 'clutch-seized': { smells: 0.15, cool: 0.85 } },
    'run-full': {
      'clutch-slips': { noisy: 0.5, 'poor-pickup': 0.4, works: 0.1 },
      'clutch-seized': { smells: 0.15, works: 0.85 },
    },
  },
})
