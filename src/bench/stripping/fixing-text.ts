import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Fixing } from './strip-note.ts'

/**
 * A fixing as one writes it: `3 × screw 4×16 in lid`, `2 x TX15`, `felt washer in pot 1`. A count left out is one; what follows the last
 * “in” is where it is kept. Refused where it names no kind, or the count is not 1 to 200.
 */
export const fixingFromText = (written: string): Result<Fixing> => {
  const text = written.trim()
  const counted = /^(\d+)\s*[×xX*]\s+(.*)$/s.exec(text) ?? /^(\d+)\s*×\s*(.*)$/s.exec(text)
  const count = counted === null ? 1 : Number(counted[1])
  const rest = (counted?.[2] ?? text).trim()
  const placed = /^(.*\S)\s+in\s+(\S.*)$/s.exec(rest)
  const kind = (placed?.[1] ?? rest).trim()
  if (kind === '' || kind.length > 120 || count < 1 || count > 200) return refused(notFixing(written))
  return ok({ count, kind, place: placed?.[2]?.trim().slice(0, 120) ?? '' })
}

const notFixing = (written: string) =>
  problem(
    'not-a-fixing',
    '--fixing',
    `“${written}” does not say how many of what`,
    'Write such as "3 × screw 4×16 in lid", with 1 to 200 of a kind; the place can be left out',
  )
