import { blueprintSchema, type Blueprint } from '../../src/blueprint/schema.ts'

const source = { title: 'Invented for tests', evidence: 'judgement' as const }
const rate = { perHundred: 5, source }

/** Plug, flex, switch and motor in a row, two covers one inside the other. Small enough to follow by hand; its figures are invented. */
export const tinyBlueprint: Blueprint = blueprintSchema.parse({
  format: 'thrum-blueprint-1',
  id: 'tiny',
  name: 'Tiny upright',
  summary: 'One motor, one switch, for tests',
  recognise: ['It is tiny'],
  plate: { voltageV: 230, frequencyHz: 50, powerW: 700, protectionClass: 'II' },
  supply: { line: 'plug.l', neutral: 'plug.n' },
  points: [
    { id: 'plug.l', name: 'Line pin', at: [0, 0] },
    { id: 'plug.n', name: 'Neutral pin', at: [0, 4] },
    { id: 'switch.in', name: 'Switch, flex side', at: [4, 0] },
    { id: 'switch.out', name: 'Switch, motor side', at: [6, 0] },
    { id: 'motor.a', name: 'Motor lead A', at: [8, 0], behind: 'motor-cover' },
    { id: 'motor.b', name: 'Motor lead B', at: [8, 4], behind: 'motor-cover' },
    { id: 'metal', name: 'Touchable metal', at: [10, 2] },
  ],
  parts: [
    { id: 'plug', name: 'Plug', does: 'Connects to the supply', group: 'electrical' },
    { id: 'flex', name: 'Flex', does: 'Carries the supply', group: 'electrical' },
    { id: 'switch', name: 'Handle switch', does: 'Switches the motor', group: 'electrical' },
    { id: 'motor', name: 'Motor', does: 'Moves the air', group: 'electrical', behind: 'motor-cover' },
  ],
  controls: [{ id: 'handle', name: 'Handle switch', positions: ['off', 'on'] }],
  circuit: [
    { kind: 'wire', id: 'flex-l', part: 'flex', from: 'plug.l', to: 'switch.in', lengthM: 8, areaMm2: 0.75 },
    { kind: 'wire', id: 'flex-n', part: 'flex', from: 'plug.n', to: 'motor.b', lengthM: 8, areaMm2: 0.75 },
    {
      kind: 'contact',
      id: 'switch-contact',
      part: 'switch',
      from: 'switch.in',
      to: 'switch.out',
      contactOhm: 0.05,
      closedWhen: { control: 'handle', positions: ['on'] },
    },
    { kind: 'wire', id: 'motor-lead', part: 'motor', from: 'switch.out', to: 'motor.a', lengthM: 0.3, areaMm2: 0.75 },
    { kind: 'motor', id: 'motor-coil', part: 'motor', from: 'motor.a', to: 'motor.b', power: { shareOfPlate: 1 } },
    { kind: 'stray', id: 'motor-leak', part: 'motor', from: 'motor.b', to: 'metal' },
  ],
  covers: [
    { id: 'back-cover', name: 'Back cover', openMin: 3, closeMin: 3 },
    { id: 'motor-cover', name: 'Motor cover', openMin: 5, closeMin: 6, after: ['back-cover'] },
  ],
  faults: [
    {
      id: 'flex-open',
      part: 'flex',
      name: 'Flex, live conductor open',
      how: 'Broken at the handle entry',
      rate,
      electrical: [{ element: 'flex-l', becomes: 'open' }],
      complaints: { dead: 0.9 },
      danger: 'a broken conductor can arc inside the flex',
    },
    {
      id: 'switch-open',
      part: 'switch',
      name: 'Handle switch does not close',
      how: 'Burnt contact',
      rate,
      electrical: [{ element: 'switch-contact', becomes: 'open' }],
      complaints: { dead: 0.95 },
    },
    {
      id: 'motor-worn',
      part: 'motor',
      name: 'Motor brushes worn out',
      how: 'Carbon used up',
      rate,
      electrical: [{ element: 'motor-coil', becomes: 'open' }],
      complaints: { dead: 0.9 },
    },
    {
      id: 'motor-leaks',
      part: 'motor',
      name: 'Motor insulation broken down',
      how: 'Carbon dust and damp',
      rate,
      electrical: [{ element: 'motor-leak', becomes: { ohm: 20000 } }],
      complaints: { 'trips-supply': 0.6 },
      danger: 'touchable metal can become live',
    },
  ],
  checks: [
    {
      kind: 'meter',
      id: 'pins-on',
      name: 'Line pin to neutral pin, switch on',
      how: 'One probe on each pin, switch on',
      minutes: 1,
      red: 'plug.l',
      black: 'plug.n',
      controls: { handle: 'on' },
    },
    {
      kind: 'meter',
      id: 'flex-line',
      name: 'Flex, line conductor',
      how: 'Pin to switch',
      minutes: 2,
      red: 'plug.l',
      black: 'switch.in',
      moving: ['flex'],
    },
    {
      kind: 'meter',
      id: 'motor-winding',
      name: 'Motor, lead to lead',
      how: 'Across the motor leads, lead unplugged',
      minutes: 2,
      red: 'motor.a',
      black: 'motor.b',
      unplug: ['motor-lead'],
    },
    {
      kind: 'meter',
      id: 'insulation',
      name: 'Both pins to touchable metal',
      how: 'Pins joined, highest range',
      minutes: 1,
      red: 'plug.n',
      black: 'metal',
      beforeRunning: true,
      passesAtLeastOhm: 2e6,
    },
    {
      kind: 'look',
      id: 'look-flex',
      name: 'Flex, whole length',
      how: 'Run it through the hand',
      minutes: 2,
      beforeRunning: true,
      outcomes: [
        { id: 'good', name: 'No damage' },
        { id: 'cut', name: 'Cut or crushed', danger: true },
      ],
      sound: { good: 0.98, cut: 0.02 },
      under: { 'flex-open': { good: 0.4, cut: 0.6 } },
    },
    {
      kind: 'look',
      id: 'look-brushes',
      name: 'Motor brushes',
      how: 'Look at the carbon',
      minutes: 3,
      coversOff: ['motor-cover'],
      outcomes: [
        { id: 'long', name: 'Long enough' },
        { id: 'short', name: 'Worn short' },
      ],
      sound: { long: 0.95, short: 0.05 },
      under: { 'motor-worn': { long: 0.1, short: 0.9 } },
    },
    {
      kind: 'run',
      id: 'run',
      name: 'Run it for a minute',
      how: 'All covers on, on a supply with residual current protection',
      minutes: 2,
      outcomes: [
        { id: 'runs', name: 'Runs well' },
        { id: 'weak', name: 'Runs badly' },
        { id: 'dead', name: 'Does not run' },
      ],
      sound: { runs: 0.97, weak: 0.03 },
      under: {},
      controls: { handle: 'on' },
      driven: { element: 'motor-coil', otherwise: 'dead' },
      provesWorking: true,
    },
  ],
  repairs: [
    {
      id: 'refit-flex',
      name: 'Flex cut back and refitted',
      part: 'flex',
      removes: ['flex-open'],
      options: [
        { id: 'refit', name: 'Cut back', minutes: 15, costMinor: { low: 0, high: 100 }, success: 0.9, breakRisk: 0.01 },
      ],
    },
    {
      id: 'change-switch',
      name: 'Switch changed',
      part: 'switch',
      removes: ['switch-open'],
      options: [
        { id: 'new', name: 'New one', minutes: 15, costMinor: { low: 300, high: 800 }, success: 0.98, breakRisk: 0.01 },
        {
          id: 'salvaged',
          name: 'From the shelf',
          minutes: 15,
          costMinor: { low: 0, high: 100 },
          success: 0.9,
          breakRisk: 0.01,
        },
      ],
    },
    {
      id: 'change-motor',
      name: 'Motor changed',
      part: 'motor',
      removes: ['motor-worn', 'motor-leaks'],
      coversOff: ['motor-cover'],
      options: [
        {
          id: 'salvaged',
          name: 'From the shelf',
          minutes: 30,
          costMinor: { low: 0, high: 500 },
          success: 0.9,
          breakRisk: 0.02,
        },
      ],
    },
  ],
  worth: { workingMinor: { low: 3000, high: 5000 }, sparesMinor: { low: 300, high: 900 }, source },
})

type AddedCapacitor = {
  readonly id: string
  readonly from: string
  readonly to: string
  readonly capacitanceF: number
}

/** The tiny machine with suppression capacitors added; they belong to the switch. */
export const withCapacitors = (added: readonly AddedCapacitor[]): Blueprint => ({
  ...tinyBlueprint,
  circuit: [
    ...tinyBlueprint.circuit,
    ...added.map((capacitor) => ({ kind: 'capacitor' as const, part: 'switch', spread: 0.1, ...capacitor })),
  ],
})
