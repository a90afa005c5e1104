import type { BlueprintFragment } from '../../compose.ts'
import { suctionMotorFaults } from './suction-motor-faults.ts'
import { suctionMotorRepairs, type SuctionMotorCovers } from './suction-motor-repairs.ts'

/**
 * What goes wrong in a brushed suction motor with its fan and seal, and how it is mended. The circuit it is put into has the
 * elements `motor-brushes`, `suction-motor` and the stray `winding-leak`.
 */
export const suctionMotor = (covers: SuctionMotorCovers): BlueprintFragment => ({
  faults: suctionMotorFaults,
  repairs: suctionMotorRepairs(covers),
  addsTo: {
    'look-wet': { 'water-in-motor': { tide: 0.85, dry: 0.15 } },
    'look-exhaust-filter': { 'brushes-worn': { clogged: 0.25, clean: 0.75 } },
  },
})
