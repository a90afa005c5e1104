import type { BlueprintFragment } from '../../fragment.ts'

const fromOutside: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'meter',
    id: 'pins-pull-flex',
    name: 'Pin to pin, pull the flex out and let it in',
    how: 'Plug out. Switch on, probes clipped to the pins. Pull the flex right out and let it in by hand; twist it at the mouth.',
    minutes: 2,
    red: 'plug.line',
    black: 'plug.neutral',
    controls: { 'mains-switch': 'on' },
    moving: ['reel-contacts', 'flex-reel'],
  },
  {
    kind: 'look',
    id: 'wind-flex-in',
    name: 'Flex out, stay, and in',
    how: 'Plug out. Pull the flex to its mark: does it stay? Press the pedal, guide it with a hand: does it all go in?',
    minutes: 1,
    caution: 'Hold the plug while it winds in: it whips.',
    outcomes: [
      { id: 'good', name: 'Stays out, winds in to the plug' },
      { id: 'creeps', name: 'Creeps back, or the pedal does nothing' },
      { id: 'stays', name: 'Stays out, or the last metres do' },
    ],
    sound: { good: 0.94, stays: 0.05, creeps: 0.01 },
    under: {
      'reel-spring-weak': { stays: 0.95, good: 0.05 },
      'reel-brake-slips': { creeps: 0.92, good: 0.08 },
    },
  },
]

const inside: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-reel',
    name: 'Reel contacts and anchor',
    how: 'Plug out, reel in sight. Black track, sunk ring, blue spring? Flex firm in its anchor?',
    minutes: 2,
    coversOff: ['reel-cover'],
    caution: 'The spring bites: tape the drum before you lift it, and count its turns.',
    outcomes: [
      { id: 'clean', name: 'Bright track, flex firm' },
      { id: 'black', name: 'Black track or tired spring' },
      { id: 'loose', name: 'Flex loose or torn at the anchor' },
      { id: 'melted', name: 'Melted or sunk in', danger: true },
    ],
    sound: { clean: 0.93, black: 0.06, loose: 0.01 },
    under: {
      'reel-line-contact-worn': { black: 0.85, clean: 0.15 },
      'reel-neutral-contact-worn': { black: 0.85, clean: 0.15 },
      'reel-contact-burnt': { melted: 0.9, black: 0.1 },
      'flex-drum-line-flickers': { loose: 0.45, clean: 0.55 },
      'flex-drum-line-open': { loose: 0.7, clean: 0.3 },
      'flex-drum-neutral-flickers': { loose: 0.45, clean: 0.55 },
      'flex-drum-neutral-open': { loose: 0.7, clean: 0.3 },
      'reel-spring-weak': { clean: 0.8, black: 0.2 },
    },
  },
  {
    kind: 'meter',
    id: 'line-pin-to-reel',
    name: 'Line pin to the reel’s fixed line contact',
    how: 'Plug out. Flex and ring in one; turn the drum a little. It must be steady.',
    minutes: 1.5,
    red: 'plug.line',
    black: 'reel.line',
    moving: ['reel-contacts', 'flex-reel'],
  },
  {
    kind: 'meter',
    id: 'neutral-pin-to-reel',
    name: 'Neutral pin to the reel’s fixed neutral contact',
    how: 'Plug out. Flex and ring in one; turn the drum a little. It must be steady.',
    minutes: 1.5,
    red: 'plug.neutral',
    black: 'reel.neutral',
    moving: ['reel-contacts', 'flex-reel'],
  },
  {
    kind: 'meter',
    id: 'reel-line-contact-through',
    name: 'Through the reel’s line contact',
    how: 'Plug out. Brown core’s anchor to the fixed contact; rock the drum. Near nothing and steady is good.',
    minutes: 1,
    red: 'flex.line',
    black: 'reel.line',
    moving: ['reel-contacts'],
  },
  {
    kind: 'meter',
    id: 'reel-neutral-contact-through',
    name: 'Through the reel’s neutral contact',
    how: 'Plug out. Blue core’s anchor to the fixed contact; rock the drum. Near nothing and steady is good.',
    minutes: 1,
    red: 'flex.neutral',
    black: 'reel.neutral',
    moving: ['reel-contacts'],
  },
]

export const cordReelChecks: NonNullable<BlueprintFragment['checks']> = [...fromOutside, ...inside]
