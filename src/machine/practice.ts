import { mixSeed } from '../base/mix-seed.ts'
import { seededRandom, type Random } from '../base/random.ts'
import type { Blueprint, GradedCheck, MeterCheck } from '../blueprint/schema.ts'
import { sampleOhmReading } from '../engines/belief/index.ts'
import { complaintIds, type Complaint } from '../facts/complaints.ts'
import { meterSpec } from '../facts/meters.ts'
import type { Job } from './job.ts'
import { meterLikelihood } from './meter-outcome.ts'
import { readInState } from './meter-table.ts'
import { machineModel, type MachineModel } from './model.ts'
import type { Plate } from './plate.ts'
import type { ReadingResult } from './result.ts'
import { wattBands } from './scale.ts'
import { suspectWithout } from './suspects.ts'

/** The hidden truth of a virtual machine: drawn from the blueprint's priors among machines that give cause for complaint. */
export type HiddenTruth = { readonly suspect: number; readonly complaints: readonly Complaint[] }

/** Most draws before a machine without complaint is accepted as it is. */
const mostDraws = 200

/** Draws the hidden faults and what the seller would say. The same blueprint, plate and seed give the same machine. */
export const hiddenTruth = (model: MachineModel, seed: number): HiddenTruth => {
  const random = seededRandom(seed)
  for (let draw = 0; draw < mostDraws; draw++) {
    const suspect = random.index(model.prior)
    const complaints = drawComplaints(model, suspect, random)
    if (complaints.length > 0) return { suspect, complaints }
  }
  return { suspect: 0, complaints: ['dead'] }
}

const drawComplaints = (model: MachineModel, suspect: number, random: Random): readonly Complaint[] => {
  const set = model.sets[suspect]
  const made = complaintIds.filter((id) =>
    set.some((f) => random.uniform() < (model.blueprint.faults[f].complaints[id] ?? 0)),
  )
  return made.includes('dead') ? ['dead'] : made
}

/** What the seller of the virtual machine complains of. */
export const virtualComplaints = (blueprint: Blueprint, plate: Plate, seed: number): readonly Complaint[] =>
  hiddenTruth(machineModel(blueprint, plate), seed).complaints

/** The suspect that is true now: the hidden one less what the repairs in the job have removed, each drawn with its chance of success. */
export const truthNow = (model: MachineModel, job: Job, seed: number): number => {
  let suspect = hiddenTruth(model, seed).suspect
  job.events.forEach((event, at) => {
    if (event.kind !== 'repaired') return
    const repair = model.blueprint.repairs.find((r) => r.id === event.repair)
    const option = repair?.options.find((o) => o.id === event.option)
    if (repair === undefined || option === undefined) return
    const luck = seededRandom(mixSeed(seed, `${event.repair} ${at}`)).uniform()
    if (luck < option.success) suspect = suspectWithout(model, suspect, repair.removes)
  })
  return suspect
}

/**
 * What a check shows on the virtual machine now. Readings come from the network of the hidden truth with the parts' own
 * values drawn once for the machine, and the meter's noise. The same check on an unchanged machine reads the same.
 */
export const virtualResult = (job: Job, seed: number, checkId: string): ReadingResult => {
  const model = machineModel(job.blueprint, job.plate)
  const repairs = job.events.filter((event) => event.kind === 'repaired').length
  return resultUnder(model, truthNow(model, job, seed), seed, checkId, repairs)
}

/**
 * What a check shows on a machine with these faults (a suspect of the model).
 * @param turn which time the check is made: the same turn reads the same
 */
export const resultUnder = (
  model: MachineModel,
  suspect: number,
  seed: number,
  checkId: string,
  turn: number,
): ReadingResult => {
  const check = model.blueprint.checks.find((c) => c.id === checkId)
  if (check === undefined) throw new Error(`no check ${checkId}`)
  const random = seededRandom(mixSeed(seed, `${checkId} ${turn}`))
  return check.kind === 'meter'
    ? meterResult(model, check, suspect, seed, random)
    : gradeResult(model, check, suspect, random)
}

const practiceMeter = 'budget-multimeter'

const meterResult = (
  model: MachineModel,
  check: MeterCheck,
  suspect: number,
  seed: number,
  random: Random,
): ReadingResult => {
  const row = model.meter.checks.findIndex((c) => c.id === check.id)
  const prediction = model.predict(row, model.electrical.mixOf[suspect])
  if (random.uniform() < meterLikelihood(meterSpec(practiceMeter), prediction, { kind: 'jumps' }))
    return { kind: 'jumps' }
  const { state, charging, showsCapacitor } = prediction.states[random.index(prediction.states.map((s) => s.share))]
  // The virtual meter never mistakes one thing for another; whether a climb is noticed is chance.
  if (showsCapacitor) return random.uniform() < charging ? { kind: 'charging' } : { kind: 'open' }
  const resistanceOhm = ownReading(model, check, state, seed)
  return sampleOhmReading(meterSpec(practiceMeter), { resistanceOhm, sdOhm: 0 }, random)
}

/** What this one machine reads: every part has a value of its own, drawn once from the spread of such parts. */
const ownReading = (model: MachineModel, check: MeterCheck, state: number, seed: number): number =>
  readInState(model.blueprint, model.plate, check, model.electrical.states[state], (element, spread) =>
    Math.exp(spread * seededRandom(mixSeed(seed, element)).normal()),
  )

const gradeResult = (model: MachineModel, check: GradedCheck, suspect: number, random: Random): ReadingResult => {
  const row = model.graded(check, suspect)
  const outcome = check.outcomes[random.index(row)].id
  return check.scale === undefined
    ? { kind: 'grade', outcome }
    : { kind: 'grade', outcome, watts: drawWatts(check.scale, outcome, model.plate.powerW, random) }
}

/** A number of watts somewhere in the band of its outcome; past the last edge, up to half as much again. */
const drawWatts = (
  scale: NonNullable<GradedCheck['scale']>,
  outcome: string,
  powerW: number,
  random: Random,
): number => {
  const band = wattBands(scale, powerW).find((one) => one.outcome === outcome)
  if (band === undefined) return 0
  const [low, high] = [Math.ceil(band.fromW), Math.ceil(band.toW ?? 1.5 * band.fromW)]
  return low + Math.floor(random.uniform() * Math.max(1, high - low))
}
