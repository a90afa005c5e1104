import type { PlanProblem } from '../../src/engines/plan/index.ts'
import { machineModel, planProblem, resultUnder, suspectBelief, truthNow } from '../../src/machine/index.ts'
import type { Job, JobEvent } from '../../src/machine/job.ts'
import { payoffs } from '../../src/machine/payoff.ts'
import type { ExitId } from '../../src/machine/view.ts'
import { checkWork, coverMinutes, minorOfMinutes, repairWork, type Repair, type Work } from './work.ts'

/** Where a job on a virtual machine stands, for one who decides what comes next. */
export type Position = {
  /** What is known, as the planner is told it. */
  readonly problem: PlanProblem
  readonly events: Job['events']
  /** Own minutes so far. */
  readonly minutes: number
}

export type Decision = { readonly kind: 'check' | 'repair' | 'exit'; readonly id: string }

/** One way of working. `told`: it is told the faults that are hidden from the others, and whether a repair has worked. */
export type Rival = { readonly name: string; readonly told: boolean; readonly decide: (at: Position) => Decision }

/** What came of it: money with minutes and parts paid for, own minutes, and the exit taken. */
export type Played = { readonly moneyMinor: number; readonly minutes: number; readonly exit: ExitId }

/** Repairs that were not made yet. */
export const untriedRepairs = ({ problem, events }: Position): readonly Repair[] => {
  const made = new Set(events.flatMap((one) => (one.kind === 'repaired' ? [`${one.repair}:${one.option}`] : [])))
  return problem.repairs.filter(({ id }) => !made.has(id))
}

/** More moves than any sensible job needs. */
const mostMoves = 60

/** Lets a rival work on the virtual machine of this seed until it leaves by an exit. */
export const playOut = (start: Job, seed: number, { told, decide }: Rival): Played => {
  let job = start
  let minutes = 0
  let spentMinor = 0
  for (let turn = 0; turn < mostMoves; turn++) {
    const problem = problemOf(job, seed, told)
    const next = decide({ problem, events: job.events, minutes })
    if (next.kind === 'exit') return leave(job, seed, problem, next.id as ExitId, minutes, spentMinor)
    const work = workOf(problem, next)
    minutes += work.minutes
    spentMinor += work.minor
    job = afterMove(job, seed, next, work)
  }
  return leave(job, seed, problemOf(job, seed, told), 'sell-for-spares', minutes, spentMinor)
}

/** The planner's problem under what is believed, or under the truth. */
const problemOf = (job: Job, seed: number, told: boolean): PlanProblem => {
  const model = machineModel(job.blueprint, job.plate)
  if (!told) return planProblem(model, job, suspectBelief(model, job).probability).problem
  const certain = new Float64Array(model.sets.length)
  certain[truthNow(model, job, seed)] = 1
  return planProblem(model, job, certain).problem
}

const workOf = (problem: PlanProblem, { kind, id }: Decision): Work =>
  kind === 'check'
    ? checkWork(
        problem,
        problem.checks.find((check) => check.id === id)!,
      )
    : repairWork(
        problem,
        problem.repairs.find((repair) => repair.id === id)!,
      )

const afterMove = (job: Job, seed: number, { kind, id }: Decision, { open, close }: Work): Job => {
  const off = [...job.off.filter((cover) => !close.includes(cover)), ...open]
  const covers: JobEvent[] = [
    ...close.map((cover) => ({ kind: 'closed', note: `${job.events.length} close ${cover}`, cover }) as const),
    ...open.map((cover) => ({ kind: 'opened', note: `${job.events.length} open ${cover}`, cover }) as const),
  ]
  return { ...job, off, events: [...job.events, ...covers, eventOf(job, seed, kind, id)] }
}

/** What comes of a move. A check that is made again is left to chance afresh, as the planner supposes. */
const eventOf = (job: Job, seed: number, kind: Decision['kind'], id: string): JobEvent => {
  const note = `${job.events.length} ${id}`
  const [repair, option] = id.split(':')
  if (kind === 'repair') return { kind: 'repaired', note, repair, option }
  const model = machineModel(job.blueprint, job.plate)
  const timesMade = job.events.filter((event) => event.kind === 'reading' && event.check === id).length
  const result = resultUnder(model, truthNow(model, job, seed), seed, id, timesMade)
  return { kind: 'reading', note, check: id, result, instrument: 'budget-multimeter' }
}

const payoffKeys = {
  'sell-working': 'sellWorking',
  'sell-for-spares': 'sellForSpares',
  'break-for-parts': 'breakForParts',
  scrap: 'scrap',
} as const

const leave = (
  job: Job,
  seed: number,
  problem: PlanProblem,
  exit: ExitId,
  minutes: number,
  spentMinor: number,
): Played => {
  const model = machineModel(job.blueprint, job.plate)
  const closes = problem.exits.find(({ id }) => id === exit)!.allCoversOn
  const closing = closes ? coverMinutes(problem, job.off, 'closeMin') : 0
  const paid = payoffs(job, model.sets[truthNow(model, job, seed)])[payoffKeys[exit]]
  return { moneyMinor: paid - spentMinor - minorOfMinutes(problem, closing), minutes: minutes + closing, exit }
}
