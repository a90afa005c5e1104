import { describe, expect, it } from 'vitest'
import { looksOfWhole } from '../../../src/machine/whole-looks.ts'

// The rule of the trade, judgement: a machine looks as its worst part does, and one polished part makes no better machine.
describe('the looks of a whole machine', () => {
  it.each([
    ['nothing graded: as it came in', undefined, 'fair', [], 'C', 'condition'],
    ['nothing said at all: good', undefined, undefined, [], 'B', 'condition'],
    ['one part polished lifts nothing', undefined, 'good', ['A'], 'B', 'condition'],
    ['two neither', undefined, 'fair', ['A', 'A'], 'C', 'condition'],
    ['three parts speak for it', undefined, 'good', ['A', 'A', 'A'], 'A', 'parts'],
    ['the worst of them', undefined, 'poor', ['A', 'B', 'A'], 'B', 'parts'],
    ['one part worn takes it down', undefined, 'good', ['C'], 'C', 'parts'],
    ['as it is listed, whatever the parts', 'B', 'poor', ['D', 'D', 'D'], 'B', 'listed'],
  ] as const)('%s', (_words, listed, condition, parts, grade, by) => {
    expect(looksOfWhole(listed, condition, parts)).toEqual({ grade, by })
  })
})
