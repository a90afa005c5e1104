import { compose } from '../compose.ts'
import type { BlueprintInput } from '../schema.ts'
import { airChecks } from './bagged-upright-two-motors/checks-air.ts'
import { airLookChecks } from './bagged-upright-two-motors/checks-look-air.ts'
import { insideLookChecks } from './bagged-upright-two-motors/checks-look-inside.ts'
import { outsideLookChecks } from './bagged-upright-two-motors/checks-look-outside.ts'
import { insideMeterChecks } from './bagged-upright-two-motors/checks-meter-inside.ts'
import { leadMeterChecks } from './bagged-upright-two-motors/checks-meter-lead.ts'
import { driveRunChecks } from './bagged-upright-two-motors/checks-run-drive.ts'
import { listenRunChecks } from './bagged-upright-two-motors/checks-run-listen.ts'
import { proveRunChecks } from './bagged-upright-two-motors/checks-run-prove.ts'
import { circuit, controls, points } from './bagged-upright-two-motors/circuit.ts'
import { covers } from './bagged-upright-two-motors/covers.ts'
import { airFaults } from './bagged-upright-two-motors/faults-air.ts'
import { controlFaults } from './bagged-upright-two-motors/faults-control.ts'
import { electricalFaults } from './bagged-upright-two-motors/faults-electrical.ts'
import { mechanicalFaults } from './bagged-upright-two-motors/faults-mechanical.ts'
import { airPath, parts } from './bagged-upright-two-motors/parts.ts'
import { airRepairs } from './bagged-upright-two-motors/repairs-air.ts'
import { bodyRepairs } from './bagged-upright-two-motors/repairs-body.ts'
import { controlRepairs } from './bagged-upright-two-motors/repairs-control.ts'
import { headRepairs } from './bagged-upright-two-motors/repairs-head.ts'
import { leadRepairs } from './bagged-upright-two-motors/repairs-lead.ts'
import { bagAndFilters } from './shared/bag-and-filters.ts'
import { lead } from './shared/lead.ts'
import { suctionMotor } from './shared/suction-motor.ts'

/** Premium bagged upright whose brush roll has a motor of its own, with an electronic head. */
export const baggedUprightTwoMotors: BlueprintInput = compose(
  {
    format: 'thrum-blueprint-1',
    id: 'bagged-upright-two-motors',
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
    signs: { stands: ['upright'], dust: ['bag'], cord: ['hooks'], brush: ['electric'], switch: ['handle'] },
    plate: { voltageV: 230, frequencyHz: 50, powerW: 1200, protectionClass: 'II', massKg: 9 },
    supply: { line: 'plug.line', neutral: 'plug.neutral' },
    airPath,
    worth: {
      workingMinor: { low: 7000, high: 14000 },
      sparesMinor: { low: 500, high: 3000 },
      source: {
        title: 'Trade prices of used vacuum cleaners',
        clause: 'premium bagged upright, separate brush motor',
        evidence: 'judgement',
      },
    },
  },
  { points, controls, circuit, covers },
  lead({
    entry: 'the handle',
    wear: 'Bends at the cord grip with every stroke',
    lengthM: 10,
    spareMinor: { low: 880, high: 1650 },
  }),
  {
    parts,
    faults: electricalFaults,
    checks: [...outsideLookChecks, ...leadMeterChecks, ...insideMeterChecks],
    repairs: [...leadRepairs, ...bodyRepairs],
  },
  suctionMotor({ motorCover: 'motor-cover', motorEnd: 'motor-end' }),
  bagAndFilters,
  {
    faults: [...airFaults, ...mechanicalFaults, ...controlFaults],
    checks: [
      ...airLookChecks,
      ...insideLookChecks,
      ...listenRunChecks,
      ...driveRunChecks,
      ...airChecks,
      ...proveRunChecks,
    ],
    repairs: [...airRepairs, ...headRepairs, ...controlRepairs],
  },
)
