import { compose } from '../compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysByHose } from './air-ways.ts'
import { flexToBody } from './layout.ts'
import { flatBlades, fusedPlug, mouldedPlug, type Mains } from './mains.ts'
import { bag } from './shared/bag.ts'
import { bodyWires } from './shared/body-wires.ts'
import { casing } from './shared/casing.ts'
import { cutOut } from './shared/cut-out.ts'
import { drum } from './shared/drum.ts'
import { earth } from './shared/earth.ts'
import { feedWires } from './shared/feed-wires.ts'
import { filters } from './shared/filters.ts'
import { flexEntry } from './shared/flex-entry.ts'
import { hose } from './shared/hose.ts'
import { lead } from './shared/lead.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { passiveHead } from './shared/passive-head.ts'
import { runs } from './shared/runs.ts'
import { suctionAtHead } from './shared/suction-at-head.ts'
import { suctionByHand } from './shared/suction-by-hand.ts'
import { suctionMotor } from './shared/suction-motor.ts'
import { suppressionCapacitor } from './shared/suppression-capacitor.ts'
import { wandAndHandle } from './shared/wand-and-handle.ts'
import { wheels } from './shared/wheels.ts'
import { wattsChecks } from './shared/watts-checks.ts'

/** Minutes from the access column of the trade catalogue (judgement). */
const covers: NonNullable<BlueprintFragment['covers']> = [
  {
    id: 'drum-top',
    name: 'Top off the drum',
    openMin: 0.3,
    closeMin: 0.4,
    hint: 'Two clamps. Outdoors: the bag is under it.',
  },
  { id: 'bag-door', name: 'Bag off its collar', openMin: 0.2, closeMin: 0.3, after: ['drum-top'] },
  { id: 'filter-cover', name: 'Filter skirt', openMin: 0.4, closeMin: 0.5, after: ['drum-top'] },
  { id: 'exhaust-cover', name: 'Exhaust foam', openMin: 1, closeMin: 1, after: ['drum-top'] },
  {
    id: 'top-cover',
    name: 'Top cover',
    openMin: 4,
    closeMin: 4,
    after: ['drum-top'],
    fixings: [{ count: 4, kind: 'PH2 plastic 4 × 25' }],
    hint: 'The cord grip sits in its own slot; the switch comes up with it.',
  },
  {
    id: 'motor-end',
    name: 'Motor lifted out, end cap off',
    openMin: 5,
    closeMin: 6,
    after: ['top-cover'],
    fixings: [{ count: 3, kind: 'PH2 and clamp ring' }],
    hint: 'Gasket above and below.',
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

/** Drum with a by-pass motor on top and a plain switch. */
const make = (mains: Mains, protectionClass: 'I' | 'II'): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `tub-by-pass${protectionClass === 'I' ? '-earthed' : ''}${mains.suffix}`,
      name: 'Tub, by-pass motor',
      summary:
        'Drum on castors with the motor on top. The motor has cooling air of its own; a plain switch, a hose on a bayonet, a bag or a filter skirt.',
      recognise: [
        'Drum on castors, motor in the lid, clamps at the rim',
        'Flex wound round the top by hand',
        'Plain switch on top',
        'Hose screws or turns into the drum',
      ],
      signs: { stands: ['drum'], dust: ['bag'], cord: ['hooks'], brush: ['none'], switch: ['top'], reset: ['no'] },
      plate: { voltageV: mains.voltageV, frequencyHz: mains.frequencyHz, powerW: 1100, protectionClass, massKg: 7.5 },
      supply: {
        line: 'plug.line',
        neutral: 'plug.neutral',
        ...(protectionClass === 'I' ? { earth: 'plug.earth' } : {}),
      },
      family: 'tub',
      places,
      wording: mains.wording,
      airPath: [
        'floor-head',
        'wand',
        'hose-grip',
        'hose',
        'drum-seal',
        'bag',
        'pre-motor-filter',
        'motor-seal',
        'motor-fan',
        'exhaust-filter',
      ],
      airWays: waysByHose('drum-seal'),
      worth: {
        priceClass: 'tub',
        priceKind: 'tub-by-pass',
        workingMinor: { low: 4000, high: 7500 },
        sparesMinor: { low: 600, high: 1800 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'tub, domestic or trade',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the top',
      entryCover: 'top-cover',
      lengthM: 10,
      areaMm2: 1,
      fuseA: mains.fuseA,
      earthed: protectionClass === 'I',
    }),
    flexEntry({
      entry: 'the top',
      entryCover: 'top-cover',
      wear: 'Bent over the edge of the top, wound tight round it',
    }),
    ...(protectionClass === 'I'
      ? [earth({ entry: 'the top', entryCover: 'top-cover', lengthM: 10, areaMm2: 1, passesAtMostOhm: 0.7 })]
      : []),
    mainsSwitch({ name: 'Rocker switch', pressedBy: 'Rocker', switchCover: 'top-cover', from: 'flex.line' }),
    feedWires({ lineFrom: 'switch.out', neutralFrom: 'flex.neutral' }),
    bodyWires({ bodyCover: 'top-cover', motorCover: 'top-cover', motorFrom: 'body.line', motorFeed: 'cutout.in' }),
    suppressionCapacitor({
      from: 'body.line',
      to: 'body.neutral',
      capacitanceF: 0.1e-6,
      unplug: ['motor-line-wire', 'feed-line'],
      cover: 'top-cover',
    }),
    cutOut({ cover: 'top-cover' }),
    suctionMotor({
      feed: 'cutout.out',
      shareOfPlate: 1,
      makesSuction: true,
      motorCover: 'top-cover',
      motorEnd: 'motor-end',
      fanCover: 'drum-top',
    }),
    hose,
    wandAndHandle({ ownsWand: true }),
    passiveHead({}),
    drum({ float: true }),
    bag,
    filters,
    wheels,
    casing({ cover: 'top-cover', lookIn: 'drum-top' }),
    suctionByHand({ at: 'hose end' }),
    suctionAtHead({ set: 'Head on the wand, held flat above the paper' }),
    wattsChecks({ hose: true }),
    runs({
      hose: true,
      atRest: 'hose straight',
      working: 'head on the floor',
      full: 'carpet and hard floor, pulled by its hose, pedal up and down',
    }),
  )

export const tubByPass: readonly BlueprintInput[] = [
  make(fusedPlug, 'II'),
  make(fusedPlug, 'I'),
  make(mouldedPlug, 'II'),
  make(flatBlades, 'II'),
]
