import type { Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { Check } from '../blueprint/schema.ts'
import { resultOfWatts } from '../machine/index.ts'
import type { ReadingResult } from '../machine/result.ts'

/**
 * The result of a check read in watts, from `--watts` or from a number written as the result; null where neither is there.
 * Refused where the check is not read in watts.
 */
export const wattsEntry = (
  check: Check,
  powerW: number,
  written: string | undefined,
  option: string | undefined,
): Result<ReadingResult> | null => {
  const scale = check.kind === 'meter' ? undefined : check.scale
  const given = option ?? (scale !== undefined && /^\s*\d/.test(written ?? '') ? written : undefined)
  if (given === undefined) return null
  const watts = quantityFromText(given, 'powerW', '--watts')
  if (watts.kind === 'refused') return watts
  return resultOfWatts({ id: check.id, name: check.name, scale }, powerW, watts.value)
}
