import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { jobOf } from '../bench/job.ts'
import { instrumentFor, resultFromText, virtualResult } from '../machine/index.ts'
import type { ReadingResult } from '../machine/result.ts'
import { minutesOr, type Maker, type Noting, type Read } from './noting.ts'
import { textOf } from './option-text.ts'
import { wattsEntry } from './watts-entry.ts'

/** `thrum read`: what a check showed. */
export const addReading = (noting: Noting): void => {
  noting(
    'read <machine> <check> [result]',
    'enter a reading: 4.7, 12k, open, charging (rises, then open), jumps, cannot-tell, or a grade; none on a virtual machine takes it',
    readingNote,
  )
    .option('--instrument <id>', 'the meter; left out, the budget multimeter, or the power meter for watts')
    .option('--watts <quantity>', 'what the power meter showed, for a check read in watts')
    .option('--minutes <number>', 'minutes it took')
}

const readingNote: Maker = (read, [checkId = '', written], options) => {
  const check = read.blueprint?.checks.find((c) => c.id === checkId)
  if (check === undefined) return ok({ kind: 'reading', check: checkId, result: { kind: 'cannot-tell' }, minutes: 0 })
  const result =
    wattsEntry(check, read.document.state.plate.powerW, written, textOf(options, 'watts')) ??
    (written === undefined ? takenOnVirtual(read, checkId) : resultFromText(check, written))
  if (result.kind === 'refused') return result
  const minutes = minutesOr(options, check.minutes)
  if (minutes.kind === 'refused') return minutes
  return ok({
    kind: 'reading',
    check: checkId,
    result: result.value,
    minutes: minutes.value,
    instrument: textOf(options, 'instrument') ?? instrumentFor(check),
  })
}

const takenOnVirtual = ({ document, blueprint }: Read, check: string): Result<ReadingResult> => {
  const seed = document.state.practiceSeed
  if (seed === null || blueprint === undefined)
    return refused(
      problem(
        'no-result',
        `reading of ${check}`,
        'No result was given',
        'Write what you read: 4.7, open, charging, jumps, cannot-tell, or a grade',
      ),
    )
  return ok(virtualResult(jobOf(document.state, document.notes, blueprint), seed, check))
}
