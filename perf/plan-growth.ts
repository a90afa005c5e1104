import type { PlanProblem } from '../src/engines/plan/index.ts'
import { gapShare, timedPlan, timesTheWork, type Timed } from './plan-budget.ts'
import { syntheticRepair } from './synthetic-repair.ts'
import { mean, percent, tableLines, whole } from './table.ts'

const partCounts = [20, 50, 100, 200]
const seedsPerSize = 3
/** Processor time that a plan may take. */
const budgetsMs = [200, 1000, 2000]
/** The work that is tried, as multiples of the usual one; the least first. */
const ladder = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16, 32]

type Row = Timed & {
  readonly parts: number
  readonly seed: number
  readonly problem: PlanProblem
  readonly budgetMs: number
  readonly work: number
}

const head = ['parts', 'seed', 'suspects', 'checks', 'budget ms', 'work', 'ms', 'lower', 'upper', 'gap %']
const meanHead = ['parts', 'suspects', 'checks', 'budget ms', 'work', 'ms', 'lower', 'upper', 'gap %']

/**
 * How the plan grows with the number of parts of an invented machine: for each budget, the most work of the ladder that stays
 * within it (or the least of the ladder, when none does), with its time on one core, both bounds and the gap between them as
 * a share of the lower one. All problems first, then the means by size and budget (of the gaps too).
 */
export const run = (seeds = seedsPerSize): readonly string[] => {
  warmUp()
  const rows = partCounts.flatMap((parts) =>
    Array.from({ length: seeds }, (_, i) => rowsOf(parts, i + 1, syntheticRepair({ parts, seed: i + 1 }))).flat(),
  )
  const groups = partCounts.flatMap((parts) =>
    budgetsMs.map((budgetMs) => rows.filter((row) => row.parts === parts && row.budgetMs === budgetMs)),
  )
  return [...tableLines(head, rows.map(cells)), '', 'means', ...tableLines(meanHead, groups.map(meanCells))]
}

/** So that the first rows do not pay for compiling. */
const warmUp = (): void => {
  const problem = syntheticRepair({ parts: 50, seed: seedsPerSize + 1 })
  for (const work of ladder.slice(0, 5)) timedPlan(problem, timesTheWork(work))
}

const rowsOf = (parts: number, seed: number, problem: PlanProblem): readonly Row[] => {
  const tried = climb(problem)
  return budgetsMs.map((budgetMs) => {
    const within = tried.filter(({ cpuMs }) => cpuMs <= budgetMs)
    return { parts, seed, problem, budgetMs, ...(within.at(-1) ?? tried[0]) }
  })
}

/** Up the ladder until the largest budget is used up. */
const climb = (problem: PlanProblem): readonly (Timed & { readonly work: number })[] => {
  const tried: (Timed & { readonly work: number })[] = []
  for (const work of ladder) {
    tried.push({ work, ...timedPlan(problem, timesTheWork(work)) })
    if (tried[tried.length - 1].cpuMs > Math.max(...budgetsMs)) break
  }
  return tried
}

const cells = ({ parts, seed, problem, budgetMs, work, cpuMs, answer }: Row): readonly string[] => [
  ...[parts, seed, problem.suspects.length, problem.checks.length, budgetMs, work].map(String),
  ...[cpuMs, answer.lowerMinor, answer.upperMinor].map(whole),
  percent(gapShare(answer)),
]

const meanCells = (rows: readonly Row[]): readonly string[] => {
  const of = (value: (row: Row) => number): number => mean(rows.map(value))
  return [
    String(rows[0].parts),
    whole(of(({ problem }) => problem.suspects.length)),
    whole(of(({ problem }) => problem.checks.length)),
    String(rows[0].budgetMs),
    of(({ work }) => work).toPrecision(2),
    whole(of(({ cpuMs }) => cpuMs)),
    whole(of(({ answer }) => answer.lowerMinor)),
    whole(of(({ answer }) => answer.upperMinor)),
    percent(of(({ answer }) => gapShare(answer))),
  ]
}
