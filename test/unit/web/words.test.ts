import { describe, expect, it } from 'vitest'
import { complaintsText, minutesText, percentText, sentence } from '../../../src/web/words.ts'
import { sourceText } from '../../../src/base/source-text.ts'

describe('words', () => {
  it('never calls the unlikely impossible or the likely certain', () => {
    expect(percentText(0)).toBe('0 %')
    expect(percentText(0.004)).toBe('under 1 %')
    expect(percentText(0.997)).toBe('over 99 %')
    expect(percentText(0.38)).toBe('38 %')
  })
  it('says minutes as a bench would', () =>
    expect([0, 0.4, 4, 59.6, 80].map(minutesText)).toEqual(['0 min', 'under 1 min', '4 min', '1 h', '1 h 20 min']))
  it('ends a sentence once', () =>
    expect(['Brown', 'Brown.', 'Is it brown?'].map(sentence)).toEqual(['Brown.', 'Brown.', 'Is it brown?']))
  it('joins complaints into one sentence', () => {
    expect(complaintsText(['dead', 'weak-suction'])).toBe('Dead, weak suction')
    expect(complaintsText([])).toBe('No complaint noted')
  })
  it('shows where a figure comes from, and how far to trust that', () =>
    expect(sourceText({ title: 'A table', clause: 'row 3', evidence: 'from memory' })).toBe(
      'A table, row 3 (from memory)',
    ))
})
