import type { BlueprintFragment } from '../../fragment.ts'

export interface MotorOverloadOptions {
  readonly from: string
  readonly to: string
  readonly cover: string
}

/** A circuit breaker with a button in the motor's line: it trips when the roll jams or the motor drags. */
export const motorOverload = (o: MotorOverloadOptions): BlueprintFragment => ({
  parts: [
    {
      id: 'motor-overload',
      name: 'Overload with reset button',
      does: 'Cuts the motor when roll or motor drags; the button resets it',
      group: 'electrical',
      behind: o.cover,
    },
  ],
  points: [
    { id: o.from, name: 'Overload, supply side', behind: o.cover },
    { id: o.to, name: 'Overload, motor side', behind: o.cover },
  ],
  circuit: [
    {
      kind: 'resistor',
      id: 'motor-overload',
      part: 'motor-overload',
      from: o.from,
      to: o.to,
      resistanceOhm: 0.08,
      spread: 0.4,
    },
  ],
  faults: [
    {
      id: 'motor-overload-tripped',
      part: 'motor-overload',
      name: 'Overload tripped',
      how: 'Its button stands out. Find what dragged: roll, belt, bearing.',
      rate: { rows: [['P16', 0.5]], component: { id: 'thermal-cut-out', share: 0.3 } },
      electrical: [{ element: 'motor-overload', becomes: 'open' }],
      complaints: { dead: 0.9, 'cuts-out': 0.4 },
      excludes: ['motor-overload-faulty'],
    },
    {
      id: 'motor-overload-faulty',
      part: 'motor-overload',
      name: 'Overload worn: will not reset',
      how: 'Button will not stay in, or the contact inside is burnt.',
      rate: { rows: [['P16', 0.25]], component: { id: 'thermal-cut-out', share: 0.2 } },
      electrical: [{ element: 'motor-overload', becomes: 'open' }],
      complaints: { dead: 0.9, 'cuts-out': 0.3 },
      excludes: ['motor-overload-tripped'],
    },
  ],
  checks: [
    {
      kind: 'look',
      id: 'overload-button',
      name: 'Overload button',
      how: 'Plug out. Press it. Out means tripped: look for the drag before the next run.',
      minutes: 0.3,
      outcomes: [
        { id: 'in', name: 'In' },
        { id: 'out', name: 'Was out, now holds' },
        { id: 'will-not-hold', name: 'Will not stay in' },
      ],
      sound: { in: 0.97, out: 0.03 },
      under: {
        'motor-overload-tripped': { out: 0.94, in: 0.04, 'will-not-hold': 0.02 },
        'motor-overload-faulty': { 'will-not-hold': 0.6, in: 0.3, out: 0.1 },
      },
    },
    {
      kind: 'meter',
      id: 'motor-overload-through',
      name: 'Through the overload',
      how: 'Plug out. Button in. Tag to tag: near nothing.',
      minutes: 0.7,
      red: o.from,
      black: o.to,
    },
  ],
  repairs: [
    {
      id: 'motor-overload-reset',
      name: 'Clear the cause, reset the overload',
      part: 'motor-overload',
      removes: ['motor-overload-tripped'],
      options: [
        {
          id: 'adjust',
          name: 'Drag found, ten minutes cold, button in',
          minutes: 3,
          costMinor: { low: 0, high: 0 },
          success: 0.95,
          breakRisk: 0,
        },
      ],
    },
    {
      id: 'motor-overload-new',
      name: 'New overload',
      part: 'motor-overload',
      removes: ['motor-overload-faulty', 'motor-overload-tripped'],
      coversOff: [o.cover],
      options: [
        {
          id: 'new',
          name: 'Same trip current',
          minutes: 15,
          costMinor: { low: 300, high: 1200 },
          success: 0.96,
          breakRisk: 0.01,
        },
        {
          id: 'salvaged',
          name: 'From a donor, same trip current',
          minutes: 15,
          costMinor: { low: 100, high: 400 },
          success: 0.9,
          breakRisk: 0.01,
        },
      ],
      forbidden: 'Bridging it: the next jam burns the motor.',
    },
  ],
  addsTo: {
    'overload-button': {
      'roll-jammed': { in: 0.75, out: 0.25 },
      'clutch-seized': { in: 0.6, out: 0.4 },
      'motor-seized': { in: 0.5, out: 0.5 },
    },
  },
})
