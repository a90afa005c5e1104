import type { BlueprintFragment } from '../../fragment.ts'
import { suctionMotorFaults } from './suction-motor-faults.ts'
import { suctionMotorChecks } from './suction-motor-checks.ts'
import { suctionMotorRepairs } from './suction-motor-repairs.ts'
import { suctionMotorAddsTo } from './suction-motor-shows.ts'
import type { SuctionMotorOptions } from './suction-motor-options.ts'

const points = (o: SuctionMotorOptions): NonNullable<BlueprintFragment['points']> => [
  ...(o.feed === 'motor.feed'
    ? [{ id: 'motor.feed', name: 'Push-on of the motor’s line wire', behind: o.motorCover }]
    : []),
  { id: 'motor.a', name: 'Suction motor tag, line side', behind: o.motorCover },
  { id: 'motor.brush', name: 'Commutator under the brush', behind: o.motorEnd },
  { id: 'motor.b', name: 'Suction motor tag, neutral side', behind: o.motorCover },
]

const parts = (o: SuctionMotorOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'motor-terminal',
    name: 'Motor push-on terminal',
    does: 'Joins the line wire to the motor',
    group: 'electrical',
    behind: o.motorCover,
  },
  {
    id: 'suction-motor',
    name: 'Suction motor',
    does: 'Drives the fan',
    group: 'electrical',
    behind: o.motorCover,
    spareShare: { low: 0.15, high: 0.3 },
  },
  {
    id: 'carbon-brushes',
    name: 'Carbon brushes',
    does: 'Feed the turning armature',
    group: 'electrical',
    behind: o.motorEnd,
    within: 'suction-motor',
  },
  {
    id: 'commutator',
    name: 'Commutator',
    does: 'Copper bars the brushes run on',
    group: 'electrical',
    behind: o.motorEnd,
    within: 'suction-motor',
  },
  {
    id: 'motor-fan',
    name: 'Motor fan',
    does: 'Makes the suction',
    group: 'air',
    behind: o.fanCover,
    within: 'suction-motor',
    air: { kind: 'fan' },
  },
  {
    id: 'motor-seal',
    name: 'Motor seal',
    does: 'Seals the motor to the chamber',
    group: 'air',
    behind: o.motorCover,
    spareShare: { low: 0.02, high: 0.04 },
  },
]

const circuit = (o: SuctionMotorOptions): NonNullable<BlueprintFragment['circuit']> => [
  {
    kind: 'resistor',
    id: 'motor-tag',
    part: 'motor-terminal',
    from: o.feed,
    to: 'motor.a',
    resistanceOhm: 0.005,
    spread: 0.5,
  },
  {
    kind: 'resistor',
    id: 'motor-brushes',
    part: 'carbon-brushes',
    from: 'motor.a',
    to: 'motor.brush',
    resistanceOhm: 0.6,
    spread: 0.5,
  },
  {
    kind: 'motor',
    id: 'suction-motor',
    part: 'suction-motor',
    from: 'motor.brush',
    to: 'motor.b',
    power: { shareOfPlate: o.shareOfPlate },
  },
  { kind: 'stray', id: 'winding-leak', part: 'suction-motor', from: 'motor.brush', to: 'casing-metal' },
]

/** What only a motor has that makes the suction itself. */
const ofTheSuction: readonly string[] = ['motor-fan', 'motor-seal']

/** A brushed suction motor, with its fan and seal where it makes the suction itself. */
export const suctionMotor = (o: SuctionMotorOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o).filter(({ id }) => o.makesSuction || !ofTheSuction.includes(id)),
  circuit: circuit(o),
  faults: suctionMotorFaults.filter(({ part }) => o.makesSuction || !ofTheSuction.includes(part)),
  checks: suctionMotorChecks(o),
  repairs: suctionMotorRepairs(o),
  addsTo: suctionMotorAddsTo,
})
