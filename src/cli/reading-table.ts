import type { Blueprint } from '../blueprint/schema.ts'
import { machineModel, resultText } from '../machine/index.ts'
import type { Plate } from '../machine/plate.ts'

/** One meter check of a blueprint and what a sound machine reads, for comparing with a table in a book. */
export type HealthyReading = {
  readonly check: string
  readonly name: string
  readonly resistanceOhm: number | null
  readonly sdOhm: number
  readonly text: string
}

/** What a sound machine of this blueprint reads at every meter check. `resistanceOhm` is null where it reads open. */
export const healthyReadings = (blueprint: Blueprint, plate: Plate): readonly HealthyReading[] => {
  const model = machineModel(blueprint, plate)
  const { meter } = model
  return meter.checks.map((check, row) => {
    const resistanceOhm = meter.resistanceOhm[row * meter.stateCount]
    return {
      check: check.id,
      name: check.name,
      resistanceOhm: Number.isFinite(resistanceOhm) ? resistanceOhm : null,
      sdOhm: meter.sdOhm[row * meter.stateCount],
      text: resultText(model, check, 0),
    }
  })
}
