import type { PartKind } from '../facts/part-kinds.ts'

/** What a blueprint's part is on the shelf, by its id. */
const kinds: Readonly<Record<string, PartKind>> = {
  flex: 'flex',
  plug: 'plug',
  'plug-fuse': 'fuse',
  'mains-switch': 'switch',
  switch: 'switch',
  'suction-motor': 'motor',
  'brush-motor': 'motor',
  motor: 'motor',
  'carbon-brushes': 'brushes',
  board: 'board',
  'speed-board': 'board',
  belt: 'belt',
  'brush-roll': 'brush-roll',
  hose: 'hose',
  'lower-hose': 'hose',
  'pre-motor-filter': 'filter',
  'exhaust-filter': 'filter',
  bag: 'bag',
  'cord-reel': 'reel',
  'floor-head': 'head',
  turbine: 'head',
  wand: 'tool',
  casing: 'casing',
  'sole-plate': 'casing',
  'bag-door-latch': 'casing',
  bin: 'casing',
  wheels: 'casing',
}

/** The kind of part that a part of a blueprint is; `other` where no kind fits. */
export const partKindOf = (part: string): PartKind => kinds[part] ?? 'other'
