import type { MeterCheck } from '../../blueprint/schema.ts'
import type { PlanProblem } from '../../engines/plan/index.ts'
import { meterSpec } from '../../facts/meters.ts'
import { bandProbabilities, bandsOf, type Band } from '../bands.ts'
import type { MachineModel } from '../model.ts'
import { passesGate } from '../running.ts'
import { gives, takes } from './plan-marks.ts'
import { mayFailWhenSound } from './times-made.ts'
import { withCannotTell } from './with-cannot-tell.ts'

/** The meter that readings are foretold for. */
const planningMeter = 'budget-multimeter'

type Outcomes = Pick<PlanProblem['checks'][number], 'outcomes' | 'likelihood'>

/**
 * What a meter check may read, as bands that tell suspects apart, and how likely each is under each suspect.
 * @param bands filled in with the bands of this check
 */
export const meterOutcomes = (
  model: MachineModel,
  check: MeterCheck,
  kept: readonly number[],
  shares: readonly number[],
  bands: Map<string, readonly Band[]>,
): Outcomes => {
  const spec = meterSpec(planningMeter)
  const row = model.meter.checks.findIndex((c) => c.id === check.id)
  const mixes = kept.map((s) => model.electrical.mixOf[s])
  const of = cutAtGate(check, bandsOf(weightedPredictions(model, row, mixes, shares)))
  bands.set(check.id, of)
  const passing = of.map((band) => bandPasses(check, band))
  return {
    outcomes: [
      ...of.map((band, i) => ({
        id: band.id,
        gives: gives(check, passing[i], false),
        takes: takes(check, passing[i], false),
        again: mayFailWhenSound(model, check, band.id, passing[i]),
      })),
      { id: 'jumps', gives: [], takes: takes(check, false, false), again: true },
      { id: 'cannot-tell', gives: [], takes: [], again: true },
    ],
    likelihood: rowsByMix(mixes, (mix) => {
      const prediction = model.predict(row, mix)
      return withCannotTell(check, [...bandProbabilities(spec, of, prediction), prediction.jumps])
    }),
  }
}

const weightedPredictions = (model: MachineModel, row: number, mixes: readonly number[], shares: readonly number[]) => {
  const weight = new Map<number, number>()
  mixes.forEach((mix, i) => weight.set(mix, (weight.get(mix) ?? 0) + shares[i]))
  return [...weight].map(([mix, total]) => ({ prediction: model.predict(row, mix), weight: total }))
}

/** One row for all suspects that look alike to the circuit. */
const rowsByMix = (mixes: readonly number[], make: (mix: number) => number[]): number[][] => {
  const known = new Map<number, number[]>()
  return mixes.map((mix) => {
    const row = known.get(mix) ?? make(mix)
    known.set(mix, row)
    return row
  })
}

/** A band never straddles the limit of a check before running: passing and failing are different outcomes. */
const cutAtGate = (check: MeterCheck, bands: readonly Band[]): readonly Band[] => {
  const limits = [check.passesAtLeastOhm, check.passesAtMostOhm].filter((limit) => limit !== undefined)
  return limits.reduce(
    (list, limit) =>
      list.flatMap((band) =>
        'lowOhm' in band && band.lowOhm < limit && limit < band.highOhm
          ? [
              { ...band, id: `${band.id}-low`, highOhm: limit, toOhm: Math.min(band.toOhm, limit) },
              { ...band, id: `${band.id}-high`, lowOhm: limit, fromOhm: Math.max(band.fromOhm, limit) },
            ]
          : [band],
      ),
    bands,
  )
}

const bandPasses = (check: MeterCheck, band: Band): boolean => {
  const resistanceOhm =
    'lowOhm' in band
      ? check.passesAtLeastOhm !== undefined
        ? band.lowOhm
        : Math.min(band.highOhm, Number.MAX_VALUE)
      : Infinity
  return passesGate(check, Number.isFinite(resistanceOhm) ? { kind: 'ohms', resistanceOhm } : { kind: 'open' }) === true
}
