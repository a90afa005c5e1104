import { removedIndex, updateBelief, type Belief, type BeliefEvent } from '../engines/belief/index.ts'
import type { Complaint } from '../facts/complaints.ts'
import { meterSpec } from '../facts/meters.ts'
import { complaintLikelihood } from './complaint-likelihood.ts'
import { airEvidence, airMachineOfModel, suspectLikelihood, suspectsInAir } from './air/air-evidence.ts'
import { isWayOf } from './air/air-fit.ts'
import { airSetsOf } from './air/air-sets.ts'
import { toldPieces } from './buying/seller-evidence.ts'
import { triedEvidence } from './functions/tried-evidence.ts'
import type { Job, JobEvent } from './job.ts'
import { meterLikelihood, meterSlipLikelihood } from './meter-outcome.ts'
import type { MachineModel } from './model.ts'

/** Probability that a reading of each kind is a slip of hand or eye; tables of looks hold misjudging already. Judgement. */
export const slips = { meter: 0.02, graded: 0.005, confirmed: 0.005, gauge: 0.02 } as const

/** How likely a set of gauge readings is when the rig itself leaks or a hole was mistaken, over the best explanation. Judgement. */
const slippedGauge = 0.02

/**
 * What may be wrong, given all that is in the job: prior from the blueprint's fault rates, the complaint as an imperfect
 * test, what the seller claimed and answered, then readings and repairs in the order they happened.
 */
export const suspectBelief = (model: MachineModel, job: Job): Belief => {
  const prior = complaintPrior(model, job.complaints)
  const told = toldPieces(model, prior, job).map(({ event }) => event)
  const history = job.events.flatMap((event) => beliefEvent(model, job, event))
  return updateBelief({ format: 'thrum-belief-1', prior: [...prior], history: [...told, ...history] })
}

/** Prior weights after the seller's complaint. */
export const complaintPrior = (model: MachineModel, complaints: readonly Complaint[]): readonly number[] => {
  if (complaints.length === 0) return [...model.prior]
  const likelihood = complaintLikelihood(model.blueprint, model.sets, complaints)
  return likelihood.map((value, s) => value * model.prior[s])
}

/** What an event says of the suspects: readings and repairs for the belief engine; none for what says nothing. */
export const beliefEvent = (model: MachineModel, job: Job, event: JobEvent): readonly BeliefEvent[] => {
  switch (event.kind) {
    case 'reading':
      return readingEvent(model, event)
    case 'repaired':
      return repairEvent(model, event)
    case 'confirmed':
      return confirmedEvent(model, event)
    case 'seen':
      return seenEvent(model, job, event)
    case 'gauge':
      return gaugeEvent(model, job.events, event)
    case 'tried':
      return triedEvent(model, event)
    case 'opened':
    case 'closed':
    case 'taken-out':
    case 'put-in':
    case 'proof':
      return []
  }
}

/** What the gauge readings of one state of the machine say together: it counts at the last of them, the others add nothing of their own. */
const gaugeEvent = (
  model: MachineModel,
  events: readonly JobEvent[],
  event: JobEvent & { kind: 'gauge' },
): readonly BeliefEvent[] => {
  const set = airSetsOf(events).find(({ readings }) => readings.at(-1)?.note === event.note)
  const machine = set === undefined ? null : airMachineOfModel(model)
  if (set === undefined || machine === null) return []
  const readings = set.readings.filter(({ reading }) => isWayOf(machine, reading))
  if (readings.length === 0) return []
  const evidence = airEvidence(machine, model.plate.voltageV, readings)
  const likelihood = suspectLikelihood(suspectsInAir(model, machine), evidence)
  return [{ kind: 'reading', id: event.note, likelihood, slip: slips.gauge, slipLikelihood: slippedGauge }]
}

const readingEvent = (model: MachineModel, event: JobEvent & { kind: 'reading' }): readonly BeliefEvent[] => {
  if (event.result.kind === 'cannot-tell') return []
  const row = model.meter.checks.findIndex((check) => check.id === event.check)
  const likelihood = row >= 0 ? meterRow(model, row, event) : gradedRow(model, event)
  if (likelihood === null) return []
  const isMeter = row >= 0
  return [
    {
      kind: 'reading',
      id: event.note,
      likelihood,
      slip: isMeter ? slips.meter : slips.graded,
      slipLikelihood: isMeter
        ? meterSlipLikelihood(meterSpec(event.instrument), event.result)
        : 1 / gradeCount(model, event.check),
    },
  ]
}

const meterRow = (model: MachineModel, row: number, event: JobEvent & { kind: 'reading' }): number[] => {
  const spec = meterSpec(event.instrument)
  const { mixes, mixOf } = model.electrical
  const byMix = mixes.map((_, mix) => meterLikelihood(spec, model.predict(row, mix), event.result))
  return Array.from(mixOf, (mix) => byMix[mix])
}

const gradedRow = (model: MachineModel, event: JobEvent & { kind: 'reading' }): number[] | null => {
  const check = model.blueprint.checks.find((c) => c.id === event.check)
  if (check === undefined || check.kind === 'meter' || event.result.kind !== 'grade') return null
  const { outcome } = event.result
  const column = check.outcomes.findIndex((o) => o.id === outcome)
  if (column < 0) return null
  return model.sets.map((_, s) => model.graded(check, s)[column])
}

/** A trial of a function weighs as a reading of its check would, good and bad the only two grades. */
const triedEvent = (model: MachineModel, event: JobEvent & { kind: 'tried' }): readonly BeliefEvent[] => {
  const evidence = triedEvidence(model.blueprint, event.function, event.result)
  if (evidence === null) return []
  const likelihood = model.sets.map((_, s) => evidence.likelihoodOf(model.graded(evidence.check, s)))
  return [{ kind: 'reading', id: event.note, likelihood, slip: slips.graded, slipLikelihood: 1 / 2 }]
}

const gradeCount = (model: MachineModel, id: string): number => {
  const check = model.blueprint.checks.find((c) => c.id === id)
  return check === undefined || check.kind === 'meter' ? 2 : check.outcomes.length
}

const repairEvent = (model: MachineModel, event: JobEvent & { kind: 'repaired' }): readonly BeliefEvent[] => {
  const repair = model.blueprint.repairs.find((r) => r.id === event.repair)
  const option = repair?.options.find((o) => o.id === event.option)
  if (repair === undefined || option === undefined) return []
  return [{ kind: 'change', id: event.note, becomes: becomesAfter(model, repair.removes), success: option.success }]
}

/** For each suspect, the suspect that is left when these faults are gone. */
export const becomesAfter = (model: MachineModel, removes: readonly string[]): number[] => {
  const wanted = new Set(removes)
  const indices = new Set(model.blueprint.faults.flatMap((fault, i) => (wanted.has(fault.id) ? [i] : [])))
  return removedIndex(model.sets, indices)
}

/** The suspect that is left of this one when these faults are gone. */
export const suspectWithout = (
  { sets, blueprint }: MachineModel,
  suspect: number,
  removes: readonly string[],
): number => {
  const left = sets[suspect].filter((fault) => !removes.includes(blueprint.faults[fault].id))
  return sets.findIndex((set) => set.length === left.length && set.every((fault, i) => fault === left[i]))
}

/** A fault that this blueprint does not know, confirmed when the machine was read by another, says nothing here. */
const confirmedEvent = (model: MachineModel, event: JobEvent & { kind: 'confirmed' }): readonly BeliefEvent[] => {
  const index = model.blueprint.faults.findIndex((fault) => fault.id === event.fault)
  if (index < 0) return []
  const likelihood = model.sets.map((set) => (set.includes(index) ? 1 : 0))
  return [{ kind: 'reading', id: event.note, likelihood, slip: slips.confirmed, slipLikelihood: 0.02 }]
}

/** What was seen on the bench counts where the seller had not already said it: the same symptom twice is one piece of evidence. */
const seenEvent = (model: MachineModel, job: Job, event: JobEvent & { kind: 'seen' }): readonly BeliefEvent[] => {
  const fresh = event.complaints.filter((complaint) => !job.complaints.includes(complaint))
  if (fresh.length === 0) return []
  const likelihood = complaintLikelihood(model.blueprint, model.sets, fresh)
  return [{ kind: 'reading', id: event.note, likelihood, slip: slips.graded, slipLikelihood: 0.05 }]
}
