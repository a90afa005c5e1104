import type { BlueprintInput } from '../../schema.ts'

/** Before anything is run. */
const beforeRunning: BlueprintInput['checks'] = [
  {
    kind: 'look',
    id: 'look-casing',
    name: 'Casing and covers',
    coversOn: true,
    how: 'Plug out. All screws in, all covers on? Try each gap with a 12 mm probe: could it reach live metal?',
    minutes: 2,
    beforeRunning: true,
    outcomes: [
      { id: 'closed', name: 'Closed, nothing live within reach' },
      { id: 'missing', name: 'Cover or screws missing', danger: true },
      { id: 'gap', name: 'Live parts within reach', danger: true },
    ],
    sound: { closed: 0.99, missing: 0.01 },
    under: {
      'casing-open': { gap: 0.7, missing: 0.26, closed: 0.04 },
      'earlier-unsafe-repair': { missing: 0.35, closed: 0.65 },
    },
  },
  {
    kind: 'look',
    id: 'look-wet',
    name: 'Water marks, smell of wet',
    how: 'Plug out, bag door open. Torch into the chamber: tide line, rust, crust? Sniff: drains or wet dog?',
    minutes: 1,
    coversOff: ['bag-door'],
    beforeRunning: true,
    outcomes: [
      { id: 'dry', name: 'No water marks' },
      { id: 'tide', name: 'Tide line, rust or wet', danger: true },
    ],
    sound: { dry: 0.99, tide: 0.01 },
    under: {},
  },
]

const leadAndHandle: BlueprintInput['checks'] = [
  {
    kind: 'look',
    id: 'look-cracks',
    name: 'Cracks in the casing',
    how: 'Plug out. Torch along seams and corners, tap: a crack sounds dull.',
    minutes: 1,
    outcomes: [
      { id: 'whole', name: 'Whole, or scratched' },
      { id: 'cracked', name: 'Cracked' },
    ],
    sound: { whole: 0.97, cracked: 0.03 },
    under: { 'casing-cracked': { cracked: 0.95, whole: 0.05 }, 'casing-open': { cracked: 0.8, whole: 0.2 } },
  },
  {
    kind: 'look',
    id: 'feel-flex-ends',
    name: 'Feel both ends of the flex',
    how: 'Plug out. Bend 30 cm at each end tight between the fingers. A soft, thin spot is broken strands.',
    minutes: 1,
    outcomes: [
      { id: 'even', name: 'Even, springy' },
      { id: 'soft-handle', name: 'Soft at the handle' },
      { id: 'soft-plug', name: 'Soft at the plug' },
    ],
    sound: { even: 0.92, 'soft-handle': 0.05, 'soft-plug': 0.03 },
    under: {
      'flex-plug-line-flickers': { 'soft-plug': 0.65, even: 0.33, 'soft-handle': 0.02 },
      'flex-plug-line-open': { 'soft-plug': 0.75, even: 0.23, 'soft-handle': 0.02 },
      'flex-plug-neutral-flickers': { 'soft-plug': 0.65, even: 0.33, 'soft-handle': 0.02 },
      'flex-plug-neutral-open': { 'soft-plug': 0.75, even: 0.23, 'soft-handle': 0.02 },
      'flex-entry-line-flickers': { 'soft-handle': 0.65, even: 0.34, 'soft-plug': 0.01 },
      'flex-entry-line-open': { 'soft-handle': 0.75, even: 0.24, 'soft-plug': 0.01 },
      'flex-entry-neutral-flickers': { 'soft-handle': 0.65, even: 0.34, 'soft-plug': 0.01 },
      'flex-entry-neutral-open': { 'soft-handle': 0.75, even: 0.24, 'soft-plug': 0.01 },
    },
  },
  {
    kind: 'look',
    id: 'look-switch',
    name: 'Handle switch and its tags',
    how: 'Plug out, handle cover off. Rocker presses the switch? Burn marks, melted housing, loose push-on?',
    minutes: 1.5,
    coversOff: ['handle-cover'],
    outcomes: [
      { id: 'clean', name: 'Clean, presses home' },
      { id: 'linkage', name: 'Rocker does not reach it' },
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
]

const head: BlueprintInput['checks'] = [
  {
    kind: 'look',
    id: 'spin-roll',
    name: 'Spin the brush roll',
    how: 'Plug out. Head up, flick the roll with a finger.',
    minutes: 0.7,
    outcomes: [
      { id: 'turns', name: 'Turns, even drag of the belt' },
      { id: 'free', name: 'Turns too free: no belt on it' },
      { id: 'drags', name: 'Drags or squeals' },
      { id: 'locked', name: 'Locked' },
    ],
    sound: { turns: 0.95, free: 0.02, drags: 0.03 },
    under: {
      'belt-stripped': { free: 0.8, turns: 0.2 },
      'roll-jammed': { drags: 0.55, locked: 0.35, turns: 0.1 },
      'roll-bearing-seized': { drags: 0.55, locked: 0.4, turns: 0.05 },
      'brush-motor-seized': { locked: 0.75, drags: 0.2, turns: 0.05 },
    },
  },
  {
    kind: 'look',
    id: 'bristles-straight-edge',
    name: 'Bristles by straight-edge',
    how: 'Plug out. Straight-edge over the sole plate. Bristles should touch it; look at the plate’s edges.',
    minutes: 1,
    outcomes: [
      { id: 'reach', name: 'Bristles reach, plate good' },
      { id: 'plate', name: 'Sole plate worn or cracked' },
      { id: 'short', name: 'Bristles short' },
    ],
    sound: { reach: 0.94, plate: 0.03, short: 0.03 },
    under: {
      'bristles-worn': { short: 0.93, reach: 0.07 },
      'sole-plate-worn': { plate: 0.9, reach: 0.1 },
    },
  },
  {
    kind: 'look',
    id: 'overload-button',
    name: 'Overload button',
    how: 'Plug out. Press it. Out means tripped: look for the jam before the next run.',
    minutes: 0.3,
    outcomes: [
      { id: 'in', name: 'In' },
      { id: 'out', name: 'Was out, now holds' },
      { id: 'will-not-hold', name: 'Will not stay in' },
    ],
    sound: { in: 0.97, out: 0.03 },
    under: {
      'overload-tripped': { out: 0.93, in: 0.05, 'will-not-hold': 0.02 },
      'overload-faulty': { 'will-not-hold': 0.55, in: 0.35, out: 0.1 },
      'roll-jammed': { in: 0.8, out: 0.2 },
      'brush-motor-seized': { in: 0.75, out: 0.25 },
    },
  },
  {
    kind: 'look',
    id: 'work-park-latch',
    name: 'Lock the handle up, listen for the click',
    how: 'Plug out. Handle up and back five times. It must lock, let go, and the park switch must click.',
    minutes: 0.7,
    outcomes: [
      { id: 'clicks', name: 'Locks and clicks' },
      { id: 'no-click', name: 'Locks, no click' },
      { id: 'no-lock', name: 'Does not lock or let go' },
    ],
    sound: { clicks: 0.94, 'no-click': 0.05, 'no-lock': 0.01 },
    under: {
      'park-switch-open': { 'no-click': 0.6, clicks: 0.4 },
      'park-switch-closed': { 'no-click': 0.7, clicks: 0.3 },
      'park-latch-broken': { 'no-lock': 0.93, clicks: 0.05, 'no-click': 0.02 },
    },
  },
]

export const outsideLookChecks: BlueprintInput['checks'] = [...beforeRunning, ...leadAndHandle, ...head]
