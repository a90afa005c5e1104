import { grades, type Grade } from '../facts/asking.ts'
import type { Condition } from '../facts/buying.ts'

/** What the looks of a whole machine go by. */
export type WholeLooks = { readonly grade: Grade; readonly by: 'listed' | 'parts' | 'condition' }

/** From so many graded parts on they speak for the whole machine; fewer may only take its looks down. Judgement. */
export const partsForWhole = 3

const gradeOfCondition: Readonly<Record<Condition, Grade>> = { good: 'B', fair: 'C', poor: 'D' }

/**
 * The looks of a whole machine, by one rule for what to ask and for cleaning. It is offered as it is listed. Else its parts say it, the
 * worst of them, each by the last word on it: of three parts and more in any case, of fewer only where that is worse than it came in,
 * so that one part polished makes no better machine.
 */
export const looksOfWhole = (
  listed: Grade | undefined,
  condition: Condition | undefined,
  parts: readonly Grade[],
): WholeLooks => {
  if (listed !== undefined) return { grade: listed, by: 'listed' }
  const cameIn = gradeOfCondition[condition ?? 'good']
  const worst = worstOf(parts)
  const speaks = worst !== null && (parts.length >= partsForWhole || grades.indexOf(worst) > grades.indexOf(cameIn))
  return speaks ? { grade: worst, by: 'parts' } : { grade: cameIn, by: 'condition' }
}

const worstOf = (parts: readonly Grade[]): Grade | null => grades.findLast((grade) => parts.includes(grade)) ?? null
