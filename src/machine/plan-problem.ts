import type { Blueprint, Check, GradedCheck, MeterCheck, Repair } from '../blueprint/schema.ts'
import type { PlanProblem } from '../engines/plan/index.ts'
import { meterSpec } from '../facts/meters.ts'
import { breakageShare, checkOverheadMin } from '../facts/trade.ts'
import { bandProbabilities, bandsOf, type Band } from './bands.ts'
import type { Job } from './job.ts'
import type { MachineModel } from './model.ts'
import { payoffs } from './payoff.ts'
import { workingPriceOf } from './prices.ts'
import { repairCostMinor } from './shelf/repair-cost.ts'
import {
  gatesOf,
  gateStates,
  isFirstRun,
  passesGate,
  redFlags,
  repairRenews,
  repairVoidsGate,
  runsMachine,
  shownWorking,
} from './running.ts'

/** The planning problem of a job, with what is needed to read its answer back. */
export type JobPlan = {
  readonly problem: PlanProblem
  /** Suspects of the problem, as indices into the model's sets. */
  readonly kept: readonly number[]
  readonly bands: ReadonlyMap<string, readonly Band[]>
}

/** Pairs of faults below this probability are not planned for one by one. */
const smallestPair = 1.5e-3
/** Most pairs that are planned for one by one: the likeliest. */
const mostPairs = 200
const workingMark = 'shown-working'
const gateMark = (check: string): string => `passed ${check}`
const planningMeter = 'budget-multimeter'

/** Puts a job to the planner: suspects, checks, repairs, covers and exits, in money. The rules of running are marks. */
export const planProblem = (model: MachineModel, job: Job, probability: Float64Array): JobPlan => {
  const { kept, shares } = keptSuspects(model, probability)
  const bands = new Map<string, readonly Band[]>()
  const { blueprint } = model
  const made = timesMade(model, job)
  const problem: PlanProblem = {
    format: 'thrum-plan-1',
    hourMinor: job.hourMinor,
    faults: blueprint.faults.map((fault) => fault.id),
    suspects: kept.map((s, i) => ({
      id: `s${s}`,
      faults: model.sets[s].map((f) => blueprint.faults[f].id),
      probability: shares[i],
    })),
    covers: blueprint.covers.map(({ id, openMin, closeMin, after }) => ({ id, openMin, closeMin, after })),
    off: [...job.off],
    marks: marksHeld(job),
    checks: blueprint.checks.map((check) => planCheck(model, job, check, kept, shares, bands, made.get(check.id) ?? 0)),
    repairs: neededRepairs(model, kept, shares).flatMap((repair) => planRepairs(job, repair)),
    exits: planExits(model, job, kept),
  }
  return { problem, kept, bands }
}

/**
 * Suspects the plan tells apart: nothing wrong, every single fault, and the likeliest pairs. An unlikely pair counts as the
 * likelier of its two faults alone, so that no probability is lost. Closed under repair, since every part of a pair is there.
 */
const keptSuspects = (
  model: MachineModel,
  probability: Float64Array,
): { kept: readonly number[]; shares: readonly number[] } => {
  const { sets } = model
  const pairs = sets.map((_, s) => s).filter((s) => sets[s].length > 1 && probability[s] >= smallestPair)
  const likeliest = new Set(pairs.toSorted((a, b) => probability[b] - probability[a]).slice(0, mostPairs))
  const kept = sets.map((_, s) => s).filter((s) => sets[s].length < 2 || likeliest.has(s))
  const place = new Map(kept.map((s, i) => [s, i]))
  const single = new Map(kept.filter((s) => sets[s].length === 1).map((s) => [sets[s][0], s]))
  const shares = new Array<number>(kept.length).fill(0)
  probability.forEach((p, s) => {
    const standsFor = place.has(s)
      ? s
      : likelierOf(
          sets[s].map((fault) => single.get(fault)!),
          probability,
        )
    const at = place.get(standsFor)!
    shares[at] = shares[at] + p
  })
  return { kept, shares }
}

const likelierOf = (suspects: readonly number[], probability: Float64Array): number =>
  suspects.reduce((best, s) => (probability[s] > probability[best] ? s : best))

/**
 * How often a check is made until a repair renews it: what says that the machine is sound or fit to run is made once more where
 * it failed by what a sound machine may show too, a poor touch of the probes or a scuff taken for a cut. Common practice of the
 * trade; that the second try errs independently of the first is a judgement.
 */
const timesWorthMaking = (check: Check): number => (!isFirstRun(check) && isRepeated(check) ? 2 : 1)

/** Whether a check may be made once more after a result: it failed as a sound machine may, and trying again does no harm. */
const mayFailWhenSound = (model: MachineModel, check: Check, outcome: string, passes: boolean): boolean => {
  if (check.kind === 'meter') return !passes
  const place = check.outcomes.findIndex(({ id }) => id === outcome)
  if (passes || place <= 0 || (runsMachine(check) && check.outcomes[place].danger)) return false
  return model.graded(check, soundSuspect(model))[place] > 0
}

const soundSuspect = (model: MachineModel): number => model.sets.findIndex((set) => set.length === 0)

/** How often each check has been made since the last repair that could have changed what it sees. */
const timesMade = (model: MachineModel, job: Job): ReadonlyMap<string, number> => {
  const made = new Map<string, number>()
  for (const event of job.events) {
    if (event.kind === 'reading') {
      const check = job.blueprint.checks.find((c) => c.id === event.check)
      if (check === undefined || (event.result.kind === 'cannot-tell' && isRepeated(check))) continue
      const times = timesWorthMaking(check)
      const outcome = event.result.kind === 'grade' ? event.result.outcome : ''
      const again = mayFailWhenSound(model, check, outcome, passesGate(check, event.result) === true)
      made.set(event.check, again ? (made.get(event.check) ?? 0) + 1 : times)
    }
    if (event.kind !== 'repaired') continue
    for (const { id } of job.blueprint.checks.filter((check) => repairRenews(job.blueprint, event.repair, check)))
      made.delete(id)
  }
  return made
}

/** Checks that are no gates and have shown danger that nothing has cleared yet. */
const flaggedChecks = (job: Job): readonly Check[] => {
  const flagged = new Set(redFlags(job).map((flag) => flag.note))
  const seen = new Set(
    job.events.flatMap((event) => (event.kind === 'reading' && flagged.has(event.note) ? [event.check] : [])),
  )
  return job.blueprint.checks.filter((check) => !check.beforeRunning && seen.has(check.id))
}

/** Given when a check that has shown danger is made again and shows none. */
const clearMark = (check: string): string => `no danger in ${check}`

const marksHeld = (job: Job): string[] => {
  const passed = [...gateStates(job)].filter(([, state]) => state === 'passed').map(([id]) => gateMark(id))
  return [...passed, ...(shownWorking(job) ? [workingMark] : [])]
}

/**
 * Marks that a check needs: its gates passed, and danger that was seen in other checks cleared. The short first run
 * does not wait for other run checks, since those wait for it.
 */
const marksNeeded = (job: Job, check: Check): string[] => {
  if (!runsMachine(check)) return []
  const gates = gatesOf(job.blueprint, check).map((gate) => gateMark(gate.id))
  const flagged = flaggedChecks(job).filter(
    (other) => other.id !== check.id && !(isFirstRun(check) && runsMachine(other)),
  )
  return [...gates, ...flagged.map((other) => clearMark(other.id))]
}

type PlanCheck = PlanProblem['checks'][number]

const planCheck = (
  model: MachineModel,
  job: Job,
  check: Check,
  kept: readonly number[],
  shares: readonly number[],
  bands: Map<string, readonly Band[]>,
  made: number,
): PlanCheck => {
  const common = {
    id: check.id,
    minutes: (check.minutes + checkOverheadMin.value) / (1 - (isRepeated(check) ? check.cannotTell : 0)),
    costMinor: check.costMinor,
    coversOff: coversFor(model.blueprint, check),
    allCoversOn: (runsMachine(check) || check.coversOn) && check.coversOff.length === 0,
    needs: marksNeeded(job, check),
    done: false,
    renewedByRepair: true,
    times: timesWorthMaking(check),
    made,
  }
  return check.kind === 'meter'
    ? { ...common, ...meterOutcomes(model, check, kept, shares, bands) }
    : { ...common, ...gradedOutcomes(model, check, kept) }
}

/** Covers that must be off for a check: its own and those its probe points are behind. */
export const coversFor = (blueprint: Blueprint, check: Check): string[] => {
  const points = check.kind === 'meter' ? [check.red, check.black] : []
  const behind = points.flatMap((id) => blueprint.points.find((point) => point.id === id)?.behind ?? [])
  return [...new Set([...check.coversOff, ...behind])]
}

/** A check that others wait for is made again until it tells: in the plan that costs a little more time and always tells. */
const isRepeated = (check: Check): boolean => isGate(check) || (check.kind !== 'meter' && check.provesWorking)

const withCannotTell = (check: Check, row: readonly number[]): number[] => {
  const cannotTell = isRepeated(check) ? 0 : check.cannotTell
  const sum = row.reduce((total, p) => total + p, 0)
  return [...row.map((p) => (p / sum) * (1 - cannotTell)), cannotTell]
}

const isGate = (check: Check): boolean => check.beforeRunning || isFirstRun(check)

const gives = (check: Check, passes: boolean, danger: boolean): string[] => [
  ...(isGate(check) && passes ? [gateMark(check.id)] : []),
  ...(check.beforeRunning || danger ? [] : [clearMark(check.id)]),
]

const takes = (check: Check, passes: boolean, danger: boolean): string[] => [
  ...(isGate(check) && !passes ? [gateMark(check.id)] : []),
  ...(!check.beforeRunning && danger ? [clearMark(check.id)] : []),
]

const meterOutcomes = (
  model: MachineModel,
  check: MeterCheck,
  kept: readonly number[],
  shares: readonly number[],
  bands: Map<string, readonly Band[]>,
): Pick<PlanCheck, 'outcomes' | 'likelihood'> => {
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

const gradedOutcomes = (
  model: MachineModel,
  check: GradedCheck,
  kept: readonly number[],
): Pick<PlanCheck, 'outcomes' | 'likelihood'> => {
  const outcomes = check.outcomes.map((outcome, i) => {
    const passes = passesGate(check, { kind: 'grade', outcome: outcome.id }) === true
    return {
      id: outcome.id,
      gives: [...gives(check, passes, outcome.danger), ...(check.provesWorking && i === 0 ? [workingMark] : [])],
      takes: [...takes(check, passes, outcome.danger), ...(check.provesWorking && i > 0 ? [workingMark] : [])],
      again: mayFailWhenSound(model, check, outcome.id, passes),
    }
  })
  return {
    outcomes: [...outcomes, { id: 'cannot-tell', gives: [], takes: [], again: true }],
    likelihood: kept.map((s) => withCannotTell(check, [...model.graded(check, s)])),
  }
}

/** A repair that is hardly needed is not planned for; it can be chosen all the same. */
const smallestNeed = 0.004

const neededRepairs = (model: MachineModel, kept: readonly number[], shares: readonly number[]): readonly Repair[] => {
  const chance = new Map<string, number>()
  kept.forEach((s, i) => {
    for (const f of model.sets[s]) {
      const { id } = model.blueprint.faults[f]
      chance.set(id, (chance.get(id) ?? 0) + shares[i])
    }
  })
  return model.blueprint.repairs.filter(
    (repair) => repair.removes.reduce((sum, id) => sum + (chance.get(id) ?? 0), 0) >= smallestNeed,
  )
}

/** Each way of doing a repair is a move of its own: `repair:option`. */
export const repairMoveId = (repair: string, option: string): string => `${repair}:${option}`

const planRepairs = (job: Job, repair: Repair): PlanProblem['repairs'] => {
  const { blueprint } = job
  const voided = blueprint.checks.filter((check) => isGate(check) && repairVoidsGate(blueprint, check, repair.id))
  const behind = blueprint.parts.find((part) => part.id === repair.part)?.behind
  return repair.options.map((option) => ({
    id: repairMoveId(repair.id, option.id),
    minutes: option.minutes,
    costMinor: repairCostMinor(job, repair, option),
    coversOff: [...new Set([...repair.coversOff, ...(behind === undefined ? [] : [behind])])],
    needs: [],
    removes: [...repair.removes],
    success: option.success,
    breakRisk: option.breakRisk,
    breakCostMinor: Math.round(breakageShare.value * workingPriceOf(job).minor),
    takes: [workingMark, ...voided.map((check) => gateMark(check.id))],
    renews: blueprint.checks.filter((check) => repairRenews(blueprint, repair.id, check)).map((check) => check.id),
    done: false,
  }))
}

const planExits = (model: MachineModel, job: Job, kept: readonly number[]): PlanProblem['exits'] => {
  const rows = kept.map((s) => payoffs(job, model.sets[s]))
  return [
    { id: 'sell-working', payoffMinor: rows.map((row) => row.sellWorking), needs: [workingMark], allCoversOn: true },
    { id: 'sell-for-spares', payoffMinor: rows.map((row) => row.sellForSpares), needs: [], allCoversOn: true },
    { id: 'break-for-parts', payoffMinor: rows.map((row) => row.breakForParts), needs: [], allCoversOn: false },
    { id: 'scrap', payoffMinor: rows.map((row) => row.scrap), needs: [], allCoversOn: false },
  ]
}
