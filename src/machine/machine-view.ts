import { plan, type PlanAnswer } from '../engines/plan/index.ts'
import { functionById } from './functions/functions-of.ts'
import { groundsOf } from './grounds.ts'
import type { Job, JobEvent } from './job.ts'
import { machineModel, type MachineModel } from './model.ts'
import { beliefChances, exitSum, repairedSum } from './money-grounds.ts'
import type { MoveContext } from './move-context.ts'
import { moveView } from './move-view.ts'
import { planProblem } from './planning/plan-problem.ts'
import { reckonedPrices } from './prices.ts'
import { riskOf } from './risk.ts'
import { gateStates, redFlags } from './running.ts'
import { stripList } from './shelf/strip-list.ts'
import { suspectBelief } from './suspects.ts'
import type { ExitId, ExitView, MachineView, SuspectView, TogetherView, WorthView } from './view.ts'
import { exitNames, nothingWrong, suspectName } from './words.ts'

const shownSuspects = 12
const shownTogether = 6
/** Faults less likely than this are not listed. */
const leastSuspect = 0.005
const smallestShown = 1e-4

/** Everything that is shown of a machine, worked out from its job. Pure: the same job gives the same view. */
export const machineView = (job: Job, effort = 1): MachineView => {
  const model = machineModel(job.blueprint, job.plate, job.history)
  const belief = suspectBelief(model, job)
  const { probability } = belief
  const order = Array.from(probability, (_, s) => s).toSorted((a, b) => probability[b] - probability[a] || a - b)
  const chances = marginals(model, probability)
  const jobPlan = planProblem(model, job, probability)
  const answer = plan(jobPlan.problem, { effort, risk: riskOf(job) ?? undefined, withPolicy: false })
  const context: MoveContext = {
    model,
    job,
    plan: jobPlan,
    answer,
    probability,
    leading: leadingSingles(model, chances.faults),
  }
  const [best, ...others] = answer.ranked.map((ranked) => moveView(context, ranked))
  if (best === undefined) throw new Error('the planner ranked no move: a job always has exits')
  return {
    suspects: suspectList(model, job, chances.faults, probability[0]),
    together: order.slice(0, shownTogether).map((s) => togetherView(model, s, probability[s])),
    ...chances,
    unexplained: belief.unexplained === null ? null : unexplained(job, belief.unexplained),
    next: best,
    others,
    exits: answer.exits.map((exit) => exitView(context, exit)),
    worth: worthView(job, answer),
    redFlags: redFlags(job),
    beforeRunning: gatesLeft(job),
    shelf: job.shelf ?? [],
    strip: stripList(job, beliefChances(context)),
  }
}

const suspectList = (
  model: MachineModel,
  job: Job,
  chances: Readonly<Record<string, number>>,
  nothing: number,
): readonly SuspectView[] => {
  const grounds = groundsOf(model, job)
  const { faults } = model.blueprint
  const likely = faults
    .map((fault, f) => ({ f, id: fault.id, name: fault.name, probability: chances[fault.id] ?? 0 }))
    .filter(({ probability }) => probability >= leastSuspect)
    .toSorted((a, b) => b.probability - a.probability || a.f - b.f)
    .slice(0, shownSuspects)
    .map(({ f, id, name, probability }) => ({
      id,
      name,
      faults: [id],
      probability,
      rate: model.rates[f],
      grounds: grounds(f),
    }))
  return [
    ...likely,
    { id: 'nothing', name: nothingWrong, faults: [], probability: nothing, rate: null, grounds: [] },
  ].toSorted((a, b) => b.probability - a.probability)
}

const togetherView = (model: MachineModel, s: number, probability: number): TogetherView => {
  const set = model.sets[s]
  return {
    id: `s${s}`,
    name: suspectName(model.blueprint, set),
    faults: set.map((f) => model.blueprint.faults[f].id),
    probability,
  }
}

/** Single faults as suspects, by the chance that the fault is there, likeliest first. */
const leadingSingles = (model: MachineModel, chances: Readonly<Record<string, number>>): readonly number[] =>
  model.sets
    .flatMap((set, s) => (set.length === 1 ? [{ s, chance: chances[model.blueprint.faults[set[0]].id] ?? 0 }] : []))
    .toSorted((a, b) => b.chance - a.chance || a.s - b.s)
    .map(({ s }) => s)

const marginals = (model: MachineModel, probability: Float64Array): Pick<MachineView, 'faults' | 'parts'> => {
  const faults: Record<string, number> = {}
  const parts: Record<string, number> = {}
  model.sets.forEach((set, s) => {
    const p = probability[s]
    for (const f of set) faults[model.blueprint.faults[f].id] = (faults[model.blueprint.faults[f].id] ?? 0) + p
    for (const part of new Set(set.map((f) => model.blueprint.faults[f].part))) parts[part] = (parts[part] ?? 0) + p
  })
  for (const id of Object.keys(faults)) if (faults[id] < smallestShown) delete faults[id]
  return { faults, parts }
}

const unexplained = (job: Job, note: string): MachineView['unexplained'] => {
  const event = job.events.find((e) => e.note === note)
  const name = surprising(job, event)
  return {
    note,
    text: `Nothing in this blueprint explains all readings together. The most surprising one: ${name}. Make it again, or strike it out.`,
  }
}

const surprising = ({ blueprint }: Job, event: JobEvent | undefined): string => {
  const otherwise = 'One of the notes'
  if (event?.kind === 'gauge') return 'The gauge readings of the air'
  if (event?.kind === 'tried') return functionById(blueprint, event.function)?.name ?? otherwise
  if (event?.kind !== 'reading') return otherwise
  return blueprint.checks.find((c) => c.id === event.check)?.name ?? otherwise
}

const exitView = (context: MoveContext, exit: PlanAnswer['exits'][number]): ExitView => ({
  id: exit.id as ExitId,
  name: exitNames[exit.id as ExitId],
  expectedMinor: exit.expectedMinor,
  sum: exitSum(context, exit.id as ExitId),
  missing:
    exit.missing.length === 0
      ? []
      : ['a passed run since the last repair', ...(context.job.off.length > 0 ? ['all covers on'] : [])],
})

const worthView = (job: Job, answer: PlanAnswer): WorthView => {
  const open = answer.exits.filter((exit) => exit.missing.length === 0)
  const best = open.reduce((a, b) => (b.expectedMinor > a.expectedMinor ? b : a))
  const repaired = repairedSum(job)
  const putInMinor = job.putInMinor ?? 0
  return {
    asItStandsMinor: best.expectedMinor,
    carryOnMinor: answer.lowerMinor,
    spreadMinor: answer.spreadMinor,
    upperMinor: answer.upperMinor,
    expectedMin: answer.expectedMin,
    bestExit: best.id as ExitId,
    repairedMinor: repaired.minor,
    repairedSum: repaired,
    putInMinor,
    profitMinor: answer.lowerMinor - putInMinor,
    prices: reckonedPrices(job),
    attitude: job.attitude ?? 'average',
    risk: riskOf(job),
    cautionCostsMinor: Math.max(...answer.ranked.map(({ expectedMinor }) => expectedMinor)) - answer.lowerMinor,
  }
}

const gatesLeft = (job: Job): readonly string[] => {
  const states = gateStates(job)
  return job.blueprint.checks
    .filter((check) => check.beforeRunning && states.get(check.id) !== 'passed')
    .map((check) => check.name)
}
