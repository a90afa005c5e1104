import type { Result } from '../base/result.ts'
import { ok, refused } from '../base/result.ts'
import { problem } from '../base/problem.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { markForms, markFromWords } from '../machine/index.ts'
import type { Options } from './with-bench.ts'

/** What `thrum stamp` takes after the part. */
export const markUsage = `date mark read off a part: ${Object.values(markForms).join('; ')}`

/** A date mark as a note. */
export const stampNote = ([part = '', ...words]: readonly string[]): Result<NoteContentInput> => {
  const reading = markFromWords(words)
  return reading.kind === 'ok' ? ok({ kind: 'stamp', part, reading: reading.value }) : reading
}

/** Age, use and make from `--age`, `--wear` and `--make`, as far as they are given. Refused where the age is no number. */
export const historyOf = (
  options: Options,
): Result<{ ageYears?: number; wear?: 'light' | 'usual' | 'heavy'; make?: string }> => {
  const { age, wear, make } = options
  if (typeof age === 'string' && !/^\d+(\.\d+)?$/.test(age))
    return refused(problem('not-a-number', '--age', `“${age}” is not a number of years`, 'Write such as 12'))
  return ok({
    ...(typeof age === 'string' ? { ageYears: Number(age) } : {}),
    ...(typeof wear === 'string' ? { wear: wear as 'usual' } : {}),
    ...(typeof make === 'string' ? { make } : {}),
  })
}

/** What came to be known of a machine's age, use and make, as a note. */
export const historyNote = (options: Options): Result<NoteContentInput> => {
  const known = historyOf(options)
  return known.kind === 'ok' ? ok({ kind: 'history', ...known.value }) : known
}
