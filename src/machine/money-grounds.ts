import type { MoneySum } from '../base/money-sum.ts'
import type { RankedMove } from '../engines/plan/index.ts'
import { checkOverheadMin } from '../facts/trade.ts'
import { costsOfJob } from './costs.ts'
import { chancesOfBelief, chancesOfSet, type ExitChances } from './exit-chances.ts'
import { exitLines, hourGround, minutesGround } from './exit-lines.ts'
import type { Job } from './job.ts'
import { line, moneySum, totalOf, type Ground, type LineDraft } from './money-lines.ts'
import type { MoveContext } from './move-context.ts'
import type { ExitId } from './view.ts'
import { exitNames } from './words.ts'

type Grounded = Pick<MoveContext, 'model' | 'job' | 'plan' | 'answer'>

/** What an exit is worth now, line by line: its payoff over all suspects, and the covers it needs back on. */
export const exitSum = (context: Grounded, exit: ExitId): MoneySum => {
  const { job, plan } = context
  const lines = exitLines(job, exit, beliefChances(context))
  const closes = plan.problem.exits.find(({ id }) => id === exit)?.allCoversOn === true
  return moneySum(exitNames[exit], [...lines, ...(closes ? closingLines(job) : [])])
}

/** What the exits rest on, over all suspects that are planned for. */
export const beliefChances = ({ job, model, plan }: Omit<Grounded, 'answer'>): ExitChances => {
  const suspects = plan.problem.suspects.map(({ probability }, i) => ({ set: model.sets[plan.kept[i]], probability }))
  return chancesOfBelief(job.blueprint, costsOfJob(job).comebackShare, suspects)
}

const closingLines = (job: Job): readonly LineDraft[] => {
  const covers = job.blueprint.covers.filter(({ id }) => job.off.includes(id))
  const minutes = covers.reduce((sum, { closeMin }) => sum + closeMin, 0)
  return minutes === 0 ? [] : [minutesLine(job, 'Putting covers back', minutes, minutesGround)]
}

const minutesLine = (job: Job, name: string, minutes: number, ...grounds: readonly Ground[]): LineDraft =>
  line(name, -1, [{ kind: 'time', minutes, hourMinor: job.hourMinor }], [...grounds, hourGround(job)])

/** What it would fetch with nothing wrong, before the work that gets it there. */
export const repairedSum = (job: Job): MoneySum =>
  moneySum(
    'Repaired and sold working',
    exitLines(job, 'sell-working', chancesOfSet(job.blueprint, costsOfJob(job).comebackShare, [])),
  )

const overheadGround: Ground = checkOverheadMin.source

const planGround: Ground = {
  kind: 'plan',
  what: 'every result weighed by its chance, and each followed to an exit',
}

/** What making a move next is worth, line by line. For the best move the minutes that follow it are known too. */
export const moveSum = (context: Grounded, ranked: RankedMove): MoneySum => {
  if (ranked.move.kind === 'exit') return exitSum(context, ranked.move.id as ExitId)
  const own = ownLines(context, ranked)
  const later = laterLines(context, ranked)
  const rest = ranked.expectedMinor - totalOf([...own, ...later])
  const name = later.length === 0 ? 'What follows, on average' : 'Sold in the end, parts paid for, on average'
  return moneySum('On average from here', [
    { name, minor: rest, basis: { kind: 'rest' }, grounds: [planGround] },
    ...own,
    ...later,
  ])
}

const laterLines = (context: Grounded, ranked: RankedMove): readonly LineDraft[] => {
  const { answer, job } = context
  const minutes = answer.expectedMin - ranked.minutes
  if (ranked !== answer.ranked[0] || minutes <= 0) return []
  return [minutesLine(job, 'Your minutes after that, on average', minutes, planGround)]
}

/** What a check or repair itself takes: minutes with its covers, material, and what may break on the way. */
const ownLines = ({ job, plan: { problem } }: Grounded, { move, minutes }: RankedMove): readonly LineDraft[] => {
  if (move.kind === 'exit') return minutes > 0 ? [minutesLine(job, 'Covers back on', minutes, minutesGround)] : []
  const isCheck = move.kind === 'check'
  const grounds = isCheck ? [minutesGround, overheadGround] : [minutesGround]
  return [
    minutesLine(job, isCheck ? 'This check, covers and all' : 'This repair, covers and all', minutes, ...grounds),
    ...(isCheck
      ? materialLines(problem.checks.find(({ id }) => id === move.id)?.costMinor ?? 0)
      : repairLines(problem.repairs.find(({ id }) => id === move.id))),
  ]
}

const materialLines = (minor: number): readonly LineDraft[] =>
  minor === 0 ? [] : [line('What it uses up', -1, [{ kind: 'money', minor }], [costGround])]

const costGround: Ground = { kind: 'blueprint', what: 'what parts and materials cost' }

type PlannedRepair = Grounded['plan']['problem']['repairs'][number]

const repairLines = (repair: PlannedRepair | undefined): readonly LineDraft[] => {
  if (repair === undefined) return []
  const { costMinor, breakRisk, breakCostMinor } = repair
  const risk = { kind: 'share' as const, share: breakRisk, name: 'breaks on the way' }
  return [
    ...(costMinor === 0 ? [] : [line('Part and material', -1, [{ kind: 'money', minor: costMinor }], [costGround])]),
    ...(breakRisk * breakCostMinor === 0
      ? []
      : [line('Damage done on the way', -1, [{ kind: 'money', minor: breakCostMinor }, risk], [riskGround])]),
  ]
}

const riskGround: Ground = { kind: 'blueprint', what: 'how often something breaks, at a share of the working price' }

const roundingMinor = 1e-9

/** Why a move is worth less than the best one, line by line; null for the best itself. */
export const lessSum = (context: Grounded, ranked: RankedMove): MoneySum | null => {
  const [best] = context.answer.ranked
  if (best === undefined || best === ranked) return null
  const [own, bests] = [ownLines(context, ranked), ownLines(context, best)]
  const [ownMinor, bestMinor] = [totalOf(own), totalOf(bests)]
  const alike = Math.abs(ownMinor - bestMinor) < roundingMinor
  return moneySum('Against the best move', [
    ...(alike
      ? []
      : [difference('Now: minutes and parts', ownMinor, bestMinor, [minutesGround, hourGround(context.job)])]),
    difference('What follows', ranked.expectedMinor - ownMinor, best.expectedMinor - bestMinor, [planGround]),
  ])
}

const difference = (name: string, minor: number, lessMinor: number, grounds: readonly Ground[]): LineDraft => ({
  name,
  minor: minor - lessMinor,
  basis: { kind: 'difference', minor, lessMinor },
  grounds,
})
