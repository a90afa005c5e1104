import type { BlueprintFragment } from '../../fragment.ts'
import { brushBoardFaults } from './brush-board-faults.ts'
import { brushBoardChecks } from './brush-board-checks.ts'
import type { BrushBoardOptions } from './brush-board-options.ts'

const points = (o: BrushBoardOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'board.line', name: 'Line tag on the board', behind: o.boardCover },
  { id: 'board.neutral', name: 'Neutral tag on the board', behind: o.boardCover },
  { id: 'board.drive-out', name: 'Brush drive tag on the board', behind: o.boardCover },
  { id: 'park.out', name: 'Park switch, overload side', behind: o.neckCover },
]

const parts = (o: BrushBoardOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'board',
    name: 'Control board',
    does: 'Drives brush motor and head height',
    group: 'control',
    behind: o.boardCover,
    spareShare: { low: 0.12, high: 0.25 },
  },
  {
    id: 'park-switch',
    name: 'Park switch',
    does: 'Stops the brush when upright',
    group: 'control',
    behind: o.neckCover,
  },
  { id: 'drag-sensor', name: 'Drag sensor', does: 'Sees that the roll turns', group: 'control', behind: o.headCover },
]

const controls: NonNullable<BlueprintFragment['controls']> = [
  { id: 'handle-position', name: 'Handle', positions: ['upright', 'reclined'] },
]

const circuit: NonNullable<BlueprintFragment['circuit']> = [
  {
    kind: 'wire',
    id: 'board-line-wire',
    part: 'body-wires',
    from: 'body.line',
    to: 'board.line',
    lengthM: 0.2,
    areaMm2: 0.5,
  },
  {
    kind: 'wire',
    id: 'board-neutral-wire',
    part: 'body-wires',
    from: 'body.neutral',
    to: 'board.neutral',
    lengthM: 0.2,
    areaMm2: 0.5,
  },
  {
    kind: 'resistor',
    id: 'board-supply',
    part: 'board',
    from: 'board.line',
    to: 'board.neutral',
    resistanceOhm: 470000,
    spread: 0.25,
  },
  { kind: 'triac', id: 'triac', part: 'board', from: 'board.line', to: 'board.drive-out', onOhm: 0.3, offOhm: null },
  {
    kind: 'contact',
    id: 'park-switch',
    part: 'park-switch',
    from: 'board.drive-out',
    to: 'park.out',
    contactOhm: 0.05,
    closedWhen: { control: 'handle-position', positions: ['reclined'] },
  },
]

const repairs = (o: BrushBoardOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'board-swap',
    name: 'Change the control board',
    part: 'board',
    removes: ['board-dead', 'triac-open', 'triac-shorted'],
    coversOff: [o.boardCover],
    options: [
      {
        id: 'salvaged',
        name: 'Used board, same code',
        minutes: 25,
        costMinor: { low: 1000, high: 2750 },
        success: 0.9,
        breakRisk: 0.04,
      },
      {
        id: 'new',
        name: 'New board, same code',
        minutes: 25,
        costMinor: { low: 2000, high: 4500 },
        success: 0.96,
        breakRisk: 0.04,
      },
    ],
    note: 'A wrong revision fits and misbehaves. Check neck and brush motor first: they kill boards.',
  },
  {
    id: 'triac-new',
    name: 'New triac on the board',
    part: 'board',
    removes: ['triac-open', 'triac-shorted'],
    coversOff: [o.boardCover],
    options: [
      {
        id: 'new',
        name: 'Same type, same heat sink pad',
        minutes: 30,
        costMinor: { low: 100, high: 300 },
        success: 0.8,
        breakRisk: 0.04,
      },
    ],
    note: 'Check neck and brush motor first.',
  },
  {
    id: 'park-switch-mend',
    name: 'Mend the park switch',
    part: 'park-switch',
    removes: ['park-switch-open', 'park-switch-closed'],
    coversOff: [o.neckCover],
    options: [
      {
        id: 'new',
        name: 'New micro-switch',
        minutes: 20,
        costMinor: { low: 200, high: 400 },
        success: 0.95,
        breakRisk: 0.04,
      },
      {
        id: 'adjust',
        name: 'Bend the lever back',
        minutes: 12,
        costMinor: { low: 0, high: 0 },
        success: 0.5,
        breakRisk: 0.04,
      },
    ],
    forbidden: 'Bridging it: the brush would run with the handle up.',
  },
  {
    id: 'drag-sensor-mend',
    name: 'Mend the drag sensor',
    part: 'drag-sensor',
    removes: ['drag-sensor-dead'],
    coversOff: [o.headCover],
    options: [
      {
        id: 'clean',
        name: 'Clean, magnet back, right pole out',
        minutes: 20,
        costMinor: { low: 0, high: 50 },
        success: 0.7,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Sensor from a donor',
        minutes: 25,
        costMinor: { low: 200, high: 1200 },
        success: 0.9,
        breakRisk: 0.04,
      },
    ],
    forbidden: 'Fooling the sensor: a jam would burn the brush motor.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'work-park-latch': {
    'park-switch-open': { 'no-click': 0.6, clicks: 0.4 },
    'park-switch-closed': { 'no-click': 0.7, clicks: 0.3 },
  },
  'run-brush': {
    'drag-sensor-dead': { stops: 0.93, turns: 0.07 },
  },
  'run-swing-neck': { 'drag-sensor-dead': { still: 0.85, drops: 0.08, steady: 0.07 } },
  'run-jam': {
    'triac-shorted': { 'drives-on': 0.93, protects: 0.07 },
    'drag-sensor-dead': { 'no-drive': 0.9, protects: 0.07, 'drives-on': 0.03 },
  },
  'run-height': { 'board-dead': { stays: 0.97, settles: 0.03 } },
  'run-lamps': {
    'board-dead': { 'all-dark': 0.92, warning: 0.03, right: 0.05 },
    'drag-sensor-dead': { warning: 0.6, right: 0.4 },
  },
  'air-blockage-lamp': { 'board-dead': { 'stays-dark': 0.9, right: 0.1 } },
  'run-full': {
    'board-dead': { 'brush-still': 0.97, works: 0.03 },
    'triac-open': { 'brush-still': 0.97, works: 0.03 },
    'triac-shorted': { lamp: 0.2, park: 0.1, works: 0.7 },
    'park-switch-open': { 'brush-still': 0.97, works: 0.03 },
    'park-switch-closed': { park: 0.96, works: 0.04 },
    'drag-sensor-dead': { 'brush-stops': 0.95, works: 0.05 },
  },
}

/** The board that drives the brush motor, with park switch and drag sensing. */
export const brushBoard = (o: BrushBoardOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  controls,
  circuit,
  faults: brushBoardFaults,
  checks: brushBoardChecks(o),
  repairs: repairs(o),
  addsTo,
})
