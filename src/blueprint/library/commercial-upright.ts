import { compose } from '../compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { bodyWay, neckWay } from './air-ways.ts'
import { flexToBody } from './layout.ts'
import { flatBlades, fusedPlug, type Mains } from './mains.ts'
import { bag } from './shared/bag.ts'
import { bagDoor } from './shared/bag-door.ts'
import { bodyWires } from './shared/body-wires.ts'
import { brushRoll } from './shared/brush-roll.ts'
import { casing } from './shared/casing.ts'
import { clutch } from './shared/clutch.ts'
import { coggedBelt } from './shared/cogged-belt.ts'
import { earth } from './shared/earth.ts'
import { filters } from './shared/filters.ts'
import { flexEntry } from './shared/flex-entry.ts'
import { handleRelease } from './shared/handle-release.ts'
import { heightLever } from './shared/height-lever.ts'
import { lead } from './shared/lead.ts'
import { loom } from './shared/loom.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { motorOverload } from './shared/motor-overload.ts'
import { runs } from './shared/runs.ts'
import { suctionAtHead } from './shared/suction-at-head.ts'
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
    fixings: [{ count: 4, kind: 'machine screw M4 × 12' }],
    hint: 'The cord grip sits in its own slot.',
  },
  { id: 'bag-door', name: 'Bag door', openMin: 0.2, closeMin: 0.3, hint: 'Bag out first, outdoors.' },
  { id: 'filter-cover', name: 'Pre-motor filter frame', openMin: 0.5, closeMin: 0.5, after: ['bag-door'] },
  { id: 'exhaust-cover', name: 'Exhaust filter cover', openMin: 0.5, closeMin: 0.5 },
  {
    id: 'back-cover',
    name: 'Back cover',
    openMin: 5,
    closeMin: 5,
    after: ['bag-door'],
    fixings: [{ count: 5, kind: 'machine screw M4 × 16' }],
  },
  {
    id: 'sole-plate',
    name: 'Sole plate',
    openMin: 2,
    closeMin: 2,
    fixings: [{ count: 4, kind: 'machine screw M4 × 10' }],
  },
  {
    id: 'belt-cover',
    name: 'Belt side cover',
    openMin: 3,
    closeMin: 3,
    after: ['sole-plate'],
    fixings: [{ count: 2, kind: 'machine screw M4 × 10' }],
  },
  {
    id: 'motor-cover',
    name: 'Motor cover',
    openMin: 6,
    closeMin: 7,
    after: ['back-cover', 'filter-cover', 'belt-cover'],
    fixings: [{ count: 4, kind: 'machine screw M5 × 20' }],
    hint: 'Belt off the clutch first.',
  },
  {
    id: 'motor-end',
    name: 'Motor lifted out, end cap off',
    openMin: 8,
    closeMin: 10,
    after: ['motor-cover'],
    fixings: [{ count: 2, kind: 'motor end screw' }],
  },
]

const places: BlueprintBase['places'] = {
  ...flexToBody,
  'cutout.in': [17, 1],
  'cutout.out': [19.5, 1],
  'motor.a': [22, 1],
  'motor.brush': [22, 5],
  'motor.b': [22, 13],
  'casing-metal': [24, 10],
  'plug.earth': [0, 16],
  'flex.earth': [10, 16],
}

/** Commercial bagged upright with a belt clutch and an overload that is reset by a button. */
const make = (mains: Mains, protectionClass: 'I' | 'II'): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `commercial-upright${protectionClass === 'I' ? '-earthed' : ''}${mains.suffix}`,
      name: 'Commercial upright, clutch and overload',
      summary:
        'Heavy upright for daily cleaning. One motor; a cogged belt with a slipping clutch turns the roll; an overload with a button guards the motor; a long thick flex.',
      recognise: [
        'Stands upright, heavy, bag behind a door',
        'Button that resets the overload, near the motor',
        'Long thick flex, often changed before',
        'Clutch clicks when the roll is held',
      ],
      signs: {
        stands: ['upright'],
        dust: ['bag'],
        cord: ['hooks'],
        brush: ['belt'],
        switch: ['handle'],
        reset: ['yes'],
      },
      plate: { voltageV: mains.voltageV, frequencyHz: mains.frequencyHz, powerW: 1100, protectionClass, massKg: 9 },
      supply: {
        line: 'plug.line',
        neutral: 'plug.neutral',
        ...(protectionClass === 'I' ? { earth: 'plug.earth' } : {}),
      },
      family: 'upright-one-motor',
      places,
      wording: mains.wording,
      airPath: [
        'sole-plate',
        'lower-hose',
        'duct',
        'bag',
        'pre-motor-filter',
        'motor-seal',
        'motor-fan',
        'exhaust-filter',
      ],
      airWays: [neckWay(), bodyWay('bag')],
      worth: {
        priceClass: 'commercial-upright',
        priceKind: 'commercial-upright',
        workingMinor: { low: 6000, high: 13000 },
        sparesMinor: { low: 800, high: 3500 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'between mid bagged upright and commercial upright',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the handle',
      entryCover: 'handle-cover',
      lengthM: 12,
      areaMm2: 1.5,
      fuseA: mains.fuseA,
      earthed: protectionClass === 'I',
    }),
    flexEntry({ entry: 'the handle', entryCover: 'handle-cover', wear: 'Swung round corners all day' }),
    ...(protectionClass === 'I'
      ? [earth({ entry: 'the handle', entryCover: 'handle-cover', lengthM: 12, areaMm2: 1.5, passesAtMostOhm: 0.7 })]
      : []),
    mainsSwitch({ name: 'Handle switch', pressedBy: 'Rocker', switchCover: 'handle-cover', from: 'flex.line' }),
    loom({ fromCover: 'handle-cover', toCover: 'back-cover' }),
    bodyWires({ bodyCover: 'back-cover', motorCover: 'motor-cover', motorFrom: 'body.line', motorFeed: 'cutout.in' }),
    suppressionCapacitor({
      from: 'body.line',
      to: 'body.neutral',
      capacitanceF: 0.1e-6,
      unplug: ['motor-line-wire'],
      cover: 'back-cover',
    }),
    motorOverload({ from: 'cutout.in', to: 'cutout.out', cover: 'motor-cover' }),
    suctionMotor({
      feed: 'cutout.out',
      shareOfPlate: 1,
      makesSuction: true,
      motorCover: 'motor-cover',
      motorEnd: 'motor-end',
      fanCover: 'filter-cover',
    }),
    uprightDucts({ ductCover: 'back-cover', neckCover: 'back-cover' }),
    bag,
    bagDoor({ name: 'Bag door' }),
    filters,
    brushRoll({ drive: 'belt', rollCover: 'belt-cover' }),
    coggedBelt({ drive: 'other', cover: 'belt-cover' }),
    clutch({ cover: 'belt-cover' }),
    heightLever,
    handleRelease({ cover: 'back-cover' }),
    wheels,
    casing({ cover: 'back-cover', lookIn: 'bag-door' }),
    suctionAtHead({ set: 'Handle up, head on a hard floor' }),
    wattsChecks({ hose: false }),
    runs({
      hose: false,
      atRest: 'handle up',
      working: 'handle down',
      full: 'carpet and hard floor, each height, handle up and down',
    }),
  )

export const commercialUpright: readonly BlueprintInput[] = [
  make(fusedPlug, 'II'),
  make(fusedPlug, 'I'),
  make(flatBlades, 'I'),
]
