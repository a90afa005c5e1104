import { blueprintById } from '../src/blueprint/library.ts'
import type { Blueprint } from '../src/blueprint/schema.ts'
import {
  hiddenTruth,
  machineModel,
  machineView,
  planProblem,
  playMove,
  suspectBelief,
  truthNow,
} from '../src/machine/index.ts'
import type { Job } from '../src/machine/job.ts'
import { payoffs } from '../src/machine/payoff.ts'
import type { ExitId, MoveView } from '../src/machine/view.ts'

const machines = 24
const mostMoves = 60
/** A rival mends once a fault is this likely, and gives up when no check tells this much (nats) or it has spent so long. */
const mendAt = 0.75
const leastTold = 0.01
const mostMinutes = 120

type Played = { readonly moneyMinor: number; readonly minutes: number; readonly exit: ExitId }
type Problem = ReturnType<typeof planProblem>['problem']
type Check = Problem['checks'][number]
/** Gives the check to make next, or null when it has none left worth making. */
type Rule = (problem: Problem, open: readonly Check[], minutesOf: (check: Check) => number) => Check | null

const entropyTold = (problem: Problem, check: Check): number => {
  let told = 0
  check.outcomes.forEach((_, o) => {
    const chance = problem.suspects.reduce((sum, { probability }, s) => sum + probability * check.likelihood[s][o], 0)
    problem.suspects.forEach(({ probability }, s) => {
      const p = check.likelihood[s][o]
      if (p > 0 && probability > 0) told += probability * p * Math.log(p / chance)
    })
  })
  return told
}

const most = (checks: readonly Check[], worth: (check: Check) => number, least: number): Check | null => {
  const [best] = checks.map((check) => ({ check, value: worth(check) })).sort((a, b) => b.value - a.value)
  return best !== undefined && best.value >= least ? best.check : null
}

/** The trade's order for a dead machine: plug and fuse, flex, switch, cut-out, brushes, motor (trade figures, order of work). */
const tradeOrder = [
  'fuse-through', 'look-plug', 'pins-bend-plug-end', 'pins-bend-entry', 'line-pin-to-entry', 'neutral-pin-to-entry',
  'pins-work-switch', 'switch-closed', 'switch-terminal-through', 'loom-line-through', 'loom-neutral-through', 'cut-out-through',
  'motor-terminal-through', 'carbon-length', 'motor-at-leads-turning', 'motor-at-leads',
] // prettier-ignore

const rules: Readonly<Record<string, Rule>> = {
  'the trade’s fixed order': (_problem, open) =>
    tradeOrder.flatMap((id) => open.filter((check) => check.id === id)).at(0) ?? null,
  'entropy, cost left out': (problem, open) => most(open, (check) => entropyTold(problem, check), leastTold),
  'information per minute': (problem, open, minutesOf) =>
    most(
      open,
      (check) => (entropyTold(problem, check) < leastTold ? 0 : entropyTold(problem, check) / minutesOf(check)),
      1e-9,
    ),
}

const isOpen = (problem: Problem, check: Check): boolean =>
  !check.done && check.needs.every((mark) => problem.marks.includes(mark))

/** Covers to take off, those before them first. */
const toOpen = ({ covers }: Blueprint, wanted: readonly string[], off: readonly string[]): string[] => {
  const order: string[] = []
  const take = (id: string): void => {
    if (off.includes(id) || order.includes(id)) return
    covers.find((cover) => cover.id === id)?.after.forEach(take)
    order.push(id)
  }
  wanted.forEach(take)
  return order
}

const minutesOfCovers = ({ covers }: Blueprint, ids: readonly string[], key: 'openMin' | 'closeMin'): number =>
  ids.reduce((sum, id) => sum + (covers.find((cover) => cover.id === id)?.[key] ?? 0), 0)

const steps = (ids: readonly string[]) => ids.map((id) => ({ id, name: id, minutes: 0, fixings: '', hint: null }))

type Turn = {
  readonly move: Pick<MoveView, 'kind' | 'id'> & Record<string, unknown>
  readonly minutes: number
  readonly costMinor: number
}

const checkTurn = (job: Job, check: Check): Turn => {
  const open = check.allCoversOn ? [] : toOpen(job.blueprint, check.coversOff, job.off)
  const close = check.allCoversOn ? job.off.toReversed() : []
  const minutes =
    check.minutes + minutesOfCovers(job.blueprint, open, 'openMin') + minutesOfCovers(job.blueprint, close, 'closeMin')
  return {
    move: { kind: 'check', id: check.id, open: steps(open), close: steps(close) },
    minutes,
    costMinor: check.costMinor,
  }
}

const repairTurn = (job: Job, repair: Problem['repairs'][number]): Turn => {
  const open = toOpen(job.blueprint, repair.coversOff, job.off)
  const [id, option] = repair.id.split(':')
  return {
    move: { kind: 'repair', id: repair.id, repair: id, option, open: steps(open), close: [] },
    minutes: repair.minutes + minutesOfCovers(job.blueprint, open, 'openMin'),
    costMinor: repair.costMinor,
  }
}

/** The cheapest way to remove the likeliest fault, once it is likely enough. */
const mend = (problem: Problem, done: ReadonlySet<string>) => {
  const chance = new Map<string, number>()
  for (const { faults, probability } of problem.suspects)
    for (const fault of faults) chance.set(fault, (chance.get(fault) ?? 0) + probability)
  const [lead] = [...chance].sort((a, b) => b[1] - a[1])
  if (lead === undefined || lead[1] < mendAt) return undefined
  const price = (one: Problem['repairs'][number]): number =>
    (one.costMinor + (one.minutes * problem.hourMinor) / 60) / one.success
  return problem.repairs
    .filter((one) => one.removes.includes(lead[0]) && !done.has(one.id))
    .sort((a, b) => price(a) - price(b))[0]
}

/** Mends what is likely; before that asks by its rule; then the safety checks and the runs; then leaves by the best exit. */
const rivalTurn = (job: Job, problem: Problem, rule: Rule, minutes: number, done: ReadonlySet<string>): Turn | null => {
  const wanted = mend(problem, done)
  if (wanted !== undefined) return repairTurn(job, wanted)
  const open = problem.checks.filter((check) => isOpen(problem, check))
  const gates = open.filter((check) =>
    check.outcomes.some(({ gives }) => gives.some((mark) => /^(passed|shown)/.test(mark))),
  )
  const asked =
    minutes > mostMinutes
      ? null
      : rule(
          problem,
          open.filter((check) => !gates.includes(check)),
          (check) => checkTurn(job, check).minutes,
        )
  const next = asked ?? gates[0]
  return next === undefined || problem.marks.includes('shown-working') ? null : checkTurn(job, next)
}

const playRival = (start: Job, seed: number, rule: Rule): Played => {
  const model = machineModel(start.blueprint, start.plate)
  const done = new Set<string>()
  let job = start
  let minutes = 0
  let spentMinor = 0
  for (let turn = 0; turn < mostMoves; turn++) {
    const { problem } = planProblem(model, job, suspectBelief(model, job).probability)
    const next = rivalTurn(job, problem, rule, minutes, done)
    if (next === null) return left(job, seed, bestExit(problem), spentMinor, minutes)
    if (next.move.kind === 'repair') done.add(next.move.id)
    minutes += next.minutes
    spentMinor += next.costMinor + (next.minutes * job.hourMinor) / 60
    job = playMove(job, next.move as unknown as MoveView, seed)
  }
  return left(job, seed, 'sell-for-spares', spentMinor, minutes)
}

const bestExit = (problem: Problem): ExitId => {
  const worth = (exit: Problem['exits'][number]): number =>
    exit.needs.every((mark) => problem.marks.includes(mark))
      ? problem.suspects.reduce((sum, { probability }, s) => sum + probability * exit.payoffMinor[s], 0)
      : -Infinity
  return problem.exits.toSorted((a, b) => worth(b) - worth(a))[0].id as ExitId
}

const keys = {
  'sell-working': 'sellWorking',
  'sell-for-spares': 'sellForSpares',
  'break-for-parts': 'breakForParts',
  scrap: 'scrap',
} as const

const left = (job: Job, seed: number, exit: ExitId, spentMinor: number, minutes: number): Played => {
  const model = machineModel(job.blueprint, job.plate)
  const closing =
    exit === 'break-for-parts' || exit === 'scrap' ? 0 : minutesOfCovers(job.blueprint, job.off, 'closeMin')
  const paid = payoffs(job, model.sets[truthNow(model, job, seed)])[keys[exit]]
  return { moneyMinor: paid - spentMinor - (closing * job.hourMinor) / 60, minutes: minutes + closing, exit }
}

const playPlan = (start: Job, seed: number): Played => {
  let job = start
  let minutes = 0
  let spentMinor = 0
  for (let turn = 0; turn < mostMoves; turn++) {
    const { next } = machineView(job)
    if (next.kind === 'exit') return left(job, seed, next.exit, spentMinor, minutes)
    minutes += next.minutes
    spentMinor += next.costMinor + (next.minutes * job.hourMinor) / 60
    job = playMove(job, next, seed)
  }
  return left(job, seed, 'sell-for-spares', spentMinor, minutes)
}

const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length

/** Mean money (pence) and minutes on the same virtual dead machines, of the plan and of the rules it is measured against. */
export const run = (): readonly string[] => {
  const blueprint = blueprintById('bagged-upright-two-motors')!
  const model = machineModel(blueprint, blueprint.plate)
  const seeds = Array.from({ length: 2000 }, (_, i) => 5001 + i)
    .filter((seed) => hiddenTruth(model, seed).complaints.includes('dead'))
    .slice(0, machines)
  const jobOf = (seed: number): Job => {
    const { complaints } = hiddenTruth(model, seed)
    return { blueprint, plate: blueprint.plate, complaints, missing: [], events: [], off: [], hourMinor: 800 }
  }
  const bound = mean(seeds.map((seed) => machineView(jobOf(seed)).worth.upperMinor))
  const rows = [
    ...Object.entries(rules).map(([name, rule]) => ({
      name,
      played: seeds.map((seed) => playRival(jobOf(seed), seed, rule)),
    })),
    { name: 'the plan', played: seeds.map((seed) => playPlan(jobOf(seed), seed)) },
  ]
  return [
    ...rows.map(({ name, played }) => {
      const money = played.map(({ moneyMinor }) => moneyMinor)
      const spread = Math.sqrt(mean(money.map((x) => (x - mean(money)) ** 2)) / (money.length - 1))
      const sold = played.filter(({ exit }) => exit === 'sell-working').length
      return `${name}: ${mean(money).toFixed(0)} pence (± ${spread.toFixed(0)}), ${mean(played.map((one) => one.minutes)).toFixed(0)} min, ${sold} of ${machines} sold working`
    }),
    `mean upper bound: ${bound.toFixed(0)} pence`,
  ]
}
