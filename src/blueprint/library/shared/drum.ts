import type { BlueprintFragment } from '../../fragment.ts'

export interface DrumOptions {
  /** It may be used on water: a float shuts the way to the motor. */
  readonly float: boolean
}

const parts = (o: DrumOptions): NonNullable<BlueprintFragment['parts']> => [
  { id: 'drum', name: 'Drum', does: 'Holds the bag and the dust', group: 'mechanical' },
  { id: 'drum-seal', name: 'Drum seal', does: 'Seals the top to the drum', group: 'air' },
  { id: 'drum-clamps', name: 'Drum clamps', does: 'Pull the top down on the seal', group: 'mechanical' },
  ...(o.float ? [floatPart] : []),
]

const floatPart: NonNullable<BlueprintFragment['parts']>[number] = {
  id: 'float',
  name: 'Float',
  does: 'Shuts the way to the motor when the drum is full of water',
  group: 'air',
  behind: 'drum-top',
}

const floatStuck: NonNullable<BlueprintFragment['faults']>[number] = {
  id: 'float-stuck',
  air: { does: 'blocks', part: 'pre-motor-filter' },
  part: 'float',
  name: 'Float stuck up',
  how: 'Dirt in its cage: no suction at all, motor pitch high.',
  rate: { rows: [['A23', 1]] },
  complaints: { 'weak-suction': 0.97, noise: 0.15 },
  saleShareIfLeft: 0.3,
}

const faults = (o: DrumOptions): NonNullable<BlueprintFragment['faults']> => [
  {
    id: 'drum-seal-leaks',
    air: { does: 'leaks', part: 'drum-seal', side: 'after' },
    part: 'drum-seal',
    name: 'Drum seal dirty, flat or off its groove',
    how: 'Push the top down while it runs and suction rises.',
    rate: { rows: [['A22', 0.6]], component: { id: 'seals', share: 0.5 } },
    complaints: { 'weak-suction': 0.75, 'dust-leaks': 0.3, noise: 0.3 },
    saleShareIfLeft: 0.55,
  },
  {
    id: 'drum-clamp-broken',
    air: { does: 'leaks', part: 'drum-seal', side: 'after' },
    part: 'drum-clamps',
    name: 'Drum clamp bent or broken',
    how: 'The top sits askew, or lifts when pulled by the hose.',
    rate: { rows: [['A22', 0.4]], component: { id: 'casing', share: 0.3 } },
    complaints: { 'weak-suction': 0.6, 'dust-leaks': 0.3 },
    saleShareIfLeft: 0.4,
  },
  {
    id: 'drum-dented',
    air: { does: 'leaks', part: 'drum-seal', side: 'after' },
    part: 'drum',
    name: 'Drum rim dented or cracked',
    how: 'Dropped down the stairs: the seal cannot meet it all round.',
    rate: { rows: [['X06', 0.4]], component: { id: 'casing', share: 0.15 } },
    complaints: { 'weak-suction': 0.55, 'dust-leaks': 0.35 },
    saleShareIfLeft: 0.4,
  },
  ...(o.float ? [floatStuck] : []),
]

const checks = (o: DrumOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-drum-seal',
    name: 'Drum rim, seal and clamps',
    how: 'Plug out, top off. Seal clean, round, in its groove? Straight-edge on the rim. Do both clamps pull down?',
    minutes: 1.5,
    coversOff: ['drum-top'],
    outcomes: [
      { id: 'good', name: 'Clean, round, pulls down' },
      { id: 'seal', name: 'Seal dirty, flat or off' },
      { id: 'clamp', name: 'Clamp bent or broken' },
      { id: 'rim', name: 'Rim dented or cracked' },
    ],
    sound: { good: 0.93, seal: 0.06, rim: 0.01 },
    under: {
      'drum-seal-leaks': { seal: 0.9, good: 0.1 },
      'drum-clamp-broken': { clamp: 0.94, good: 0.06 },
      'drum-dented': { rim: 0.92, good: 0.08 },
    },
  },
  {
    kind: 'air',
    id: 'air-push-top',
    name: 'Push the top down while it runs',
    how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Palm over the hose end, push the top down on the drum with the other hand: does it pull harder? Plug out before touching anything else.',
    minutes: 1,
    controls: { 'mains-switch': 'on' },
    outcomes: [
      { id: 'same', name: 'Pulls as before' },
      { id: 'better', name: 'Pulls harder' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { same: 0.96, better: 0.04 },
    under: {
      'drum-seal-leaks': { better: 0.85, same: 0.15 },
      'drum-clamp-broken': { better: 0.9, same: 0.1 },
      'drum-dented': { better: 0.5, same: 0.5 },
    },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
  ...(o.float ? [lookFloat] : []),
]

const lookFloat: NonNullable<BlueprintFragment['checks']>[number] = {
  kind: 'look',
  id: 'look-float',
  name: 'Float in its cage',
  how: 'Plug out, top off. Turn the top over and back: the float must drop freely.',
  minutes: 0.7,
  coversOff: ['drum-top'],
  outcomes: [
    { id: 'drops', name: 'Drops freely' },
    { id: 'stuck', name: 'Stuck up' },
  ],
  sound: { drops: 0.98, stuck: 0.02 },
  under: { 'float-stuck': { stuck: 0.96, drops: 0.04 } },
}

const repairs = (o: DrumOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'drum-seal-mend',
    name: 'Mend the drum seal',
    part: 'drum-seal',
    removes: ['drum-seal-leaks'],
    coversOff: ['drum-top'],
    options: [
      {
        id: 'clean',
        name: 'Washed, seated again',
        minutes: 6,
        costMinor: { low: 0, high: 20 },
        success: 0.7,
        breakRisk: 0.01,
      },
      {
        id: 'new',
        name: 'New seal or same section',
        minutes: 8,
        costMinor: { low: 200, high: 600 },
        success: 0.94,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'drum-clamp-mend',
    name: 'Mend the drum clamps',
    part: 'drum-clamps',
    removes: ['drum-clamp-broken'],
    options: [
      {
        id: 'adjust',
        name: 'Bent back, hook shortened',
        minutes: 8,
        costMinor: { low: 0, high: 0 },
        success: 0.65,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Clamp from a donor',
        minutes: 10,
        costMinor: { low: 50, high: 300 },
        success: 0.95,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'drum-swap',
    name: 'Change the drum, or true its rim',
    part: 'drum',
    removes: ['drum-dented'],
    options: [
      {
        id: 'adjust',
        name: 'Rim trued over a block',
        minutes: 15,
        costMinor: { low: 0, high: 0 },
        success: 0.6,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Drum from a donor',
        minutes: 8,
        costMinor: { low: 300, high: 1000 },
        success: 0.97,
        breakRisk: 0.01,
      },
    ],
  },
  ...(o.float ? [freeFloat] : []),
]

const freeFloat: NonNullable<BlueprintFragment['repairs']>[number] = {
  id: 'float-free',
  name: 'Free the float',
  part: 'float',
  removes: ['float-stuck'],
  coversOff: ['drum-top'],
  options: [
    {
      id: 'clean',
      name: 'Cage washed, float drops',
      minutes: 8,
      costMinor: { low: 0, high: 50 },
      success: 0.93,
      breakRisk: 0.02,
    },
  ],
  forbidden: 'Leaving the float out: water would reach the motor.',
}

const leak = { fair: 0.55, weak: 0.35, strong: 0.1 }

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-listen': {
    'drum-seal-leaks': { whistle: 0.6, even: 0.4 },
    'drum-clamp-broken': { whistle: 0.5, even: 0.5 },
    'drum-dented': { whistle: 0.5, even: 0.5 },
    'float-stuck': { high: 0.9, even: 0.1 },
  },
  'air-hose-end': {
    'drum-seal-leaks': leak,
    'drum-clamp-broken': leak,
    'drum-dented': leak,
    'float-stuck': { weak: 0.97, fair: 0.03 },
  },
  'air-head': {
    'drum-seal-leaks': leak,
    'drum-clamp-broken': leak,
    'drum-dented': leak,
    'float-stuck': { weak: 0.97, fair: 0.03 },
  },
  'air-sealed': {
    'drum-seal-leaks': { fair: 0.6, weak: 0.35, strong: 0.05 },
    'drum-clamp-broken': { fair: 0.6, weak: 0.35, strong: 0.05 },
    'drum-dented': { fair: 0.6, weak: 0.35, strong: 0.05 },
    'float-stuck': { weak: 0.95, fair: 0.05 },
  },
  'run-full': {
    'drum-seal-leaks': { weak: 0.75, leaks: 0.15, works: 0.1 },
    'drum-clamp-broken': { weak: 0.75, leaks: 0.15, works: 0.1 },
    'drum-dented': { weak: 0.7, leaks: 0.2, works: 0.1 },
    'float-stuck': { weak: 0.97, works: 0.03 },
  },
}

/** A drum under the motor: rim, seal, clamps, and a float where water may be picked up. The top is the cover `drum-top`. */
export const drum = (o: DrumOptions): BlueprintFragment => ({
  parts: parts(o),
  faults: faults(o),
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
