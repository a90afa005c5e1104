import type { BlueprintFragment } from '../../fragment.ts'

export interface BodyWiresOptions {
  readonly motorCover: string
  readonly bodyCover: string
  /** Where the motor’s line wire starts: `body.line`, or the output of a control board. */
  readonly motorFrom: string
  /** Where the motor’s line wire ends: `cutout.in`, or `motor.feed` where there is no cut-out. */
  readonly motorFeed: string
}

const points = (o: BodyWiresOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'body.line', name: 'Line connector in the body', behind: o.bodyCover },
  { id: 'body.neutral', name: 'Neutral connector in the body', behind: o.bodyCover },
  { id: 'casing-metal', name: 'Metal a hand can touch' },
]

const parts = (o: BodyWiresOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'body-wires',
    name: 'Wires in the body',
    does: 'Feed the motor',
    group: 'electrical',
    behind: o.bodyCover,
  },
]

const circuit = (o: BodyWiresOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'wire',
    id: 'motor-line-wire',
    part: 'body-wires',
    from: o.motorFrom,
    to: o.motorFeed,
    lengthM: 0.35,
    areaMm2: 0.75,
  },
  {
    kind: 'wire',
    id: 'motor-neutral-wire',
    part: 'body-wires',
    from: 'body.neutral',
    to: 'motor.b',
    lengthM: 0.35,
    areaMm2: 0.75,
  },
  { kind: 'stray', id: 'pinch-bridge', part: 'body-wires', from: 'body.line', to: 'body.neutral' },
  { kind: 'stray', id: 'pinch-leak', part: 'body-wires', from: o.motorFeed, to: 'casing-metal' },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'pinched-wire-short',
    part: 'body-wires',
    name: 'Wire pinched in the body, line to neutral',
    how: 'Trapped under a boss when someone last closed it.',
    rate: { rows: [['P18', 0.533]], component: { id: 'internal-wire', share: 0.08 } },
    electrical: [{ element: 'pinch-bridge', becomes: { ohm: 0.1, spread: 1 } }],
    complaints: { 'trips-supply': 0.9, dead: 0.45, smell: 0.2, sparks: 0.2 },
    danger: 'A short inside the body',
  },
  {
    id: 'pinched-wire-metal',
    part: 'body-wires',
    name: 'Wire chafed through onto metal',
    how: 'Rubbed on a screw or bracket until bare.',
    rate: { rows: [['P18', 0.467]], component: { id: 'internal-wire', share: 0.05 } },
    electrical: [{ element: 'pinch-leak', becomes: { ohm: 20, spread: 2 } }],
    complaints: { 'trips-supply': 0.2, sparks: 0.05 },
    danger: 'Metal that a hand can touch may be live',
  },
  {
    id: 'earlier-unsafe-repair',
    part: 'body-wires',
    name: 'Earlier unsafe repair inside',
    how: 'A guard bridged, a taped or twisted joint, parts left out, wrong screws.',
    rate: {
      rows: [
        ['Z02', 0.5],
        ['Z03', 0.667],
      ],
      component: { id: 'internal-wire', share: 0.03 },
    },
    complaints: { smell: 0.06, intermittent: 0.06 },
    danger: 'Its guards have been taken away: undo it first',
  },
]

const checks = (o: BodyWiresOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-body-wires',
    name: 'Wires and joints in the body',
    how: 'Plug out, covers off. Flat marks under bosses, bare spots, taped joints, a guard bridged, loose push-ons?',
    minutes: 2.5,
    coversOff: [o.motorCover],
    outcomes: [
      { id: 'tidy', name: 'Tidy' },
      { id: 'loose', name: 'Push-on loose or browned' },
      { id: 'pinched', name: 'Wire pinched or chafed', danger: true },
      { id: 'tampered', name: 'Bridged, taped or parts left out', danger: true },
    ],
    sound: { tidy: 0.96, loose: 0.035, pinched: 0.005 },
    under: {
      'pinched-wire-short': { pinched: 0.9, tidy: 0.1 },
      'pinched-wire-metal': { pinched: 0.85, tidy: 0.15 },
      'earlier-unsafe-repair': { tampered: 0.8, pinched: 0.05, tidy: 0.15 },
    },
  },
  {
    kind: 'meter',
    id: 'line-pin-to-body',
    name: 'Line pin to the body',
    how: 'Plug out. Switch on. Line pin to the line connector in the body: plug, flex, switch and loom in one.',
    minutes: 1,
    red: 'plug.line',
    black: 'body.line',
    controls: { 'mains-switch': 'on' },
  },
  {
    kind: 'meter',
    id: 'neutral-pin-to-body',
    name: 'Neutral pin to the body',
    how: 'Plug out. Neutral pin to the neutral connector in the body: flex and loom in one.',
    minutes: 1,
    red: 'plug.neutral',
    black: 'body.neutral',
  },
  {
    kind: 'meter',
    id: 'body-line-to-neutral',
    name: 'Across the connectors in the body',
    how: 'Plug out. Switch off. Line to neutral connector: all that lies behind in one.',
    minutes: 1,
    red: 'body.line',
    black: 'body.neutral',
  },
]

const repairs = (o: BodyWiresOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'body-wire-new',
    name: 'Replace the pinched wire',
    part: 'body-wires',
    removes: ['pinched-wire-short', 'pinched-wire-metal'],
    coversOff: [o.motorCover],
    options: [
      {
        id: 'new',
        name: 'New wire, same size, old clips',
        minutes: 15,
        costMinor: { low: 30, high: 80 },
        success: 0.96,
        breakRisk: 0.04,
      },
    ],
    note: 'Look at every boss the wire passes.',
    forbidden: 'Tape over a chafed wire.',
  },
  {
    id: 'undo-earlier-repair',
    name: 'Undo the earlier repair',
    part: 'body-wires',
    removes: ['earlier-unsafe-repair'],
    coversOff: [o.motorCover],
    options: [
      {
        id: 'new',
        name: 'Put it back as it was built',
        minutes: 25,
        costMinor: { low: 100, high: 1500 },
        success: 0.9,
        breakRisk: 0.04,
      },
    ],
    note: 'Then look for the fault it was hiding.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'look-casing': { 'earlier-unsafe-repair': { missing: 0.35, closed: 0.65 } },
}

/** Wires inside the body, from where the mains comes in to the motor. */
export const bodyWires = (o: BodyWiresOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  circuit: circuit(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
