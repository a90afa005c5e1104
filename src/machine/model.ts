import type { Blueprint } from '../blueprint/schema.ts'
import { independentPrior, suspectSets } from '../engines/belief/index.ts'
import { driveTable, type DriveTable } from './drive-table.ts'
import { electricalStates, type ElectricalStates } from './electrical-state.ts'
import { gradedProbabilities } from './graded-outcome.ts'
import { meterTable, type MeterTable } from './meter-table.ts'
import type { Plate } from './plate.ts'
import { faultRates, type FaultRate } from './rates.ts'

/** All that follows from a blueprint and a plate alone, before a single reading: worked out once and kept. */
export type MachineModel = {
  readonly blueprint: Blueprint
  readonly plate: Plate
  /** Suspects: sets of fault indices; the empty set, "nothing wrong", is first. */
  readonly sets: readonly (readonly number[])[]
  readonly rates: readonly FaultRate[]
  readonly prior: Float64Array
  readonly electrical: ElectricalStates
  readonly meter: MeterTable
  readonly drive: DriveTable
  /** For a graded check: row-major suspect × outcome. */
  readonly graded: (check: string) => Float64Array
}

/** Single and double faults are told apart; three at once would show as readings that nothing explains. */
const mostFaults = 2

const kept = new WeakMap<Blueprint, Map<string, MachineModel>>()

/** The model of a blueprint under a plate. The same blueprint object and plate give the same model. */
export const machineModel = (blueprint: Blueprint, plate: Plate): MachineModel => {
  const byPlate = kept.get(blueprint) ?? new Map<string, MachineModel>()
  kept.set(blueprint, byPlate)
  const key = `${plate.voltageV} ${plate.frequencyHz} ${plate.powerW}`
  const known = byPlate.get(key)
  if (known !== undefined) return known
  const model = makeModel(blueprint, plate)
  byPlate.set(key, model)
  return model
}

const makeModel = (blueprint: Blueprint, plate: Plate): MachineModel => {
  const sets = suspectSets(blueprint.faults, mostFaults)
  const rates = faultRates(blueprint)
  const prior = independentPrior(sets, Float64Array.from(rates, (r) => r.rate))
  const electrical = electricalStates(blueprint, sets)
  const meter = meterTable(blueprint, plate, electrical.states)
  const drive = driveTable(blueprint, plate, electrical.states)
  const graded = gradedTables(blueprint, sets, electrical, drive)
  return { blueprint, plate, sets, rates, prior, electrical, meter, drive, graded }
}

const gradedTables = (
  blueprint: Blueprint,
  sets: readonly (readonly number[])[],
  electrical: ElectricalStates,
  drive: DriveTable,
): ((check: string) => Float64Array) => {
  const tables = new Map<string, Float64Array>()
  return (id) => {
    const known = tables.get(id)
    if (known !== undefined) return known
    const check = blueprint.checks.find((c) => c.id === id)
    if (check === undefined || check.kind === 'meter') throw new Error(`no graded check ${id}`)
    const width = check.outcomes.length
    const table = new Float64Array(sets.length * width)
    sets.forEach((set, s) => table.set(gradedProbabilities(blueprint, check, set, electrical.mixes[s]!, drive), s * width))
    tables.set(id, table)
    return table
  }
}
