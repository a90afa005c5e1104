import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { Check } from '../blueprint/schema.ts'
import type { ReadingResult } from './result.ts'

/**
 * Reads a result as a person writes it: `4.7`, `12 kΩ`, `open`, `charging`, `jumps`, `cannot-tell`, or the id or name of a grade.
 * Refuses what the check cannot give, and says what it can.
 */
export const resultFromText = (check: Check, text: string): Result<ReadingResult> => {
  const plain = text.trim().toLowerCase()
  if (['cannot-tell', 'cannot tell', 'could not tell', '?'].includes(plain)) return ok({ kind: 'cannot-tell' })
  return check.kind === 'meter' ? meterResult(check, text, plain) : gradeResult(check, text, plain)
}

const meterResult = (check: Check, text: string, plain: string): Result<ReadingResult> => {
  if (['open', 'ol', 'o.l'].includes(plain)) return ok({ kind: 'open' })
  if (['charging', 'rises, then open', 'rises then open'].includes(plain)) return ok({ kind: 'charging' })
  if (['jumps', 'jumps when moved'].includes(plain)) return ok({ kind: 'jumps' })
  const ohms = quantityFromText(text, 'resistanceOhm', `reading of ${check.id}`)
  if (ohms.kind === 'ok') return ok({ kind: 'ohms', resistanceOhm: ohms.value })
  const [first] = ohms.problems
  if (first?.code !== 'not-a-number') return ohms
  return refused(
    problem(
      'not-a-result',
      `reading of ${check.id}`,
      `“${text}” is no meter reading`,
      'Write a number with its unit such as 4.7 Ω, or open, charging, jumps, cannot-tell',
    ),
  )
}

const gradeResult = (check: Exclude<Check, { kind: 'meter' }>, text: string, plain: string): Result<ReadingResult> => {
  const outcome = check.outcomes.find(({ id, name }) => id === plain || name.toLowerCase() === plain)
  if (outcome !== undefined) return ok({ kind: 'grade', outcome: outcome.id })
  const choices = check.outcomes.map(({ id }) => id).join(', ')
  return refused(
    problem(
      'not-an-outcome',
      `reading of ${check.id}`,
      `“${text}” is not a result of “${check.name}”`,
      `Write one of ${choices}, or cannot-tell`,
    ),
  )
}
