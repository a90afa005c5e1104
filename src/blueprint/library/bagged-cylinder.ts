import { compose } from '../compose.ts'
import type { BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysByHose } from './air-ways.ts'
import { flatBlades, fusedPlug, mouldedPlug, type Mains } from './mains.ts'
import { bag } from './shared/bag.ts'
import { bagDoor } from './shared/bag-door.ts'
import { bodyWires } from './shared/body-wires.ts'
import { casing } from './shared/casing.ts'
import { cordReel } from './shared/cord-reel.ts'
import { cutOut } from './shared/cut-out.ts'
import { feedWires } from './shared/feed-wires.ts'
import { fillIndicator } from './shared/fill-indicator.ts'
import { filters } from './shared/filters.ts'
import { cylinderPlaces, lidCovers, shellCovers } from './shared/cylinder-body.ts'
import { hose } from './shared/hose.ts'
import { lead } from './shared/lead.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { passiveHead } from './shared/passive-head.ts'
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
  ...shellCovers({ after: ['bag-door', 'filter-cover'], screws: 6 }),
]

const places = cylinderPlaces(24)

/** Bagged cylinder with cord reel and electronic speed control. */
const make = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `bagged-cylinder${mains.suffix}`,
      name: 'Bagged cylinder, reel and speed slider',
      summary:
        'Low machine on wheels with a bag, pulled by its hose. The flex winds itself in; a triac board sets the speed of the one motor; the head has no motor.',
      recognise: [
        'Low on wheels, bag under a lid',
        'Flex winds in by a pedal',
        'Slider or knob for the speed on the body',
        'Head with a pedal and bristles, no roll',
      ],
      signs: { stands: ['cylinder'], dust: ['bag'], cord: ['reel'], brush: ['none'], switch: ['foot'], reset: ['no'] },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 1200,
        protectionClass: 'II',
        massKg: 6,
      },
      supply: { line: 'plug.line', neutral: 'plug.neutral' },
      family: 'cylinder',
      places,
      wording: mains.wording,
      airPath: [
        'floor-head',
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
        priceClass: 'bagged-cylinder',
        priceKind: 'bagged-cylinder',
        workingMinor: { low: 4000, high: 10000 },
        sparesMinor: { low: 500, high: 2000 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'bagged cylinder with reel, premium',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the drum',
      entryCover: 'reel-cover',
      lengthM: 6.5,
      areaMm2: 0.75,
      fuseA: mains.fuseA,
      earthed: false,
    }),
    cordReel,
    mainsSwitch({ name: 'Foot switch', pressedBy: 'Pedal', switchCover: 'top-shell', from: 'reel.line' }),
    feedWires({ lineFrom: 'switch.out', neutralFrom: 'reel.neutral' }),
    suppressionCapacitor({
      from: 'reel.line',
      to: 'reel.neutral',
      capacitanceF: 0.22e-6,
      unplug: ['switch-tag', 'feed-neutral'],
      cover: 'top-shell',
    }),
    speedControl({
      kind: 'slider',
      from: 'body.line',
      neutral: 'body.neutral',
      standbyOhm: 1e6,
      boardCover: 'top-shell',
    }),
    bodyWires({ bodyCover: 'top-shell', motorCover: 'motor-cover', motorFrom: 'speed.out', motorFeed: 'cutout.in' }),
    cutOut({ cover: 'motor-cover' }),
    suctionMotor({
      feed: 'cutout.out',
      shareOfPlate: 1,
      makesSuction: true,
      motorCover: 'motor-cover',
      motorEnd: 'motor-end',
      fanCover: 'filter-cover',
    }),
    hose,
    wandAndHandle({ ownsWand: true }),
    passiveHead({}),
    reliefValve({ cover: 'bag-door' }),
    fillIndicator,
    bag,
    bagDoor({ name: 'Lid' }),
    filters,
    wheels,
    casing({ cover: 'top-shell', lookIn: 'bag-door' }),
    suctionByHand({ at: 'hose end' }),
    suctionAtHead({ set: 'Head on the wand, held flat above the paper' }),
    wattsChecks({ hose: true }),
    runs({
      hose: true,
      atRest: 'hose straight',
      working: 'head on the floor',
      full: 'carpet and hard floor, low to full speed, flex out and in, pedal up and down',
    }),
  )

export const baggedCylinder: readonly BlueprintInput[] = [make(fusedPlug), make(mouldedPlug), make(flatBlades)]
