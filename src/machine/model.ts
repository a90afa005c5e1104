import type { Blueprint, GradedCheck } from '../blueprint/schema.ts'
import { independentPrior, suspectSets } from '../engines/belief/index.ts'
import { driveTable, type DriveTable } from './drive-table.ts'
import { electricalStates, type ElectricalStates } from './electrical-state.ts'
import { gradedOutcomes } from './graded-outcome.ts'
import { predictMeter, type MeterPrediction } from './meter-outcome.ts'
import { meterTable, type MeterTable } from './meter-table.ts'
import type { Plate } from './plate.ts'
import { faultRates, type FaultRate, type History } from './blueprint-rates.ts'

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
  /** What suspects of a mix would show on a meter check, by its row in the table. */
  readonly predict: (row: number, mix: number) => MeterPrediction
  /** Probability of each outcome of a graded check under a suspect, in the order of its outcomes. */
  readonly graded: (check: GradedCheck, suspect: number) => Float64Array
}

/** Single and double faults are told apart; three at once would show as readings that nothing explains. */
const mostFaults = 2

const kept = new WeakMap<Blueprint, Map<string, MachineModel>>()

/**
 * The model of a blueprint under a plate, with what is known of the machine's life. The same blueprint object, plate and
 * history give the same model; history changes the prior and nothing else.
 */
export const machineModel = (blueprint: Blueprint, plate: Plate, history: History = {}): MachineModel => {
  const byPlate = kept.get(blueprint) ?? new Map<string, MachineModel>()
  kept.set(blueprint, byPlate)
  const key = `${plate.voltageV} ${plate.frequencyHz} ${plate.powerW} ${history.ageYears ?? ''} ${history.wear ?? ''}`
  const known = byPlate.get(key)
  if (known !== undefined) return known
  const isPlain = history.ageYears === undefined && history.wear === undefined
  const model = isPlain ? makeModel(blueprint, plate) : withHistory(machineModel(blueprint, plate), history)
  byPlate.set(key, model)
  return model
}

const withHistory = (model: MachineModel, history: History): MachineModel => {
  const rates = faultRates(model.blueprint, history)
  return { ...model, rates, prior: priorOf(model.sets, rates) }
}

const priorOf = (sets: MachineModel['sets'], rates: readonly FaultRate[]): Float64Array =>
  independentPrior(
    sets,
    Float64Array.from(rates, (r) => r.rate),
  )

const makeModel = (blueprint: Blueprint, plate: Plate): MachineModel => {
  const sets = suspectSets(blueprint.faults, mostFaults)
  const rates = faultRates(blueprint)
  const prior = priorOf(sets, rates)
  const electrical = electricalStates(blueprint, sets)
  const meter = meterTable(blueprint, plate, electrical.states)
  const drive = driveTable(blueprint, plate, electrical.states)
  const graded = gradedRows(blueprint, sets, electrical, drive)
  return {
    blueprint,
    plate,
    sets,
    rates,
    prior,
    electrical,
    meter,
    predict: predictions(blueprint, meter, electrical),
    graded,
  }
}

const predictions = (
  blueprint: Blueprint,
  meter: MeterTable,
  electrical: ElectricalStates,
): MachineModel['predict'] => {
  const kept: (MeterPrediction | undefined)[] = []
  const width = electrical.mixes.length
  return (row, mix) => (kept[row * width + mix] ??= predictMeter(blueprint, meter, row, electrical.mixes[mix]))
}

const gradedRows = (
  blueprint: Blueprint,
  sets: readonly (readonly number[])[],
  electrical: ElectricalStates,
  drive: DriveTable,
): MachineModel['graded'] => {
  const makers = new Map<string, { make: ReturnType<typeof gradedOutcomes>; rows: (Float64Array | undefined)[] }>()
  return (check, suspect) => {
    let kept = makers.get(check.id)
    if (kept === undefined) {
      kept = { make: gradedOutcomes(blueprint, check, drive), rows: [] }
      makers.set(check.id, kept)
    }
    return (kept.rows[suspect] ??= kept.make(sets[suspect], electrical.mixes[electrical.mixOf[suspect]]))
  }
}
