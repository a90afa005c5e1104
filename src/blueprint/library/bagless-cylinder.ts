import { compose } from '../compose.ts'
import type { BlueprintFragment } from '../fragment.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysByHose } from './air-ways.ts'
import { flatBlades, fusedPlug, mouldedPlug, type Mains } from './mains.ts'
import { binAndCyclone } from './shared/bin-and-cyclone.ts'
import { bodyWires } from './shared/body-wires.ts'
import { brushRoll } from './shared/brush-roll.ts'
import { casing } from './shared/casing.ts'
import { coggedBelt } from './shared/cogged-belt.ts'
import { cordReel } from './shared/cord-reel.ts'
import { cutOut } from './shared/cut-out.ts'
import { feedWires } from './shared/feed-wires.ts'
import { filters } from './shared/filters.ts'
import { cylinderPlaces, shellCovers } from './shared/cylinder-body.ts'
import { hose } from './shared/hose.ts'
import { lead } from './shared/lead.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { reliefValve } from './shared/relief-valve.ts'
import { runs } from './shared/runs.ts'
import { speedControl } from './shared/speed-control.ts'
import { suctionAtHead } from './shared/suction-at-head.ts'
import { suctionByHand } from './shared/suction-by-hand.ts'
import { suctionMotor } from './shared/suction-motor.ts'
import { suppressionCapacitor } from './shared/suppression-capacitor.ts'
import { turbineHead } from './shared/turbine-head.ts'
import { wandAndHandle } from './shared/wand-and-handle.ts'
import { wheels } from './shared/wheels.ts'
import { wattsChecks } from './shared/watts-checks.ts'

/** Minutes from the access column of the trade catalogue (judgement). */
const covers: NonNullable<BlueprintFragment['covers']> = [
  { id: 'cyclone-cover', name: 'Separator off the bin', openMin: 1, closeMin: 1, hint: 'Over newspaper, outdoors.' },
  { id: 'filter-cover', name: 'Filter cover', openMin: 0.4, closeMin: 0.4 },
  { id: 'exhaust-cover', name: 'Exhaust filter grille', openMin: 0.4, closeMin: 0.4 },
  {
    id: 'sole-plate',
    name: 'Sole plate of the head',
    openMin: 3,
    closeMin: 3,
    fixings: [{ count: 3, kind: 'coin slot or TX10' }],
  },
  ...shellCovers({ after: ['filter-cover'], screws: 7 }),
]

const places = cylinderPlaces(24)

/** Bagless cylinder with a soft-start board and an air-turned brush. */
const make = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `bagless-cylinder${mains.suffix}`,
      name: 'Bagless cylinder',
      summary:
        'Low machine on wheels with a clear bin, pulled by its hose. A board eases the motor in; the flex winds itself in; the roll in the head is turned by the air.',
      recognise: [
        'Low on wheels, clear bin in front',
        'Flex winds in by a pedal',
        'No speed slider; suction let off by a slide on the hose handle',
        'Roll in the head spins only while air is drawn through it',
      ],
      signs: {
        stands: ['cylinder'],
        dust: ['bin'],
        cord: ['reel'],
        brush: ['air', 'none'],
        switch: ['foot'],
        reset: ['no'],
      },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 1100,
        protectionClass: 'II',
        massKg: 6.5,
      },
      supply: { line: 'plug.line', neutral: 'plug.neutral' },
      family: 'cylinder',
      places,
      wording: mains.wording,
      airPath: [
        'sole-plate',
        'turbine',
        'wand',
        'hose-grip',
        'hose',
        'bin',
        'cyclone',
        'pre-motor-filter',
        'motor-seal',
        'motor-fan',
        'exhaust-filter',
      ],
      airWays: waysByHose('bin'),
      worth: {
        priceClass: 'bagged-cylinder',
        priceKind: 'bagless-cylinder',
        workingMinor: { low: 2500, high: 7000 },
        sparesMinor: { low: 300, high: 1500 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'between budget cylinder and premium cylinder with reel',
          evidence: 'judgement',
        },
      },
    },
    { covers },

    lead({
      entry: 'the drum',
      entryCover: 'reel-cover',
      lengthM: 6,
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
      unplug: ['speed-feed', 'feed-line'],
      cover: 'top-shell',
    }),
    speedControl({
      kind: 'soft-start',
      from: 'body.line',
      neutral: 'body.neutral',
      standbyOhm: null,
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
    turbineHead,
    brushRoll({ drive: 'air', rollCover: 'turbine-cover' }),
    coggedBelt({ drive: 'other', cover: 'turbine-cover' }),
    reliefValve({ cover: 'cyclone-cover' }),
    binAndCyclone,
    filters,
    wheels,
    casing({ cover: 'top-shell', lookIn: 'filter-cover' }),
    suctionByHand({ at: 'hose end' }),
    suctionAtHead({ set: 'Head on the wand, held flat above the paper' }),
    wattsChecks({ hose: true }),
    runs({
      hose: true,
      atRest: 'hose straight',
      working: 'head on the floor',
      full: 'carpet and hard floor, flex out and in, slide open and shut',
    }),
  )

export const baglessCylinder: readonly BlueprintInput[] = [make(fusedPlug), make(mouldedPlug), make(flatBlades)]
