import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'

/** A percentage as typed, as a share from 0 to 1. Refused where it is none from 0 to 100. */
export const shareFromPercent = (text: string, where: string): Result<number> => {
  const percent = text.trim() === '' ? NaN : Number(text.replace('%', ''))
  if (percent >= 0 && percent <= 100) return ok(percent / 100)
  return refused(problem('not-a-percentage', where, `“${text}” is no percentage`, 'Write a number from 0 to 100'))
}
