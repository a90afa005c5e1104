import { compose } from '../compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { bodyWay, neckWay } from './air-ways.ts'
import { flexToBody } from './layout.ts'
import { flatBlades, fusedPlug, mouldedPlug, type Mains } from './mains.ts'
import { binAndCyclone } from './shared/bin-and-cyclone.ts'
import { bodyWires } from './shared/body-wires.ts'
import { casing } from './shared/casing.ts'
import { cutOut } from './shared/cut-out.ts'
import { feedWires } from './shared/feed-wires.ts'
import { filters } from './shared/filters.ts'
import { flexEntry } from './shared/flex-entry.ts'
import { lead } from './shared/lead.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { passiveHead } from './shared/passive-head.ts'
import { runs } from './shared/runs.ts'
import { suctionAtHead } from './shared/suction-at-head.ts'
import { suctionByHand } from './shared/suction-by-hand.ts'
import { suctionMotor } from './shared/suction-motor.ts'
import { uprightDucts } from './shared/upright-ducts.ts'
import { wattsChecks } from './shared/watts-checks.ts'

/** Minutes from the access column of the trade catalogue (judgement). */
const covers: NonNullable<BlueprintFragment['covers']> = [
  { id: 'filter-cover', name: 'Filter out of the bin', openMin: 0.3, closeMin: 0.3 },
  { id: 'exhaust-cover', name: 'Exhaust foam', openMin: 0.5, closeMin: 0.5 },
  { id: 'cyclone-cover', name: 'Bin off', openMin: 0.2, closeMin: 0.2 },
  {
    id: 'body-shells',
    name: 'Body shells',
    openMin: 6,
    closeMin: 7,
    after: ['filter-cover'],
    fixings: [{ count: 7, kind: 'PH1 plastic 3 × 12' }],
    hint: 'Clips along the seam besides.',
  },
  {
    id: 'motor-end',
    name: 'Motor lifted out, end cap off',
    openMin: 4,
    closeMin: 5,
    after: ['body-shells'],
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
  'casing-metal': [24, 9],
}

/** Slim mains stick with a small motor, a bin and a plain head. */
const make = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `stick-upright${mains.suffix}`,
      name: 'Mains stick',
      summary:
        'Slim stick on a mains flex: a small motor and a small bin in the body, a plain head at the foot; the body often comes off to be used by hand.',
      recognise: [
        'A thin stick, small clear bin in the body',
        'Mains flex, no battery and no charger',
        'Head with bristles, no roll',
        'Body can be lifted off the stick',
      ],
      signs: { stands: ['stick'], dust: ['bin'], cord: ['hooks'], brush: ['none'], switch: ['handle'], reset: ['no'] },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 600,
        protectionClass: 'II',
        massKg: 2.2,
      },
      supply: { line: 'plug.line', neutral: 'plug.neutral' },
      family: 'upright-one-motor',
      places,
      wording: mains.wording,
      airPath: [
        'floor-head',
        'lower-hose',
        'duct',
        'bin',
        'cyclone',
        'pre-motor-filter',
        'motor-seal',
        'motor-fan',
        'exhaust-filter',
      ],
      airWays: [neckWay(), bodyWay('bin')],
      worth: {
        priceClass: 'budget-bagless-upright',
        priceKind: 'stick-upright',
        workingMinor: { low: 1500, high: 3000 },
        sparesMinor: { low: 100, high: 600 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'budget bagless upright',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the handle',
      entryCover: 'body-shells',
      lengthM: 6,
      areaMm2: 0.75,
      fuseA: mains.fuseA,
      earthed: false,
    }),
    flexEntry({ entry: 'the handle', entryCover: 'body-shells', wear: 'Bends at the cord grip with every stroke' }),
    mainsSwitch({ name: 'Slide switch', pressedBy: 'Slide', switchCover: 'body-shells', from: 'flex.line' }),
    feedWires({ lineFrom: 'switch.out', neutralFrom: 'flex.neutral' }),
    bodyWires({ bodyCover: 'body-shells', motorCover: 'body-shells', motorFrom: 'body.line', motorFeed: 'cutout.in' }),
    cutOut({ cover: 'body-shells' }),
    suctionMotor({
      feed: 'cutout.out',
      shareOfPlate: 1,
      makesSuction: true,
      motorCover: 'body-shells',
      motorEnd: 'motor-end',
      fanCover: 'filter-cover',
    }),
    passiveHead({ ratedAs: 'cylinder' }),
    binAndCyclone,
    uprightDucts({ ductCover: 'filter-cover', neckCover: 'cyclone-cover' }),
    filters,
    casing({ cover: 'body-shells', lookIn: 'filter-cover' }),
    suctionByHand({ at: 'inlet' }),
    suctionAtHead({ set: 'Head on the wand, held flat above the paper' }),
    wattsChecks({ hose: false }),
    runs({
      hose: false,
      atRest: 'leant safely',
      working: 'head on the floor',
      full: 'carpet and hard floor, body on the stick and off it',
    }),
  )

export const stickUpright: readonly BlueprintInput[] = [make(fusedPlug), make(mouldedPlug), make(flatBlades)]
