import type { BlueprintInput } from '../../schema.ts'

const chamber: BlueprintInput['checks'] = [
  {
    kind: 'look',
    id: 'paper-strip-door',
    name: 'Paper strip round the bag door',
    how: 'Plug out. Shut the door on a paper strip, pull; six places. The door must stay shut.',
    minutes: 2,
    outcomes: [
      { id: 'grips', name: 'Grips all round' },
      { id: 'slips', name: 'Slips out somewhere' },
      { id: 'gapes', name: 'Latch does not hold' },
    ],
    sound: { grips: 0.94, slips: 0.05, gapes: 0.01 },
    under: {
      'bag-door-seal-perished': { slips: 0.9, grips: 0.1 },
      'bag-door-latch-broken': { gapes: 0.92, slips: 0.06, grips: 0.02 },
    },
  },
  {
    kind: 'look',
    id: 'press-relief-valve',
    name: 'Relief valve',
    how: 'Plug out, bag door open. Press the valve: it must spring back and sit flat.',
    minutes: 0.7,
    coversOff: ['bag-door'],
    outcomes: [
      { id: 'springs', name: 'Springs back flat' },
      { id: 'stuck', name: 'Stays open or crooked' },
    ],
    sound: { springs: 0.98, stuck: 0.02 },
    under: { 'relief-valve-stuck-open': { stuck: 0.93, springs: 0.07 } },
  },
  {
    kind: 'look',
    id: 'look-fan-inlet',
    name: 'Fan inlet by torch',
    how: 'Plug out, filter out. Torch into the fan: grey-white cake? Bag ever missing, plaster, ash?',
    minutes: 1.5,
    coversOff: ['filter-cover'],
    outcomes: [
      { id: 'clean', name: 'Clean blades' },
      { id: 'film', name: 'Thin dust film' },
      { id: 'caked', name: 'Caked' },
    ],
    sound: { clean: 0.85, film: 0.14, caked: 0.01 },
    under: {
      'fan-choked': { caked: 0.9, film: 0.1 },
      'bag-split': { film: 0.6, clean: 0.25, caked: 0.15 },
    },
  },
]

const airWays: BlueprintInput['checks'] = [
  {
    kind: 'look',
    id: 'ball-through-hose',
    name: 'Ball through the hose',
    how: 'Plug out. Hose off. A 20 mm ball must drop right through.',
    minutes: 1.5,
    outcomes: [
      { id: 'drops', name: 'Drops through' },
      { id: 'sticks', name: 'Sticks' },
    ],
    sound: { drops: 0.985, sticks: 0.015 },
    under: { 'hose-blocked': { sticks: 0.97, drops: 0.03 } },
  },
  {
    kind: 'look',
    id: 'stretch-hose',
    name: 'Stretch the hose against the light',
    how: 'Plug out. Stretch and bend it, cuffs first. Lamp inside shows pin holes.',
    minutes: 1.5,
    outcomes: [
      { id: 'whole', name: 'Whole' },
      { id: 'cuff', name: 'Split at a cuff' },
      { id: 'middle', name: 'Split or holes along it' },
    ],
    sound: { whole: 0.97, cuff: 0.02, middle: 0.01 },
    under: {
      'hose-split-cuff': { cuff: 0.94, whole: 0.06 },
      'hose-split-middle': { middle: 0.92, whole: 0.08 },
    },
  },
  {
    kind: 'look',
    id: 'fold-lower-hose',
    name: 'Lower hose, fold the handle',
    how: 'Plug out. Handle down and up; look all round the short hose and pull gently at both ends.',
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
    how: 'Plug out, back cover off. Torch from one end, look from the other; bend-wire through the elbow.',
    minutes: 2,
    coversOff: ['back-cover'],
    outcomes: [
      { id: 'clear', name: 'Clear' },
      { id: 'blocked', name: 'Something in it' },
    ],
    sound: { clear: 0.98, blocked: 0.02 },
    under: { 'duct-blocked': { blocked: 0.93, clear: 0.07 } },
  },
  {
    kind: 'look',
    id: 'work-changeover-flap',
    name: 'Changeover flap',
    how: 'Plug out, back cover off. Pull the hose out and push it in; the flap must go over fully both ways.',
    minutes: 1,
    coversOff: ['back-cover'],
    outcomes: [
      { id: 'goes', name: 'Goes over fully' },
      { id: 'stuck', name: 'Sticks or hangs' },
    ],
    sound: { goes: 0.98, stuck: 0.02 },
    under: { 'changeover-flap-stuck': { stuck: 0.93, goes: 0.07 } },
  },
]

export const airLookChecks: BlueprintInput['checks'] = [...chamber, ...airWays]
