import type { Job, JobEvent } from './job.ts'
import { gaugeMinutes } from '../facts/air-rig.ts'
import { machineModel, type MachineModel } from './model.ts'
import { machineView } from './machine-view.ts'
import { payoffs } from './payoff.ts'
import { hiddenTruth, truthNow, virtualResult } from './practice.ts'
import type { ExitId, MoveView } from './view.ts'
import { suspectName } from './words.ts'

/** What came of a job on a virtual machine. Minutes and costs are the blueprint's own, so that both sides are priced alike. */
export type Outcome = {
  readonly minutes: number
  readonly moneyMinor: number
  readonly moves: readonly string[]
  readonly exit: ExitId
}

export type Reveal = {
  /** The hidden truth in words. */
  readonly name: string
  readonly faults: readonly string[]
  readonly yours: Outcome
  readonly plans: Outcome
}

/** Shows what was hidden, and sets the moves made against those the plan would have made on the same machine. */
export const reveal = (job: Job, seed: number, exit: ExitId): Reveal => {
  const model = machineModel(job.blueprint, job.plate)
  const set = model.sets[hiddenTruth(model, seed).suspect]
  return {
    name: suspectName(job.blueprint, set),
    faults: set.map((f) => job.blueprint.faults[f].id),
    yours: outcomeOf(model, job, seed, exit),
    plans: planned(model, job, seed),
  }
}

const payoffKeys = {
  'sell-working': 'sellWorking',
  'sell-for-spares': 'sellForSpares',
  'break-for-parts': 'breakForParts',
  scrap: 'scrap',
} as const

const outcomeOf = (model: MachineModel, job: Job, seed: number, exit: ExitId): Outcome => {
  const costs = job.events.map((event) => eventCost(job, event))
  const minutes = costs.reduce((sum, cost) => sum + cost.minutes, 0)
  const spent = costs.reduce((sum, cost) => sum + cost.costMinor, 0)
  const payoff = payoffs(job, model.sets[truthNow(model, job, seed)])[payoffKeys[exit]]
  return {
    minutes,
    moneyMinor: payoff - spent - (minutes * job.hourMinor) / 60,
    moves: costs.flatMap((cost) => cost.move),
    exit,
  }
}

const eventCost = (job: Job, event: JobEvent): { minutes: number; costMinor: number; move: readonly string[] } => {
  const { blueprint } = job
  switch (event.kind) {
    case 'reading': {
      const check = blueprint.checks.find((c) => c.id === event.check)
      return { minutes: check?.minutes ?? 0, costMinor: check?.costMinor ?? 0, move: [check?.name ?? event.check] }
    }
    case 'gauge':
      return { minutes: gaugeMinutes.value, costMinor: 0, move: ['A gauge reading'] }
    case 'repaired': {
      const repair = blueprint.repairs.find((r) => r.id === event.repair)
      const option = repair?.options.find((o) => o.id === event.option)
      const costMinor = option === undefined ? 0 : Math.round((option.costMinor.low + option.costMinor.high) / 2)
      return { minutes: option?.minutes ?? 0, costMinor, move: [repair?.name ?? event.repair] }
    }
    case 'opened':
    case 'closed': {
      const cover = blueprint.covers.find((c) => c.id === event.cover)
      return { minutes: (event.kind === 'opened' ? cover?.openMin : cover?.closeMin) ?? 0, costMinor: 0, move: [] }
    }
    case 'confirmed':
    case 'proof':
    case 'seen':
    case 'taken-out':
    case 'put-in':
    case 'tried':
      return { minutes: 0, costMinor: 0, move: [] }
  }
}

/** More moves than any sensible job needs: the plan stops itself long before. */
const mostMoves = 60

/** The share of the usual work that each move is planned with: a whole job is played while somebody waits. */
const revealEffort = 0.25

/** Lets the plan play the same machine from the beginning. */
const planned = (model: MachineModel, job: Job, seed: number): Outcome => {
  let played: Job = { ...job, events: [], off: [] }
  for (let step = 0; step < mostMoves; step++) {
    const { next } = machineView(played, revealEffort)
    if (next.kind === 'exit') return outcomeOf(model, closeAll(played, next.exit), seed, next.exit)
    played = playMove(played, next, seed)
  }
  return outcomeOf(model, played, seed, 'scrap')
}

const note = (job: Job): string => `plan ${job.events.length + 1}`

/** Makes a move on a virtual machine: covers first, then the check or repair. */
export const playMove = (job: Job, move: MoveView, seed: number): Job => {
  let next = job
  for (const { id } of move.close) next = setCover(next, id, 'closed')
  for (const { id } of move.open) next = setCover(next, id, 'opened')
  if (move.kind === 'check') {
    const result = virtualResult(next, seed, move.id)
    return withEvent(next, {
      kind: 'reading',
      note: note(next),
      check: move.id,
      result,
      instrument: 'budget-multimeter',
    })
  }
  if (move.kind === 'repair')
    return withEvent(next, { kind: 'repaired', note: note(next), repair: move.repair, option: move.option })
  return next
}

const setCover = (job: Job, cover: string, kind: 'opened' | 'closed'): Job => ({
  ...withEvent(job, { kind, note: note(job), cover }),
  off: kind === 'opened' ? [...job.off, cover] : job.off.filter((id) => id !== cover),
})

const withEvent = (job: Job, event: JobEvent): Job => ({ ...job, events: [...job.events, event] })

/** Working machines and those sold for spares leave with their covers on. */
const closeAll = (job: Job, exit: ExitId): Job =>
  exit === 'break-for-parts' || exit === 'scrap'
    ? job
    : job.off.toReversed().reduce((j, cover) => setCover(j, cover, 'closed'), job)
