import { compose } from '../compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysOfUpright } from './air-ways.ts'
import { flexToBody } from './layout.ts'
import { flatBlades, fusedPlug, type Mains } from './mains.ts'
import { bag } from './shared/bag.ts'
import { bagDoor } from './shared/bag-door.ts'
import { bodyWires } from './shared/body-wires.ts'
import { brushRoll } from './shared/brush-roll.ts'
import { casing } from './shared/casing.ts'
import { changeover } from './shared/changeover.ts'
import { cutOut } from './shared/cut-out.ts'
import { filters } from './shared/filters.ts'
import { flatBelt } from './shared/flat-belt.ts'
import { flexEntry } from './shared/flex-entry.ts'
import { handleRelease } from './shared/handle-release.ts'
import { headlamp } from './shared/headlamp.ts'
import { heightLever } from './shared/height-lever.ts'
import { hose } from './shared/hose.ts'
import { lead } from './shared/lead.ts'
import { loom } from './shared/loom.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
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
    id: 'handle-cover',
    name: 'Handle cover',
    openMin: 4,
    closeMin: 4,
    fixings: [{ count: 3, kind: 'PH2 plastic 4 × 20' }],
    hint: 'Photograph the tags first. The cord grip sits in its own slot.',
  },
  { id: 'bag-door', name: 'Bag door', openMin: 0.2, closeMin: 0.3, hint: 'Bag out first, outdoors.' },
  { id: 'filter-cover', name: 'Pre-motor filter frame', openMin: 0.5, closeMin: 0.5, after: ['bag-door'] },
  { id: 'exhaust-cover', name: 'Exhaust filter cover', openMin: 0.5, closeMin: 0.5 },
  {
    id: 'lamp-cover',
    name: 'Lamp lens',
    openMin: 1.5,
    closeMin: 1.5,
    fixings: [{ count: 1, kind: 'PH2 plastic 3.5 × 12' }],
  },
  {
    id: 'back-cover',
    name: 'Back cover',
    openMin: 6,
    closeMin: 6,
    after: ['bag-door'],
    fixings: [{ count: 4, kind: 'PH2 plastic 4 × 20' }],
    hint: 'One screw hides under the hose hook.',
  },
  {
    id: 'sole-plate',
    name: 'Sole plate',
    openMin: 2,
    closeMin: 2,
    fixings: [{ count: 4, kind: 'quarter-turn catch or PH2' }],
  },
  {
    id: 'motor-cover',
    name: 'Motor cover',
    openMin: 7,
    closeMin: 8,
    after: ['back-cover', 'filter-cover', 'sole-plate'],
    fixings: [{ count: 4, kind: 'PH2 plastic 4 × 25' }],
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
  ...flexToBody,
  'lamp.line': [17, 5],
  'cutout.in': [18, 1],
  'cutout.out': [20.5, 1],
  'motor.a': [23, 1],
  'motor.brush': [23, 5],
  'motor.b': [23, 13],
  'casing-metal': [25, 9],
}

/** Bagged upright whose one motor sucks and turns the roll by a flat belt. */
const make = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `bagged-upright-one-motor${mains.suffix}`,
      name: 'Bagged upright, belt from the motor',
      summary:
        'Mains upright with a bag. One motor makes the suction; a flat rubber belt from its shaft turns the brush.',
      recognise: [
        'Stands upright, bag behind a door or zip in the body',
        'Lead ends in the handle, switch on the handle',
        'Brush and motor share one sound: no motor in the head',
        'A lever or knob sets the head height by hand',
        'Flat belt behind the sole plate',
      ],
      signs: {
        stands: ['upright'],
        dust: ['bag'],
        cord: ['hooks'],
        brush: ['belt'],
        switch: ['handle'],
        reset: ['no'],
      },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 1200,
        protectionClass: 'II',
        massKg: 7,
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
        'bag',
        'pre-motor-filter',
        'motor-seal',
        'motor-fan',
        'exhaust-filter',
      ],
      airWays: waysOfUpright('bag'),
      worth: {
        priceClass: 'belted-bagged-upright',
        priceKind: 'bagged-upright-one-motor',
        workingMinor: { low: 3000, high: 6000 },
        sparesMinor: { low: 200, high: 1400 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'mid bagged upright, belt from motor',
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
    mainsSwitch({ name: 'Handle switch', pressedBy: 'Slide', switchCover: 'handle-cover', from: 'flex.line' }),
    loom({ fromCover: 'handle-cover', toCover: 'back-cover' }),
    bodyWires({ bodyCover: 'back-cover', motorCover: 'motor-cover', motorFrom: 'body.line', motorFeed: 'cutout.in' }),
    suppressionCapacitor({
      from: 'body.line',
      to: 'body.neutral',
      capacitanceF: 0.1e-6,
      unplug: ['motor-line-wire', 'lamp-feed'],
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
    headlamp({
      line: 'body.line',
      neutral: 'body.neutral',
      coldOhm: mains.voltageV > 200 ? 260 : 70,
      cover: 'lamp-cover',
    }),
    uprightDucts({ ductCover: 'back-cover', neckCover: 'back-cover' }),
    changeover({ cover: 'back-cover' }),
    hose,
    bag,
    bagDoor({ name: 'Bag door' }),
    filters,
    brushRoll({ drive: 'belt', rollCover: 'sole-plate' }),
    flatBelt({ cover: 'sole-plate', lifter: true }),
    heightLever,
    handleRelease({ cover: 'back-cover' }),
    wheels,
    casing({ cover: 'back-cover', lookIn: 'bag-door' }),
    suctionByHand({ at: 'hose end' }),
    suctionAtHead({ set: 'Hose stowed, handle up, belt lifted off if it can be' }),
    wattsChecks({ hose: true }),
    runs({
      hose: true,
      atRest: 'handle up',
      working: 'handle down',
      full: 'carpet and hard floor, hose and head, each height, handle up and down',
    }),
  )

export const baggedUprightOneMotor: readonly BlueprintInput[] = [make(fusedPlug), make(flatBlades)]
