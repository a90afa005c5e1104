import type { BlueprintBase, BlueprintFragment } from '../../fragment.ts'
import { along } from '../layout.ts'

type Covers = NonNullable<BlueprintFragment['covers']>

/** What lies over bag and filters in a bagged cylinder. */
export const lidCovers: Covers = [
  { id: 'bag-door', name: 'Lid', openMin: 0.2, closeMin: 0.3, hint: 'Bag out first, outdoors.' },
  { id: 'filter-cover', name: 'Pre-motor filter frame', openMin: 0.3, closeMin: 0.3, after: ['bag-door'] },
  { id: 'exhaust-cover', name: 'Exhaust filter grille', openMin: 0.4, closeMin: 0.4 },
]

export interface ShellOptions {
  /** Covers that come off before the top shell. */
  readonly after: string[]
  readonly screws: number
}

/** The shell of a cylinder with reel and motor under it. Minutes from the access column of the trade catalogue (judgement). */
export const shellCovers = ({ after, screws }: ShellOptions): Covers => [
  {
    id: 'top-shell',
    name: 'Top shell',
    openMin: 6,
    closeMin: 7,
    after,
    fixings: [{ count: screws, kind: 'TX15 plastic 4 × 16' }],
    hint: 'Screws hide under the bumper strip, the filter frame or the label.',
  },
  {
    id: 'reel-cover',
    name: 'Reel lifted out',
    openMin: 7,
    closeMin: 10,
    after: ['top-shell'],
    fixings: [{ count: 3, kind: 'TX15 plastic 4 × 12' }],
    hint: 'Tape the drum, count its turns: the spring bites.',
  },
  {
    id: 'motor-cover',
    name: 'Motor cover',
    openMin: 4,
    closeMin: 5,
    after: ['top-shell'],
    fixings: [{ count: 3, kind: 'TX15 plastic 4 × 12' }],
    hint: 'Mark which way the seal sits.',
  },
  {
    id: 'motor-end',
    name: 'Motor lifted out, end cap off',
    openMin: 6,
    closeMin: 8,
    after: ['motor-cover'],
    fixings: [{ count: 2, kind: 'motor end screw' }],
    hint: 'Photograph the leads.',
  },
]

/** Line along the top from the plug by way of reel, switch and control board, neutral along the bottom, motor at `motorX`. */
export const cylinderPlaces = (motorX: number): BlueprintBase['places'] => ({
  ...along(1, [
    'plug.line',
    'plug.fuse-out',
    'plug.line-core',
    'flex.line',
    'reel.line',
    'switch.in',
    'switch.out',
    'body.line',
    'speed.in',
    'speed.out',
    'cutout.in',
    'cutout.out',
    'motor.a',
  ]),
  ...along(13, ['plug.neutral', 'plug.neutral-core'], 0, 4),
  'flex.neutral': [6, 13],
  'reel.neutral': [8, 13],
  'body.neutral': [14, 13],
  'motor.brush': [motorX, 5],
  'motor.b': [motorX, 13],
  'casing-metal': [motorX + 2, 9],
})
