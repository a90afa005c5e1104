import { expect } from 'vitest'
import { problemText, type Problem } from '../../src/base/problem.ts'

/** Words of the schema library, and of values that nobody wrote. */
const notPlain = /Invalid (input|option|string|number|key|value|discriminator|ISO)|expected |received |Too (small|big)|Unrecognized|must match pattern|undefined|\[object|NaN|\.\s*\./ // prettier-ignore

/** Holds that a refusal says what is wrong, where, and what would be right, in plain words. */
export const expectPlain = (problems: readonly Problem[], told: unknown): void => {
  expect(problems.length, JSON.stringify(told)).toBeGreaterThan(0)
  for (const one of problems) {
    const text = problemText(one)
    expect(text, JSON.stringify(told)?.slice(0, 500)).not.toMatch(notPlain)
    expect(
      [one.code, one.what, one.mend].every((part) => part.trim() !== ''),
      text,
    ).toBe(true)
    if (one.code === 'not-of-the-form') expect(one.where, text).not.toBe('')
  }
}
