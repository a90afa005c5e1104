import { blueprintById } from '../src/blueprint/library.ts'
import { plan } from '../src/engines/plan/index.ts'
import { hiddenTruth, machineModel, planProblem, suspectBelief } from '../src/machine/index.ts'
import type { Job } from '../src/machine/job.ts'
import { byEntropy, byInformationPerMinute, tradesOrder } from './rivals/asking.ts'
import { clairvoyant } from './rivals/clairvoyant.ts'
import { playOut, type Played, type Rival } from './rivals/game.ts'
import { byProbabilityPerCost } from './rivals/probability-per-cost.ts'
import { thePlan } from './rivals/the-plan.ts'
import { byOneStep } from './rivals/value-of-information.ts'
import { mean, percent, standardError, tableLines, whole } from './table.ts'

const complaint = 'dead'
const firstSeed = 5001
const usualMachines = 8
const rivals: readonly Rival[] = [
  tradesOrder,
  byProbabilityPerCost,
  byEntropy,
  byInformationPerMinute,
  byOneStep,
  thePlan,
  clairvoyant,
]

const head = [
  '',
  'pence',
  '±',
  'plan has more',
  '±',
  'minutes',
  'of fixed order’s',
  'sold working %',
  'wrong exit %',
  'of bound %',
]

/**
 * What the plan and simpler rules bring on the same virtual dead machines: a table of mean money (pence) and of how much more
 * the plan brings, machine by machine, each with its standard error; own minutes; and the share of machines that left by another
 * exit than the clairvoyant chose for them. The bound is the plan's upper value before the first move, the same for all, since
 * all have the same complaint. What chance does is in it: a repair that failed for one rival may have worked for another, few
 * machines are not the mean of all, and virtual machines never break on the bench, which the bound reckons with.
 * @param machines how many virtual machines, 2 or more, with the seeds that follow each other
 */
export const run = (machines = usualMachines): readonly string[] => {
  const start = deadMachine()
  const seeds = deadSeeds(start, machines)
  const played = new Map(rivals.map((rival) => [rival, seeds.map((seed) => playOut(start, seed, rival))]))
  const against: Yardsticks = {
    knowing: played.get(clairvoyant)!,
    plans: played.get(thePlan)!,
    fixedMin: mean(played.get(tradesOrder)!.map(({ minutes }) => minutes)),
    boundMinor: boundOf(start),
  }
  return [
    `${machines} virtual machines of ${start.blueprint.id}, all dead; upper bound ${whole(against.boundMinor)} pence`,
    ...tableLines(
      head,
      [...played].map(([{ name }, results]) => [name, ...figures(results, against)]),
    ),
  ]
}

type Yardsticks = {
  readonly knowing: readonly Played[]
  readonly plans: readonly Played[]
  readonly fixedMin: number
  readonly boundMinor: number
}

const figures = (played: readonly Played[], against: Yardsticks): readonly string[] => {
  const money = played.map(({ moneyMinor }) => moneyMinor)
  const more = money.map((minor, i) => against.plans[i].moneyMinor - minor)
  const minutes = mean(played.map((one) => one.minutes))
  const share = (is: (one: Played, i: number) => boolean): string => percent(played.filter(is).length / played.length)
  return [
    ...[mean(money), standardError(money), mean(more), standardError(more), minutes].map(whole),
    `${(minutes / against.fixedMin).toFixed(2)} ×`,
    share(({ exit }) => exit === 'sell-working'),
    share(({ exit }, i) => exit !== against.knowing[i].exit),
    percent(mean(money) / against.boundMinor),
  ]
}

/** The blueprint with most faults and checks, before the first move. */
const deadMachine = (): Job => {
  const blueprint = blueprintById('bagged-upright-two-motors')!
  return {
    blueprint,
    plate: blueprint.plate,
    complaints: [complaint],
    missing: [],
    events: [],
    off: [],
    hourMinor: 800,
  }
}

const deadSeeds = ({ blueprint, plate }: Job, machines: number): readonly number[] => {
  const model = machineModel(blueprint, plate)
  const seeds: number[] = []
  for (let seed = firstSeed; seeds.length < machines; seed++)
    if (hiddenTruth(model, seed).complaints.includes(complaint)) seeds.push(seed)
  return seeds
}

const boundOf = (job: Job): number => {
  const model = machineModel(job.blueprint, job.plate)
  return plan(planProblem(model, job, suspectBelief(model, job).probability).problem).upperMinor
}
