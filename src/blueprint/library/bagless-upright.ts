import { compose } from '../compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysOfUpright } from './air-ways.ts'
import { along } from './layout.ts'
import { flatBlades, fusedPlug, type Mains } from './mains.ts'
import { binAndCyclone } from './shared/bin-and-cyclone.ts'
import { bodyWires } from './shared/body-wires.ts'
import { brushRoll } from './shared/brush-roll.ts'
import { casing } from './shared/casing.ts'
import { changeover } from './shared/changeover.ts'
import { cutOut } from './shared/cut-out.ts'
import { feedWires } from './shared/feed-wires.ts'
import { filters } from './shared/filters.ts'
import { flatBelt } from './shared/flat-belt.ts'
import { flexEntry } from './shared/flex-entry.ts'
import { handleRelease } from './shared/handle-release.ts'
import { hose } from './shared/hose.ts'
import { lead } from './shared/lead.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { reliefValve } from './shared/relief-valve.ts'
import { runs } from './shared/runs.ts'
import { suctionAtHead } from './shared/suction-at-head.ts'
import { suctionByHand } from './shared/suction-by-hand.ts'
import { suctionMotor } from './shared/suction-motor.ts'
import { suppressionCapacitor } from './shared/suppression-capacitor.ts'
import { uprightDucts } from './shared/upright-ducts.ts'
import { wheels } from './shared/wheels.ts'
import { wattsChecks } from './shared/watts-checks.ts'

/** Minutes from the access column of the trade catalogue (judgement). */
const covers: NonNullable<BlueprintFragment['covers']> = [
  {
    id: 'cyclone-cover',
    name: 'Separator off the bin',
    openMin: 1,
    closeMin: 1,
    hint: 'Catch at the top; over newspaper, outdoors.',
  },
  { id: 'filter-cover', name: 'Filter cover', openMin: 0.4, closeMin: 0.4 },
  { id: 'exhaust-cover', name: 'Exhaust filter cover', openMin: 0.5, closeMin: 0.5 },
  {
    id: 'back-cover',
    name: 'Back cover',
    openMin: 6,
    closeMin: 7,
    fixings: [{ count: 6, kind: 'TX15 plastic 4 × 16' }],
    hint: 'Two screws sit behind the hose.',
  },
  {
    id: 'sole-plate',
    name: 'Sole plate',
    openMin: 2,
    closeMin: 2,
    fixings: [{ count: 3, kind: 'quarter-turn catch or coin slot' }],
  },
  {
    id: 'motor-cover',
    name: 'Motor cover',
    openMin: 7,
    closeMin: 8,
    after: ['back-cover', 'sole-plate'],
    fixings: [{ count: 5, kind: 'TX15 plastic 4 × 20' }],
    hint: 'The belt comes off the spindle first.',
  },
  {
    id: 'motor-end',
    name: 'Motor lifted out, end cap off',
    openMin: 8,
    closeMin: 10,
    after: ['motor-cover'],
    fixings: [{ count: 2, kind: 'motor end screw' }],
    hint: 'Photograph the leads. Mark which way the seal sits.',
  },
]

const places: BlueprintBase['places'] = {
  ...along(
    1,
    ['plug.line', 'plug.fuse-out', 'plug.line-core', 'flex.line', 'switch.in', 'switch.out', 'body.line'],
    0,
    2.4,
  ),
  ...along(13, ['plug.neutral', 'plug.neutral-core'], 0, 4.8),
  'flex.neutral': [7.2, 13],
  'body.neutral': [14.4, 13],
  'cutout.in': [17, 1],
  'cutout.out': [19.5, 1],
  'motor.a': [22, 1],
  'motor.brush': [22, 5],
  'motor.b': [22, 13],
  'casing-metal': [24, 9],
}

/** Bagless upright with a cyclone, a changeover valve and a flat belt from the motor. */
const make = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `bagless-upright${mains.suffix}`,
      name: 'Bagless upright with cyclone',
      summary:
        'Mains upright with a clear bin. A cyclone spins the dust out; a valve turns the suction from head to hose; a flat belt from the motor turns the brush.',
      recognise: [
        'Stands upright, clear bin in front',
        'Hose at the back that can be pulled out for tools',
        'Brush stops or lifts when the handle is locked up',
        'Washable filter over or under the bin',
      ],
      signs: {
        stands: ['upright'],
        dust: ['bin'],
        cord: ['hooks'],
        brush: ['belt'],
        switch: ['handle', 'foot'],
        reset: ['no'],
      },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 1400,
        protectionClass: 'II',
        massKg: 7.5,
      },
      supply: { line: 'plug.line', neutral: 'plug.neutral' },
      family: 'upright-one-motor',
      places,
      wording: mains.wording,
      airPath: [
        'sole-plate',
        'lower-hose',
        'duct',
        'changeover-flap',
        'hose',
        'bin',
        'cyclone',
        'pre-motor-filter',
        'motor-seal',
        'motor-fan',
        'exhaust-filter',
      ],
      airWays: waysOfUpright('bin'),
      worth: {
        priceClass: 'multi-cyclone-upright',
        priceKind: 'bagless-upright',
        workingMinor: { low: 3000, high: 8000 },
        sparesMinor: { low: 200, high: 1500 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'between budget bagless upright and bagless multi-cyclone upright',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the back of the body',
      entryCover: 'back-cover',
      lengthM: 7.5,
      areaMm2: 0.75,
      fuseA: mains.fuseA,
      earthed: false,
    }),
    flexEntry({ entry: 'the back of the body', entryCover: 'back-cover', wear: 'Pulled and bent at the cord grip' }),
    mainsSwitch({ name: 'Foot switch', pressedBy: 'Pedal', switchCover: 'back-cover', from: 'flex.line' }),
    feedWires({ lineFrom: 'switch.out', neutralFrom: 'flex.neutral' }),
    bodyWires({ bodyCover: 'back-cover', motorCover: 'motor-cover', motorFrom: 'body.line', motorFeed: 'cutout.in' }),
    suppressionCapacitor({
      from: 'flex.line',
      to: 'flex.neutral',
      capacitanceF: 0.22e-6,
      unplug: ['switch-tag', 'feed-neutral'],
      cover: 'back-cover',
    }),
    cutOut({ cover: 'motor-cover' }),
    suctionMotor({
      feed: 'cutout.out',
      shareOfPlate: 1,
      makesSuction: true,
      motorCover: 'motor-cover',
      motorEnd: 'motor-end',
      fanCover: 'filter-cover',
    }),
    uprightDucts({ ductCover: 'back-cover', neckCover: 'back-cover' }),
    changeover({ cover: 'back-cover' }),
    reliefValve({ cover: 'cyclone-cover' }),
    hose,
    binAndCyclone,
    filters,
    brushRoll({ drive: 'belt', rollCover: 'sole-plate' }),
    flatBelt({ cover: 'sole-plate', lifter: true }),
    handleRelease({ cover: 'back-cover' }),
    wheels,
    casing({ cover: 'back-cover', lookIn: 'filter-cover' }),
    suctionByHand({ at: 'hose end' }),
    suctionAtHead({ set: 'Hose stowed, handle up, belt lifted off if it can be' }),
    wattsChecks({ hose: true }),
    runs({
      hose: true,
      atRest: 'handle up',
      working: 'handle down',
      full: 'carpet and hard floor, hose and head, handle up and down',
    }),
  )

export const baglessUpright: readonly BlueprintInput[] = [make(fusedPlug), make(flatBlades)]
