import { compose } from '../compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysByHose } from './air-ways.ts'
import { along } from './layout.ts'
import { flatBlades, fusedPlug, mouldedPlug, type Mains } from './mains.ts'
import { bag } from './shared/bag.ts'
import { bagDoor } from './shared/bag-door.ts'
import { bodyWires } from './shared/body-wires.ts'
import { brushMotor } from './shared/brush-motor.ts'
import { brushRoll } from './shared/brush-roll.ts'
import { casing } from './shared/casing.ts'
import { coggedBelt } from './shared/cogged-belt.ts'
import { cordReel } from './shared/cord-reel.ts'
import { cutOut } from './shared/cut-out.ts'
import { feedWires } from './shared/feed-wires.ts'
import { fillIndicator } from './shared/fill-indicator.ts'
import { filters } from './shared/filters.ts'
import { cylinderPlaces, lidCovers, shellCovers } from './shared/cylinder-body.ts'
import { hose } from './shared/hose.ts'
import { hoseConductors } from './shared/hose-conductors.ts'
import { lead } from './shared/lead.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { neckLoom } from './shared/neck-loom.ts'
import { reliefValve } from './shared/relief-valve.ts'
import { runs } from './shared/runs.ts'
import { speedControl } from './shared/speed-control.ts'
import { suctionAtHead } from './shared/suction-at-head.ts'
import { suctionByHand } from './shared/suction-by-hand.ts'
import { suctionMotor } from './shared/suction-motor.ts'
import { suppressionCapacitor } from './shared/suppression-capacitor.ts'
import { wandAndHandle } from './shared/wand-and-handle.ts'
import { wheels } from './shared/wheels.ts'
import { wattsChecks } from './shared/watts-checks.ts'

/** Minutes from the access column of the trade catalogue (judgement). */
const covers: NonNullable<BlueprintFragment['covers']> = [
  ...lidCovers,
  ...shellCovers({ after: ['bag-door', 'filter-cover'], screws: 8 }),
  {
    id: 'sole-plate',
    name: 'Sole plate of the head',
    openMin: 2.5,
    closeMin: 2.5,
    fixings: [{ count: 3, kind: 'TX10 plastic 3 × 12' }],
  },
  {
    id: 'belt-cover',
    name: 'Belt side cover',
    openMin: 3,
    closeMin: 3,
    after: ['sole-plate'],
    fixings: [{ count: 2, kind: 'TX10 plastic 3 × 12' }],
  },
  {
    id: 'head-shells',
    name: 'Head shells',
    openMin: 8,
    closeMin: 10,
    after: ['sole-plate', 'belt-cover'],
    fixings: [{ count: 6, kind: 'TX10 plastic 3 × 16' }],
    hint: 'Keep the slack loop of the wires.',
  },
]

const places: BlueprintBase['places'] = {
  ...cylinderPlaces(26),
  ...along(4, ['socket.line', 'handle.in', 'handle.line', 'wand.line', 'overload.out'], 14, 2),
  'brush-motor.a': [22, 6],
  'brush-motor.b': [22, 9],
  'wand.neutral': [20, 10],
  'handle.neutral': [18, 10],
  'socket.neutral': [14, 10],
}

/** Bagged cylinder that feeds an electric head through conductors in its hose. */
const make = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `electric-head-cylinder${mains.suffix}`,
      name: 'Bagged cylinder, electric head',
      summary:
        'Low machine on wheels with a bag. A triac board sets the suction motor; two conductors in the hose feed a head with a motor, a cogged belt and a roll of its own.',
      recognise: [
        'Low on wheels, bag under a lid',
        'Contacts at the hose socket, the wand and the head',
        'Switch for the head on the hose handle',
        'Flex winds in by a pedal',
      ],
      signs: {
        stands: ['cylinder'],
        dust: ['bag'],
        cord: ['reel'],
        brush: ['electric'],
        switch: ['foot', 'handle'],
        reset: ['yes', 'no'],
      },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 1300,
        protectionClass: 'II',
        massKg: 7,
      },
      supply: { line: 'plug.line', neutral: 'plug.neutral' },
      family: 'cylinder',
      places,
      wording: mains.wording,
      airPath: [
        'sole-plate',
        'wand',
        'hose-grip',
        'hose',
        'bag',
        'pre-motor-filter',
        'motor-seal',
        'motor-fan',
        'exhaust-filter',
      ],
      airWays: waysByHose('bag'),
      worth: {
        priceClass: 'electric-head-cylinder',
        priceKind: 'electric-head-cylinder',
        workingMinor: { low: 8000, high: 16000 },
        sparesMinor: { low: 800, high: 3000 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'premium cylinder with electric head',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the drum',
      entryCover: 'reel-cover',
      lengthM: 7,
      areaMm2: 0.75,
      fuseA: mains.fuseA,
      earthed: false,
    }),
    cordReel,
    mainsSwitch({ name: 'Foot switch', pressedBy: 'Pedal', switchCover: 'top-shell', from: 'reel.line' }),
    feedWires({ lineFrom: 'switch.out', neutralFrom: 'reel.neutral' }),
    suppressionCapacitor({
      from: 'body.line',
      to: 'body.neutral',
      capacitanceF: 0.33e-6,
      unplug: ['speed-feed', 'socket-line', 'feed-line'],
      cover: 'top-shell',
    }),
    speedControl({
      kind: 'slider',
      from: 'body.line',
      neutral: 'body.neutral',
      standbyOhm: 680e3,
      boardCover: 'top-shell',
    }),
    bodyWires({ bodyCover: 'top-shell', motorCover: 'motor-cover', motorFrom: 'speed.out', motorFeed: 'cutout.in' }),
    cutOut({ cover: 'motor-cover' }),
    suctionMotor({
      feed: 'cutout.out',
      shareOfPlate: 0.88,
      makesSuction: true,
      motorCover: 'motor-cover',
      motorEnd: 'motor-end',
      fanCover: 'filter-cover',
    }),
    hose,
    hoseConductors({ line: 'body.line', neutral: 'body.neutral', bodyCover: 'top-shell' }),
    wandAndHandle({ ownsWand: false }),
    brushMotor({ from: 'wand.line', shareOfPlate: 0.12, headCover: 'head-shells', overloadCover: 'head-shells' }),
    neckLoom({ neutralTo: 'wand.neutral', neckCover: 'head-shells', headCover: 'head-shells' }),
    brushRoll({ drive: 'own-motor', rollCover: 'belt-cover' }),
    coggedBelt({ drive: 'own-motor', cover: 'belt-cover' }),
    reliefValve({ cover: 'bag-door' }),
    fillIndicator,
    bag,
    bagDoor({ name: 'Lid' }),
    filters,
    wheels,
    casing({ cover: 'top-shell', lookIn: 'bag-door' }),
    suctionByHand({ at: 'hose end' }),
    suctionAtHead({ set: 'Head on the wand, held flat above the paper' }),
    wattsChecks({
      hose: true,
      brush: {
        shareOfPlate: 0.12,
        on: 'head switch on',
        off: 'head switch off',
        controls: { 'mains-switch': 'on', 'head-switch': 'on' },
      },
    }),
    runs({
      hose: true,
      atRest: 'head off',
      working: 'head on carpet',
      full: 'carpet and hard floor, head on and off, low to full speed, flex out and in',
    }),
  )

export const electricHeadCylinder: readonly BlueprintInput[] = [make(fusedPlug), make(mouldedPlug), make(flatBlades)]
