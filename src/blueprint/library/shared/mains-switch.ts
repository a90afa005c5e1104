import type { BlueprintFragment } from '../../fragment.ts'

export interface MainsSwitchOptions {
  /** As “Handle switch”. */
  readonly name: string
  /** What presses it: “Rocker”, “Pedal”, “Slide”. */
  readonly pressedBy: string
  readonly switchCover: string
  /** The point its push-on comes from. */
  readonly from: string
}

const points = (o: MainsSwitchOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'switch.in', name: 'Switch tag, flex side', behind: o.switchCover },
  { id: 'switch.out', name: 'Switch tag, motor side', behind: o.switchCover },
]

const parts = (o: MainsSwitchOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'switch-terminal',
    name: 'Switch push-on terminal',
    does: 'Joins the flex to the switch',
    group: 'electrical',
    behind: o.switchCover,
  },
  {
    id: 'mains-switch',
    name: o.name,
    does: 'Breaks the line',
    group: 'electrical',
    behind: o.switchCover,
    spareShare: { low: 0.03, high: 0.05 },
  },
]

const controls = (o: MainsSwitchOptions): NonNullable<BlueprintFragment['controls']> => [
  { id: 'mains-switch', name: o.name, positions: ['off', 'on'] },
]

const circuit = (o: MainsSwitchOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'resistor',
    id: 'switch-tag',
    part: 'switch-terminal',
    from: o.from,
    to: 'switch.in',
    resistanceOhm: 0.005,
    spread: 0.5,
  },
  {
    kind: 'contact',
    id: 'mains-switch',
    part: 'mains-switch',
    from: 'switch.in',
    to: 'switch.out',
    contactOhm: 0.05,
    closedWhen: { control: 'mains-switch', positions: ['on'] },
  },
]

const faults = (o: MainsSwitchOptions): NonNullable<BlueprintFragment['faults']> => [
  {
    id: 'switch-burnt',
    part: 'mains-switch',
    name: `${o.name}, contacts burnt`,
    how: 'Arcs at each press; contacts pit and carry less and less.',
    rate: { rows: [['P13', 0.48]], component: { id: 'mains-switch', share: 0.45 } },
    electrical: [{ element: 'mains-switch', becomes: { plusOhm: 150, spread: 1.5 } }],
    comesAndGoes: { badShare: 0.6 },
    complaints: { intermittent: 0.65, dead: 0.45, smell: 0.2, sparks: 0.12 },
    danger: 'A burnt switch heats its housing',
    excludes: ['switch-open', 'switch-welded', 'switch-linkage-broken'],
  },
  {
    id: 'switch-open',
    part: 'mains-switch',
    name: `${o.name} never makes`,
    how: 'Spring or contact broken inside.',
    rate: { rows: [['P13', 0.36]], component: { id: 'mains-switch', share: 0.3 } },
    electrical: [{ element: 'mains-switch', becomes: 'open' }],
    complaints: { dead: 0.98, intermittent: 0.15 },
    excludes: ['switch-burnt', 'switch-welded', 'switch-linkage-broken'],
  },
  {
    id: 'switch-welded',
    part: 'mains-switch',
    name: `${o.name} welded on`,
    how: 'Contacts melted together.',
    rate: { rows: [['P13', 0.16]], component: { id: 'mains-switch', share: 0.1 } },
    electrical: [{ element: 'mains-switch', becomes: 'short' }],
    complaints: { 'will-not-switch-off': 0.97 },
    danger: 'Starts the moment the plug goes in and cannot be switched off',
    excludes: ['switch-burnt', 'switch-open', 'switch-linkage-broken'],
  },
  {
    id: 'switch-linkage-broken',
    part: 'mains-switch',
    name: `${o.pressedBy} broken: does not press the switch`,
    how: 'The slide, pin or link behind it snapped; the switch itself is good.',
    rate: { rows: [['P14', 1]], component: { id: 'mains-switch', share: 0.15 } },
    electrical: [{ element: 'mains-switch', becomes: 'open' }],
    complaints: { dead: 0.95, intermittent: 0.1 },
    excludes: ['switch-burnt', 'switch-open', 'switch-welded'],
  },
  {
    id: 'switch-terminal-loose',
    part: 'switch-terminal',
    name: 'Push-on terminal loose at the switch',
    how: 'Slides off with no force; brown insulation beside it.',
    rate: { rows: [['P17', 0.4]], component: { id: 'internal-wire', share: 0.14 } },
    electrical: [{ element: 'switch-tag', becomes: 'open' }],
    comesAndGoes: { badShare: 0.5 },
    complaints: { intermittent: 0.75, dead: 0.5, smell: 0.15, sparks: 0.1 },
  },
]

const checks = (o: MainsSwitchOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'look-switch',
    name: `${o.name} and its tags`,
    how: `Plug out. ${o.pressedBy} presses the switch? Burn marks, melted housing, loose push-on?`,
    minutes: 1.5,
    coversOff: [o.switchCover],
    outcomes: [
      { id: 'clean', name: 'Clean, presses home' },
      { id: 'linkage', name: `${o.pressedBy} does not reach it` },
      { id: 'loose-tag', name: 'Push-on slides off' },
      { id: 'burnt', name: 'Soot or melted', danger: true },
    ],
    sound: { clean: 0.97, 'loose-tag': 0.02, burnt: 0.01 },
    under: {
      'switch-burnt': { burnt: 0.6, clean: 0.4 },
      'switch-open': { clean: 0.85, burnt: 0.15 },
      'switch-welded': { burnt: 0.55, clean: 0.45 },
      'switch-linkage-broken': { linkage: 0.95, clean: 0.05 },
      'switch-terminal-loose': { 'loose-tag': 0.85, clean: 0.15 },
    },
  },
  {
    kind: 'meter',
    id: 'pins-work-switch',
    name: 'Pin to pin, press the switch ten times',
    how: 'Plug out. Probes held on the pins. Switch off and on ten times, then rock it while on.',
    minutes: 1,
    red: 'plug.line',
    black: 'plug.neutral',
    controls: { 'mains-switch': 'on' },
    moving: ['mains-switch', 'switch-terminal'],
  },
  {
    kind: 'meter',
    id: 'switch-closed',
    name: 'Across the switch, on',
    how: 'Plug out. Tag to tag, switch on. Press ten times: over 1 Ω or jumping is burnt.',
    minutes: 1,
    red: 'switch.in',
    black: 'switch.out',
    controls: { 'mains-switch': 'on' },
    moving: ['mains-switch'],
  },
  {
    kind: 'meter',
    id: 'switch-parted',
    name: 'Across the switch, off',
    how: 'Plug out. Tag to tag, switch off. Must be open.',
    minutes: 0.5,
    red: 'switch.in',
    black: 'switch.out',
  },
  {
    kind: 'meter',
    id: 'switch-terminal-through',
    name: 'Feed to switch tag',
    how: 'Plug out. Probe the wire’s end and the tag itself; wiggle the push-on.',
    minutes: 0.7,
    red: o.from,
    black: 'switch.in',
    moving: ['switch-terminal'],
  },
]

const repairs = (o: MainsSwitchOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'switch-swap',
    name: `Change the ${o.name.toLowerCase()}`,
    part: 'mains-switch',
    removes: ['switch-burnt', 'switch-open', 'switch-welded'],
    coversOff: [o.switchCover],
    options: [
      {
        id: 'new',
        name: 'Same rating and poles',
        minutes: 15,
        costMinor: { low: 300, high: 700 },
        success: 0.97,
        breakRisk: 0.01,
      },
      {
        id: 'salvaged',
        name: 'From a donor, tested ten presses',
        minutes: 15,
        costMinor: { low: 50, high: 250 },
        success: 0.92,
        breakRisk: 0.01,
      },
    ],
    note: 'Photograph the tags first.',
    forbidden: 'Bridging the switch: it could not be switched off.',
  },
  {
    id: 'rocker-mend',
    name: `Mend the ${o.pressedBy.toLowerCase()}`,
    part: 'mains-switch',
    removes: ['switch-linkage-broken'],
    coversOff: [o.switchCover],
    options: [
      {
        id: 'refit',
        name: 'Re-pin and brace',
        minutes: 15,
        costMinor: { low: 0, high: 50 },
        success: 0.8,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: `${o.pressedBy} from a donor`,
        minutes: 12,
        costMinor: { low: 50, high: 300 },
        success: 0.95,
        breakRisk: 0.04,
      },
    ],
  },
  {
    id: 'switch-terminal-crimp',
    name: 'New push-on at the switch',
    part: 'switch-terminal',
    removes: ['switch-terminal-loose'],
    coversOff: [o.switchCover],
    options: [
      {
        id: 'new',
        name: 'Cut back, new crimp terminal',
        minutes: 8,
        costMinor: { low: 10, high: 30 },
        success: 0.97,
        breakRisk: 0.01,
      },
    ],
    forbidden: 'Squeezing a browned terminal: it has lost its spring and heats again.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-move-flex': {
    'switch-terminal-loose': { flickers: 0.6, steady: 0.4 },
    'switch-burnt': { flickers: 0.4, steady: 0.6 },
  },
  'run-soak': {
    'switch-burnt': { 'cuts-out': 0.5, smells: 0.3, cool: 0.2 },
    'switch-terminal-loose': { 'cuts-out': 0.5, smells: 0.2, cool: 0.3 },
  },
  'run-full': {
    'switch-terminal-loose': { 'cuts-out': 0.75, works: 0.25 },
    'switch-burnt': { 'cuts-out': 0.8, smells: 0.1, works: 0.1 },
    'switch-welded': { 'runs-on': 0.98, works: 0.02 },
  },
}

/** The switch in the line and its push-on terminal. */
export const mainsSwitch = (o: MainsSwitchOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  controls: controls(o),
  circuit: circuit(o),
  faults: faults(o),
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
