import type { GradedCheck, MeterCheck } from '../blueprint/schema.ts'
import type { Band } from './bands.ts'
import type { Job, JobEvent } from './job.ts'
import { machineView } from './machine-view.ts'
import { machineModel, type MachineModel } from './model.ts'
import { planProblem, type JobPlan } from './planning/plan-problem.ts'
import type { ReadingResult } from './result.ts'
import { instrumentFor } from './scale.ts'
import { repairCostMinor } from './shelf/repair-cost.ts'
import { suspectBelief } from './suspects.ts'
import { undertakingOf, type Undertaking } from './undertaking.ts'
import type { ExitId, MachineView, MoveView } from './view.ts'
import { bandName } from './why.ts'

/** An undertaking and what came of it; a repair that was done has no result of its own. */
export type UnfoldStep = { readonly move: Undertaking; readonly result: ReadingResult | null }

/** One result that may come out. */
export type PossibleResult = {
  readonly id: string
  /** `reads 4 to 13 Ω`, `jumps when moved`, a grade's name, or `done` for a repair. */
  readonly text: string
  /** Given that the check tells anything. */
  readonly probability: number
  /** What would be entered: for a band of ohms the reading in the middle of what the suspects predict there. */
  readonly result: ReadingResult | null
}

export type PossibleResults = {
  /** Likeliest first. */
  readonly results: readonly PossibleResult[]
  /** Probability of all the results that are too unlikely to be looked at one by one. */
  readonly lessLikely: number
}

/** What is said once a result is in: the next move, and whether it is to stop. */
export type Onward = {
  readonly name: string
  /** What to undertake next; null when the next move is an exit. */
  readonly move: Undertaking | null
  readonly minutes: number
  /** Expected money from there on, minor units. */
  readonly expectedMinor: number
  readonly stop: Stop | null
}

/** A reason to stop: how much more the exit brings than the best check or repair; null when none is left. */
export type Stop = { readonly exit: ExitId; readonly moreMinor: number | null }

/** Results less likely than this are summed up. */
const leastShown = 0.02
const planningMeter = 'budget-multimeter'
const unread = 'cannot-tell'

/**
 * What may come of a check, by the bands and grades that the plan uses, "could not tell" left out: the probabilities and
 * `lessLikely` sum to 1. A repair has one result: that it was done. Of a check the blueprint does not know, nothing.
 */
export const possibleResults = (job: Job, move: Undertaking): PossibleResults => {
  if (move.kind === 'repair')
    return { results: [{ id: 'done', text: 'done', probability: 1, result: null }], lessLikely: 0 }
  const check = job.blueprint.checks.find(({ id }) => id === move.id)
  if (check === undefined) return { results: [], lessLikely: 0 }
  const model = machineModel(job.blueprint, job.plate, job.history)
  const plan = planProblem(model, job, suspectBelief(model, job).probability)
  const told = outcomeChances(plan, check.id).filter(({ id }) => id !== unread)
  const total = told.reduce((sum, { chance }) => sum + chance, 0)
  const known = told.map(({ id, chance }) => ({ id, probability: chance / total }))
  const shown = known.filter(({ probability }) => probability >= leastShown)
  const worded = check.kind === 'meter' ? meterResult(model, plan, check) : gradeResult(check)
  return {
    results: shown
      .toSorted((a, b) => b.probability - a.probability)
      .map(({ id, probability }) => ({ id, probability, ...worded(id) })),
    lessLikely: known.reduce((sum, { probability }) => sum + (probability < leastShown ? probability : 0), 0),
  }
}

const outcomeChances = (
  { problem }: JobPlan,
  id: string,
): readonly { readonly id: string; readonly chance: number }[] => {
  const { outcomes, likelihood } = problem.checks.find((check) => check.id === id)!
  return outcomes.map((outcome, column) => ({
    id: outcome.id,
    chance: problem.suspects.reduce((sum, { probability }, s) => sum + probability * likelihood[s][column], 0),
  }))
}

type Worded = Pick<PossibleResult, 'text' | 'result'>

const gradeResult =
  (check: GradedCheck) =>
  (id: string): Worded => ({
    text: check.outcomes.find((outcome) => outcome.id === id)?.name ?? id,
    result: { kind: 'grade', outcome: id },
  })

const meterResult =
  (model: MachineModel, plan: JobPlan, check: MeterCheck) =>
  (id: string): Worded => {
    if (id === 'jumps') return { text: 'jumps when moved', result: { kind: 'jumps' } }
    const band = plan.bands.get(check.id)!.find((one) => one.id === id)!
    if (!('lowOhm' in band))
      return band.id === 'open'
        ? { text: 'reads open', result: { kind: 'open' } }
        : { text: bandName(band), result: { kind: 'charging' } }
    return {
      text: `reads ${bandName(band)}`,
      result: { kind: 'ohms', resistanceOhm: middleReading(band, predictedOhms(model, plan, check)) },
    }
  }

type Weighted = { readonly resistanceOhm: number; readonly weight: number }

const predictedOhms = (model: MachineModel, { problem, kept }: JobPlan, check: MeterCheck): readonly Weighted[] => {
  const row = model.meter.checks.findIndex(({ id }) => id === check.id)
  return kept.flatMap((s, i) =>
    model.predict(row, model.electrical.mixOf[s]).states.map(({ predicted, share }) => ({
      resistanceOhm: predicted.resistanceOhm,
      weight: problem.suspects[i].probability * share,
    })),
  )
}

/** Where the scale of a band without an end is taken to end: the reach of a cheap meter, ohm. */
const reachOhm = 20e6

/** The weighted median of the predictions in the band; where none lies in it, its middle on a logarithmic scale. */
const middleReading = (band: Extract<Band, { lowOhm: number }>, predicted: readonly Weighted[]): number => {
  const inside = predicted
    .filter(({ resistanceOhm }) => resistanceOhm >= band.lowOhm && resistanceOhm < band.highOhm)
    .toSorted((a, b) => a.resistanceOhm - b.resistanceOhm)
  const half = inside.reduce((sum, { weight }) => sum + weight, 0) / 2
  let sum = 0
  for (const { resistanceOhm, weight } of inside) {
    sum += weight
    if (sum >= half && half > 0) return resistanceOhm
  }
  return Math.sqrt(Math.max(band.lowOhm, 1) * Math.max(Math.min(band.highOhm, reachOhm), 1))
}

/** The job as its notes would make it once this step is noted: covers put back, covers taken off, then the result. */
export const jobAfter = (job: Job, { move, result }: UnfoldStep): Job => {
  const note = (index: number): string => `then ${job.events.length + index}`
  const covers: readonly JobEvent[] = [
    ...move.close.map((cover) => ({ kind: 'closed' as const, cover })),
    ...move.open.map((cover) => ({ kind: 'opened' as const, cover })),
  ].map((event, index) => ({ ...event, note: note(index) }))
  const off = [...job.off.filter((cover) => !move.close.includes(cover)), ...move.open]
  const last = outcomeEvent(job, move, result, note(covers.length))
  const putInMinor = (job.putInMinor ?? 0) + costOf(job, move)
  return { ...job, off: [...new Set(off)], events: [...job.events, ...covers, last], putInMinor }
}

/** What a repair is expected to cost; it is noted with it. Nothing for a check. */
const costOf = (job: Job, { kind, id }: Undertaking): number => {
  if (kind === 'check') return 0
  const [repairId, option] = id.split(':')
  const repair = job.blueprint.repairs.find((one) => one.id === repairId)
  const way = repair?.options.find((one) => one.id === option)
  return repair === undefined || way === undefined ? 0 : repairCostMinor(job, repair, way)
}

const outcomeEvent = (job: Job, move: Undertaking, result: ReadingResult | null, note: string): JobEvent => {
  if (move.kind === 'repair') {
    const [repair = '', option = ''] = move.id.split(':')
    return { kind: 'repaired', note, repair, option }
  }
  const check = job.blueprint.checks.find(({ id }) => id === move.id)
  const instrument = (check === undefined ? undefined : instrumentFor(check)) ?? planningMeter
  return { kind: 'reading', note, check: move.id, result: result ?? { kind: 'cannot-tell' }, instrument }
}

/** What is said after these steps: exactly what the page says once they are noted. Takes as long as a view. */
export const onwardAfter = (job: Job, steps: readonly UnfoldStep[]): Onward =>
  onwardOf(machineView(steps.reduce(jobAfter, job)))

/** A view's next move, and whether it is to stop. */
export const onwardOf = ({ next, others }: Pick<MachineView, 'next' | 'others'>): Onward => ({
  name: next.kind === 'repair' ? `${next.name}: ${next.optionName}` : next.name,
  move: undertakingOf(next),
  minutes: next.minutes,
  expectedMinor: next.expectedMinor,
  stop: next.kind === 'exit' ? { exit: next.exit, moreMinor: moreThan(next.expectedMinor, others) } : null,
})

const moreThan = (exitMinor: number, others: readonly MoveView[]): number | null => {
  const goingOn = others.filter(({ kind }) => kind !== 'exit').map(({ expectedMinor }) => expectedMinor)
  return goingOn.length === 0 ? null : exitMinor - Math.max(...goingOn)
}
