import { blueprintSchema, type Blueprint } from '../../../src/blueprint/schema.ts'

const source = { title: 'Made for this test', evidence: 'judgement' }

/** A small machine: fuse and switch in the line, a motor, a capacitor across the supply, a cover within a cover. */
export const smallBlueprint: Blueprint = blueprintSchema.parse({
  format: 'thrum-blueprint-1',
  id: 'small',
  name: 'Small machine',
  summary: 'For tests',
  recognise: ['Small'],
  plate: { voltageV: 230, frequencyHz: 50, powerW: 800, protectionClass: 'II' },
  supply: { line: 'pin.line', neutral: 'pin.neutral' },
  points: [
    { id: 'pin.line', name: 'Line pin', at: [0, 0] },
    { id: 'fuse.out', name: 'After the fuse', at: [2, 0] },
    { id: 'switch.out', name: 'After the switch', at: [4, 0], behind: 'shell' },
    { id: 'motor.b', name: 'Motor, neutral side', at: [4, 4], behind: 'motor-cover' },
    { id: 'pin.neutral', name: 'Neutral pin', at: [0, 4] },
  ],
  parts: [
    { id: 'fuse', name: 'Fuse', does: 'Guards', group: 'electrical' },
    { id: 'switch', name: 'Switch', does: 'Switches', group: 'electrical', behind: 'shell' },
    { id: 'motor', name: 'Motor', does: 'Turns', group: 'electrical', behind: 'motor-cover' },
    { id: 'flex', name: 'Flex', does: 'Leads', group: 'electrical' },
    { id: 'capacitor', name: 'Capacitor', does: 'Quiets', group: 'electrical' },
  ],
  controls: [{ id: 'switch', name: 'Switch', positions: ['off', 'on'] }],
  circuit: [
    { kind: 'fuse', id: 'fuse', part: 'fuse', from: 'pin.line', to: 'fuse.out', ratingA: 13 },
    {
      kind: 'contact',
      id: 'switch',
      part: 'switch',
      from: 'fuse.out',
      to: 'switch.out',
      contactOhm: 0.05,
      closedWhen: { control: 'switch', positions: ['on'] },
    },
    { kind: 'motor', id: 'motor', part: 'motor', from: 'switch.out', to: 'motor.b', power: { shareOfPlate: 1 } },
    { kind: 'capacitor', id: 'capacitor', part: 'capacitor', from: 'switch.out', to: 'motor.b', capacitanceF: 1e-7 },
    { kind: 'wire', id: 'neutral', part: 'flex', from: 'pin.neutral', to: 'motor.b', lengthM: 5, areaMm2: 0.75 },
    { kind: 'stray', id: 'bridge', part: 'flex', from: 'pin.line', to: 'pin.neutral' },
  ],
  covers: [
    { id: 'shell', name: 'Shell', openMin: 3, closeMin: 4, fixings: [{ count: 2, kind: 'cross-head' }] },
    { id: 'motor-cover', name: 'Motor cover', openMin: 5, closeMin: 6, after: ['shell'] },
  ],
  faults: [{ id: 'fuse-blown', part: 'fuse', name: 'Fuse blown', how: 'Melts', rate: { perHundred: 4, source } }],
  checks: [
    {
      kind: 'meter',
      id: 'motor-ohms',
      name: 'Motor',
      how: 'Across the motor',
      minutes: 2,
      red: 'switch.out',
      black: 'motor.b',
      controls: { switch: 'on' },
    },
    {
      kind: 'run',
      id: 'run',
      name: 'Run it',
      how: 'Run',
      minutes: 1,
      outcomes: [
        { id: 'runs', name: 'Runs' },
        { id: 'dead', name: 'Dead' },
      ],
      sound: { runs: 1 },
      under: {},
    },
  ],
  repairs: [
    {
      id: 'new-fuse',
      name: 'Fuse',
      part: 'fuse',
      removes: ['fuse-blown'],
      options: [
        { id: 'new', name: 'New fuse', minutes: 2, costMinor: { low: 20, high: 40 }, success: 0.99, breakRisk: 0 },
      ],
    },
  ],
  worth: { workingMinor: { low: 3000, high: 5000 }, sparesMinor: { low: 500, high: 900 }, source },
})
