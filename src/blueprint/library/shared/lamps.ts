import type { BlueprintFragment } from '../../fragment.ts'

export interface LampsOptions {
  readonly pressureCover: string
  readonly lampCover: string
}

const parts = (o: LampsOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'blockage-lamp',
    name: 'Blockage lamp',
    does: 'Pressure switch and lamp: bag full or blocked',
    group: 'control',
    behind: o.pressureCover,
  },
  { id: 'power-lamp', name: 'Power lamp', does: 'Shows that it is on', group: 'control', behind: o.lampCover },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'blockage-lamp-wrong',
    part: 'blockage-lamp',
    name: 'Blockage lamp wrong',
    how: 'Pressure switch stuck, its tube off or full of dust.',
    rate: { rows: [['I01', 1]] },
    complaints: { 'lamp-wrong': 0.85 },
    saleShareIfLeft: 0.9,
  },
  {
    id: 'power-lamp-dead',
    part: 'power-lamp',
    name: 'Power lamp dead',
    how: 'Lamp burnt out or its plug off.',
    rate: { rows: [['I02', 1]] },
    complaints: { 'lamp-wrong': 0.5 },
    saleShareIfLeft: 0.95,
  },
]

const checks = (o: LampsOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-blockage-switch',
    name: 'Pressure switch and its tube',
    how: 'Plug out. Tube on and clear? Suck gently: the switch must click.',
    minutes: 1,
    coversOff: [o.pressureCover],
    outcomes: [
      { id: 'clicks', name: 'Tube on, clicks' },
      { id: 'off', name: 'Tube off, blocked, or no click' },
    ],
    sound: { clicks: 0.97, off: 0.03 },
    under: { 'blockage-lamp-wrong': { off: 0.85, clicks: 0.15 } },
  },
  {
    kind: 'air',
    id: 'air-blockage-lamp',
    name: 'Blockage lamp: block and clear',
    how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Palm over the hose end: lamp on. Let go: lamp off. Plug out before touching.',
    minutes: 1,
    outcomes: [
      { id: 'right', name: 'On when blocked, off when clear' },
      { id: 'stays-lit', name: 'Lit all the time' },
      { id: 'stays-dark', name: 'Never lights' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { right: 0.97, 'stays-lit': 0.015, 'stays-dark': 0.015 },
    under: { 'blockage-lamp-wrong': { 'stays-dark': 0.55, 'stays-lit': 0.42, right: 0.03 } },
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
  {
    kind: 'run',
    id: 'run-lamps',
    name: 'Lamps at start and in use',
    how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. All lamps light at start; only power stays lit. Plug out before touching.',
    minutes: 1,
    outcomes: [
      { id: 'right', name: 'All light, then only power' },
      { id: 'power-dark', name: 'Power lamp dark' },
      { id: 'warning', name: 'A warning lamp stays lit' },
      { id: 'all-dark', name: 'All dark, motor runs' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { right: 0.97, warning: 0.02, 'power-dark': 0.01 },
    under: {
      'power-lamp-dead': { 'power-dark': 0.97, right: 0.03 },
      'blockage-lamp-wrong': { warning: 0.45, right: 0.55 },
    },
    controls: { 'mains-switch': 'on', 'handle-position': 'reclined' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

const repairs = (o: LampsOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'blockage-lamp-mend',
    name: 'Mend the blockage lamp',
    part: 'blockage-lamp',
    removes: ['blockage-lamp-wrong'],
    coversOff: [o.pressureCover],
    options: [
      {
        id: 'clean',
        name: 'Tube cleared and on',
        minutes: 12,
        costMinor: { low: 0, high: 0 },
        success: 0.75,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'Pressure switch from a donor',
        minutes: 15,
        costMinor: { low: 100, high: 400 },
        success: 0.95,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'power-lamp-new',
    name: 'New power lamp',
    part: 'power-lamp',
    removes: ['power-lamp-dead'],
    coversOff: [o.lampCover],
    options: [
      { id: 'new', name: 'Same lamp', minutes: 12, costMinor: { low: 50, high: 500 }, success: 0.96, breakRisk: 0.01 },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-full': { 'blockage-lamp-wrong': { lamp: 0.85, works: 0.15 }, 'power-lamp-dead': { lamp: 0.97, works: 0.03 } },
}

/** Power lamp and blockage lamp with its pressure switch. */
export const lamps = (o: LampsOptions): BlueprintFragment => ({
  parts: parts(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
