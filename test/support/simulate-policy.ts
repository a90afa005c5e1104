import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { PlanProblem, PolicyPoint } from '../../src/engines/plan/index.ts'

type Draw = () => number

/** Money of one job after another when a policy is followed by its names on machines drawn from the problem's own probabilities. */
export const simulatedMoney = (
  plan: PlanProblem,
  policy: readonly PolicyPoint[],
  jobs: number,
  seed: number,
): number[] =>
  simulatedEndings(plan, policy, jobs, seed).map(
    ({ exit, suspect, spentMinor }) => plan.exits.find(({ id }) => id === exit)!.payoffMinor[suspect] - spentMinor,
  )

/** How one job ends: by which exit, with which suspect left in it, and what was spent up to there, own time included. */
export type SimulatedEnding = { readonly exit: string; readonly suspect: number; readonly spentMinor: number }

/** Ends of one job after another, drawn likewise. */
export const simulatedEndings = (
  plan: PlanProblem,
  policy: readonly PolicyPoint[],
  jobs: number,
  seed: number,
): SimulatedEnding[] => {
  const generator = xoroshiro128plus(seed)
  const draw: Draw = () => (generator.next() >>> 0) / 2 ** 32
  const tables = tablesOf(plan)
  return Array.from({ length: jobs }, () => oneJob(plan, policy, tables, draw))
}

type Tables = ReturnType<typeof tablesOf>

const tablesOf = (plan: PlanProblem) => ({
  suspectOf: new Map(plan.suspects.map(({ faults }, s) => [faults.toSorted().join('\n'), s])),
  checks: new Map(plan.checks.map((check) => [check.id, check])),
  repairs: new Map(plan.repairs.map((repair) => [repair.id, repair])),
  exits: new Map(plan.exits.map((exit) => [exit.id, exit])),
  covers: new Map(plan.covers.map((cover) => [cover.id, cover])),
})

/** The place drawn from a list of probabilities that sum to 1. */
const drawn = (probabilities: readonly number[], draw: Draw): number => {
  let left = draw()
  for (let i = 0; i < probabilities.length; i++) {
    left -= probabilities[i]
    if (left < 0) return i
  }
  return probabilities.findLastIndex((p) => p > 0)
}

const oneJob = (plan: PlanProblem, policy: readonly PolicyPoint[], tables: Tables, draw: Draw): SimulatedEnding => {
  let suspect = drawn(plan.suspects.map(({ probability }) => probability), draw) // prettier-ignore
  const off = new Set(plan.off)
  let money = 0
  const spend = (minutes: number, costMinor: number): void => {
    money -= costMinor + (minutes * plan.hourMinor) / 60
  }
  for (let at = policy[0]; ;) {
    const { move, next } = at
    if (move.kind === 'exit') {
      const exit = tables.exits.get(move.id)!
      if (exit.allCoversOn) spend(closeAll(tables, off), 0)
      return { exit: move.id, suspect, spentMinor: -money }
    }
    if (move.kind === 'check') {
      const check = tables.checks.get(move.id)!
      spend(
        check.minutes + (check.allCoversOn ? closeAll(tables, off) : open(tables, off, check.coversOff)),
        check.costMinor,
      )
      const shown = check.outcomes[drawn(check.likelihood[suspect], draw)].id
      at = policy[next.find(({ outcomes }) => outcomes.includes(shown))!.point]
      continue
    }
    const repair = tables.repairs.get(move.id)!
    spend(repair.minutes + open(tables, off, repair.coversOff), repair.costMinor)
    if (draw() < repair.breakRisk) spend(0, repair.breakCostMinor)
    if (draw() < repair.success) {
      const left = plan.suspects[suspect].faults.filter((fault) => !repair.removes.includes(fault))
      suspect = tables.suspectOf.get(left.toSorted().join('\n'))!
    }
    at = policy[next[0].point]
  }
}

const closeAll = (tables: Tables, off: Set<string>): number => {
  const minutes = [...off].reduce((sum, id) => sum + tables.covers.get(id)!.closeMin, 0)
  off.clear()
  return minutes
}

const open = (tables: Tables, off: Set<string>, wanted: readonly string[]): number =>
  wanted.reduce((sum, id) => {
    if (off.has(id)) return sum
    const cover = tables.covers.get(id)!
    const before = open(tables, off, cover.after)
    off.add(id)
    return sum + before + cover.openMin
  }, 0)
