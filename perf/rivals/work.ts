import type { PlanProblem } from '../../src/engines/plan/index.ts'

export type Check = PlanProblem['checks'][number]
export type Repair = PlanProblem['repairs'][number]

/** What a move takes: covers in order, own minutes with the covers, and money with the minutes paid for. */
export type Work = {
  readonly open: readonly string[]
  readonly close: readonly string[]
  readonly minutes: number
  readonly minor: number
}

/** Covers to take off so that the wanted ones are off, those before them first. */
export const coversToOpen = (
  { covers }: PlanProblem,
  wanted: readonly string[],
  off: readonly string[],
): readonly string[] => {
  const order: string[] = []
  const take = (id: string): void => {
    if (off.includes(id) || order.includes(id)) return
    covers.find((cover) => cover.id === id)?.after.forEach(take)
    order.push(id)
  }
  wanted.forEach(take)
  return order
}

export const coverMinutes = (
  { covers }: PlanProblem,
  ids: readonly string[],
  ...times: readonly ('openMin' | 'closeMin')[]
): number =>
  covers
    .filter(({ id }) => ids.includes(id))
    .reduce((sum, cover) => sum + times.reduce((all, time) => all + cover[time], 0), 0)

export const minorOfMinutes = ({ hourMinor }: PlanProblem, minutes: number): number => (minutes * hourMinor) / 60

export const checkWork = (problem: PlanProblem, check: Check, off: readonly string[] = problem.off): Work => {
  const open = check.allCoversOn ? [] : coversToOpen(problem, check.coversOff, off)
  const close = check.allCoversOn ? off.toReversed() : []
  const minutes = check.minutes + coverMinutes(problem, open, 'openMin') + coverMinutes(problem, close, 'closeMin')
  return { open, close, minutes, minor: check.costMinor + minorOfMinutes(problem, minutes) }
}

/** Breaking something on the way is not in it: the virtual machines do not break. */
export const repairWork = (problem: PlanProblem, repair: Repair, off: readonly string[] = problem.off): Work => {
  const open = coversToOpen(problem, repair.coversOff, off)
  const minutes = repair.minutes + coverMinutes(problem, open, 'openMin')
  return { open, close: [], minutes, minor: repair.costMinor + minorOfMinutes(problem, minutes) }
}

/** The covers that are off after a move. */
export const offAfter = (off: readonly string[], { open, close }: Work): readonly string[] => [
  ...off.filter((id) => !close.includes(id)),
  ...open,
]

/** Whether a check would still show something new before a repair renews it. */
export const isLeft = ({ done, made, times }: Check): boolean => !done && made < times

/** Checks that can be made now and would show something new. */
export const openChecks = ({ checks, marks }: PlanProblem): readonly Check[] =>
  checks.filter((check) => isLeft(check) && check.needs.every((mark) => marks.includes(mark)))
