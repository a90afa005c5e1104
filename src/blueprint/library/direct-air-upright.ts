import { compose } from '../compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysAtFan } from './air-ways.ts'
import { flexToBody } from './layout.ts'
import { flatBlades, fusedPlug, type Mains } from './mains.ts'
import { bodyWires } from './shared/body-wires.ts'
import { brushRoll } from './shared/brush-roll.ts'
import { casing } from './shared/casing.ts'
import { directAir } from './shared/direct-air.ts'
import { flatBelt } from './shared/flat-belt.ts'
import { flexEntry } from './shared/flex-entry.ts'
import { handleRelease } from './shared/handle-release.ts'
import { headlamp } from './shared/headlamp.ts'
import { heightLever } from './shared/height-lever.ts'
import { lead } from './shared/lead.ts'
import { loom } from './shared/loom.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { runs } from './shared/runs.ts'
import { suctionMotor } from './shared/suction-motor.ts'
import { wheels } from './shared/wheels.ts'
import { wattsChecks } from './shared/watts-checks.ts'

/** Minutes from the access column of the trade catalogue (judgement). */
const covers: NonNullable<BlueprintFragment['covers']> = [
  {
    id: 'handle-cover',
    name: 'Handle cover',
    openMin: 4,
    closeMin: 4,
    fixings: [{ count: 2, kind: 'machine screw M4 × 16' }],
  },
  { id: 'bag-door', name: 'Outer bag open', openMin: 0.5, closeMin: 0.5, hint: 'Outdoors.' },
  { id: 'sole-plate', name: 'Sole plate', openMin: 1.5, closeMin: 1.5, fixings: [{ count: 2, kind: 'turn catch' }] },
  { id: 'hood', name: 'Motor hood', openMin: 3, closeMin: 3, fixings: [{ count: 2, kind: 'machine screw M4 × 12' }] },
  {
    id: 'fan-cover',
    name: 'Fan plate',
    openMin: 6,
    closeMin: 6,
    after: ['sole-plate'],
    fixings: [{ count: 4, kind: 'machine screw M5 × 16' }],
    hint: 'Belt off first. Mind the gasket.',
  },
  {
    id: 'motor-end',
    name: 'Motor out, end cap off',
    openMin: 10,
    closeMin: 12,
    after: ['hood', 'fan-cover'],
    fixings: [{ count: 2, kind: 'long motor screw' }],
    hint: 'The fan comes off first; its nut is often left-handed.',
  },
]

const places: BlueprintBase['places'] = {
  ...flexToBody,
  'lamp.line': [17, 5],
  'motor.feed': [18, 1],
  'motor.a': [21, 1],
  'motor.brush': [21, 5],
  'motor.b': [21, 13],
  'casing-metal': [23, 9],
}

/** Upright whose dirt goes through the fan into a cloth-covered bag. */
const make = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `direct-air-upright${mains.suffix}`,
      name: 'Direct-air upright',
      summary:
        'Upright with a cloth bag outside. The dirt goes through a large fan and is blown up into the bag; the same motor turns the brush by a flat belt.',
      recognise: [
        'Stands upright, cloth or zipped bag hangs on the handle',
        'No filter anywhere; air leaves through the bag',
        'A large fan behind the plate under the motor',
        'Flat belt straight from the motor',
      ],
      signs: {
        stands: ['upright'],
        dust: ['cloth-bag'],
        cord: ['hooks'],
        brush: ['belt'],
        switch: ['handle', 'foot'],
        reset: ['no'],
      },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 700,
        protectionClass: 'II',
        massKg: 6.5,
      },
      supply: { line: 'plug.line', neutral: 'plug.neutral' },
      family: 'upright-one-motor',
      places,
      wording: mains.wording,
      airPath: ['sole-plate', 'dirt-fan', 'fill-tube', 'bag', 'cloth-bag'],
      airWays: waysAtFan,
      worth: {
        priceClass: 'belted-bagged-upright',
        priceKind: 'direct-air-upright',
        workingMinor: { low: 3000, high: 8000 },
        sparesMinor: { low: 300, high: 1500 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'mid bagged upright, belt from motor; collectable old upright',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the handle',
      entryCover: 'handle-cover',
      lengthM: 8,
      areaMm2: 0.75,
      fuseA: mains.fuseA,
      earthed: false,
    }),
    flexEntry({ entry: 'the handle', entryCover: 'handle-cover', wear: 'Bends at the cord grip with every stroke' }),
    mainsSwitch({ name: 'Handle switch', pressedBy: 'Rocker', switchCover: 'handle-cover', from: 'flex.line' }),
    loom({ fromCover: 'handle-cover', toCover: 'hood' }),
    bodyWires({ bodyCover: 'hood', motorCover: 'hood', motorFrom: 'body.line', motorFeed: 'motor.feed' }),
    suctionMotor({
      feed: 'motor.feed',
      shareOfPlate: 1,
      makesSuction: false,
      motorCover: 'hood',
      motorEnd: 'motor-end',
      fanCover: 'fan-cover',
    }),
    headlamp({ line: 'body.line', neutral: 'body.neutral', coldOhm: mains.voltageV > 200 ? 260 : 70, cover: 'hood' }),
    directAir,
    brushRoll({ drive: 'belt', rollCover: 'sole-plate' }),
    flatBelt({ cover: 'sole-plate', lifter: false }),
    heightLever,
    handleRelease({ cover: 'hood' }),
    wheels,
    casing({ cover: 'hood', lookIn: 'sole-plate' }),
    wattsChecks({ hose: false }),
    runs({
      hose: false,
      atRest: 'handle up',
      working: 'handle down',
      full: 'carpet and hard floor, each height, handle up and down',
    }),
  )

export const directAirUpright: readonly BlueprintInput[] = [make(fusedPlug), make(flatBlades)]
