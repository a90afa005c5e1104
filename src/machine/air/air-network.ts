import { freeHole } from '../../facts/orifice.ts'
import { plateAreaM2, plateDischarge, solveAir, type AirBranch, type AirSolution } from '../../engines/airflow/index.ts'
import { pressureId, speedId } from './air-explanations.ts'
import { plateOf, removedBy, wayOf } from './air-fit.ts'
import type { AirMachine } from './air-machine.ts'
import { room } from './air-paths.ts'
import type { GaugeReading } from './gauge-reading.ts'
import { standardRoom } from './standard-room.ts'

/** Figures of a machine by parameter id: multiples of what its blueprint says, and areas of leaks in mm². */
export type AirFigures = Readonly<Record<string, number>>

const perMm2 = 1e-6

/** The air of a machine with these figures, set up as for a reading, in standard air at nominal mains. */
export const solveSetUp = (
  machine: AirMachine,
  { way, opening, out }: Pick<GaugeReading, 'way' | 'opening' | 'out'>,
  figures: AirFigures,
): AirSolution => {
  const place = wayOf(machine, way)
  const removed = removedBy(machine, place, out)
  const plate = plateOf(opening)
  const leaks = machine.places.flatMap(({ id, node }) => holeAt(id, node, (figures[id] ?? 0) * perMm2))
  const mouth = plate === null ? [] : holeAt('opening', place.node, plateAreaM2(plate), plateDischarge(plate))
  const branches = [...machine.branches.map((branch) => scaled(branch, figures)), ...leaks]
  return solveAir({
    air: standardRoom,
    losses: 'local-density',
    branches: [...branches.filter(({ id }) => !removed.includes(id)), ...mouth],
  })
}

const holeAt = (
  id: string,
  to: string,
  areaM2: number,
  discharge: number = freeHole.discharge,
): readonly AirBranch[] => (areaM2 > 0 ? [{ kind: 'hole', id, from: room, to, areaM2, discharge }] : [])

/** A branch with its figures taken in: a loss by its own id, the fan by those of the motor and the fan. */
const scaled = (branch: AirBranch, figures: AirFigures): AirBranch => {
  switch (branch.kind) {
    case 'loss': {
      const by = figures[branch.id] ?? 1
      return {
        ...branch,
        linearPaSPerM3: branch.linearPaSPerM3 * by,
        quadraticPaS2PerM6: branch.quadraticPaS2PerM6 * by,
      }
    }
    case 'fan':
      return { ...branch, speed: figures[speedId] ?? 1, pressure: figures[pressureId] ?? 1 }
    case 'hole':
      return branch
  }
}
