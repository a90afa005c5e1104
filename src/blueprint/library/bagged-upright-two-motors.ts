import { compose } from '../compose.ts'
import type { BlueprintInput } from '../schema.ts'
import { waysOfUpright } from './air-ways.ts'
import { covers } from './bagged-upright-two-motors/covers.ts'
import { places } from './bagged-upright-two-motors/places.ts'
import { flatBlades, fusedPlug, type Mains } from './mains.ts'
import { bag } from './shared/bag.ts'
import { bagDoor } from './shared/bag-door.ts'
import { bodyWires } from './shared/body-wires.ts'
import { brushBoard } from './shared/brush-board.ts'
import { brushMotor } from './shared/brush-motor.ts'
import { brushRoll } from './shared/brush-roll.ts'
import { casing } from './shared/casing.ts'
import { changeover } from './shared/changeover.ts'
import { coggedBelt } from './shared/cogged-belt.ts'
import { cutOut } from './shared/cut-out.ts'
import { filters } from './shared/filters.ts'
import { flexEntry } from './shared/flex-entry.ts'
import { heightDrive } from './shared/height-drive.ts'
import { hose } from './shared/hose.ts'
import { lamps } from './shared/lamps.ts'
import { lead } from './shared/lead.ts'
import { loom } from './shared/loom.ts'
import { mainsSwitch } from './shared/mains-switch.ts'
import { neckLoom } from './shared/neck-loom.ts'
import { parkLatch } from './shared/park-latch.ts'
import { reliefValve } from './shared/relief-valve.ts'
import { runs } from './shared/runs.ts'
import { suctionAtHead } from './shared/suction-at-head.ts'
import { suctionByHand } from './shared/suction-by-hand.ts'
import { suctionMotor } from './shared/suction-motor.ts'
import { suppressionCapacitor } from './shared/suppression-capacitor.ts'
import { uprightDucts } from './shared/upright-ducts.ts'
import { wattsChecks } from './shared/watts-checks.ts'

/** Premium bagged upright whose brush roll has a motor of its own, with an electronic head. */
const baggedUpright = (mains: Mains): BlueprintInput =>
  compose(
    {
      format: 'thrum-blueprint-1',
      id: `bagged-upright-two-motors${mains.suffix}`,
      name: 'Bagged upright, separate brush motor',
      summary:
        'Mains upright with a bag. One motor sucks, a second turns the brush through a cogged belt; a board drives the brush and sets the head height.',
      recognise: [
        'Stands upright, bag behind a door in the body',
        'Lead ends in the handle; switch in the handle',
        'Brush stops when the handle is locked up, suction goes on',
        'Lamps on the head or body: power, blockage, brush',
        'Overload button on the head or neck',
        'Double square on the plate, no earth pin connected',
      ],
      signs: {
        stands: ['upright'],
        dust: ['bag'],
        cord: ['hooks'],
        brush: ['electric'],
        switch: ['handle'],
        reset: ['yes'],
      },
      plate: {
        voltageV: mains.voltageV,
        frequencyHz: mains.frequencyHz,
        powerW: 1200,
        protectionClass: 'II',
        massKg: 9,
      },
      supply: { line: 'plug.line', neutral: 'plug.neutral' },
      family: 'upright-two-motors',
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
        priceClass: 'premium-bagged-upright',
        priceKind: 'bagged-upright-two-motors',
        workingMinor: { low: 7000, high: 14000 },
        sparesMinor: { low: 500, high: 3000 },
        source: {
          title: 'Trade prices of used vacuum cleaners',
          clause: 'premium bagged upright, separate brush motor',
          evidence: 'judgement',
        },
      },
    },
    { covers },
    lead({
      entry: 'the handle',
      entryCover: 'handle-cover',
      lengthM: 10,
      areaMm2: 1,
      fuseA: mains.fuseA,
      earthed: false,
    }),
    flexEntry({ entry: 'the handle', entryCover: 'handle-cover', wear: 'Bends at the cord grip with every stroke' }),
    mainsSwitch({ name: 'Handle switch', pressedBy: 'Rocker', switchCover: 'handle-cover', from: 'flex.line' }),
    loom({ fromCover: 'handle-cover', toCover: 'back-cover' }),
    bodyWires({ bodyCover: 'back-cover', motorCover: 'motor-cover', motorFrom: 'body.line', motorFeed: 'cutout.in' }),
    suppressionCapacitor({
      from: 'body.line',
      to: 'body.neutral',
      capacitanceF: 0.1e-6,
      unplug: ['motor-line-wire', 'board-line-wire'],
      cover: 'back-cover',
    }),
    cutOut({ cover: 'motor-cover' }),
    suctionMotor({
      feed: 'cutout.out',
      shareOfPlate: 0.9,
      makesSuction: true,
      motorCover: 'motor-cover',
      motorEnd: 'motor-end',
      fanCover: 'filter-cover',
    }),
    uprightDucts({ ductCover: 'back-cover', neckCover: 'neck-cover' }),
    changeover({ cover: 'back-cover' }),
    hose,
    reliefValve({ cover: 'bag-door' }),
    bag,
    bagDoor({ name: 'Bag door' }),
    filters,
    brushRoll({ drive: 'own-motor', rollCover: 'belt-cover' }),
    coggedBelt({ drive: 'own-motor', cover: 'belt-cover' }),
    parkLatch({ cover: 'neck-cover' }),
    casing({ cover: 'back-cover', lookIn: 'bag-door' }),
    brushBoard({ boardCover: 'board-cover', neckCover: 'neck-cover', headCover: 'head-shells' }),
    neckLoom({ neutralTo: 'board.neutral', neckCover: 'neck-cover', headCover: 'head-shells' }),
    brushMotor({ from: 'park.out', shareOfPlate: 0.1, headCover: 'head-shells', overloadCover: 'neck-cover' }),
    heightDrive({ headCover: 'head-shells' }),
    lamps({ pressureCover: 'back-cover', lampCover: 'handle-cover' }),
    suctionByHand({ at: 'hose end' }),
    suctionAtHead({ set: 'Hose stowed, handle up so the brush stands still' }),
    wattsChecks({ hose: true, brush: { shareOfPlate: 0.1, on: 'handle back', off: 'handle up' } }),
    runs({
      hose: true,
      atRest: 'handle up',
      working: 'handle back',
      full: 'carpet and hard floor, hose and head, neck swung, handle up and back',
    }),
  )

export const baggedUprightTwoMotors: readonly BlueprintInput[] = [fusedPlug, flatBlades].map(baggedUpright)
