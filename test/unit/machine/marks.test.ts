import { describe, expect, it } from 'vitest'
import { markFromWords } from '../../../src/machine/index.ts'
import { markText, readMarks, spanText, type DateMark } from '../../../src/machine/stamps/marks.ts'

const today = '2026-06-30'
const mark = (part: string, words: string): DateMark => {
  const reading = markFromWords(words.split(' '))
  if (reading.kind === 'refused') throw new Error(reading.problems[0].what)
  return { note: `${part} ${words}`, part, reading: reading.value }
}

/** A published reading of three rings, 17 December 2005 (boards.straightdope.com/t/139855), beside two parts of the same months. */
const three = [
  mark('cover', 'three-rings 17 12 2005'),
  mark('base', 'two-rings 11 2005'),
  mark('motor', 'week 2005 50'),
]

describe('date marks to a build window', () => {
  it('three parts of the same weeks make a narrow window and an age', () => {
    const answer = readMarks(three, 1200, today)
    expect(answer.window).toMatchObject({ from: '2005-12-17', enough: true })
    expect(answer.window!.to <= '2006-06-17').toBe(true)
    expect(answer.ageYears).toBe(20)
    expect(answer.marks.every(({ flag }) => flag === null)).toBe(true)
  })

  it('a part stamped well after the others is flagged as likely a replacement', () => {
    const answer = readMarks([...three, mark('switch', 'written 2014 3')], 1200, today)
    expect(answer.marks.map(({ flag }) => flag)).toEqual([
      null,
      null,
      null,
      'Later than the others: likely a replacement',
    ])
    expect(answer.window!.to < '2007').toBe(true)
  })

  it('one mark says its own date and no age', () => {
    const answer = readMarks([mark('cover', 'one-ring 0 9 4')], 1200, today)
    expect(answer.marks[0].says).toContain('Apr 2009')
    expect(answer.window!.enough).toBe(false)
    expect(answer.ageYears).toBeNull()
  })

  it('a mark that can be no day up to today says so and does not spoil the rest', () => {
    const answer = readMarks([...three, mark('switch', 'written 2031 3')], 1200, today)
    expect(answer.window).toMatchObject({ from: '2005-12-17', enough: true })
    expect(answer.marks[3].says[0]).toMatch(/no such date up to today/)
  })

  /** Regulation (EU) No 666/2013: no more than 1600 W on the label from 1 September 2014. */
  it('a plate clue cuts the window: over 1600 W on an EU label is before September 2014', () => {
    const answer = readMarks([mark('plate', 'plate eu-or-uk-label')], 1800, today)
    expect(answer.window!.to).toBe('2014-08-31')
  })

  it('a serial number is read in every form it may have', () => {
    const answer = readMarks([...three, mark('plate', 'serial 1205-0177')], 1200, today)
    expect(answer.marks[3].says.join()).toMatch(/Dec 2005 if read as MMYY/)
  })

  it('nothing marked says nothing', () => expect(readMarks([], 1200, today)).toMatchObject({ window: null, marks: [] }))
})

describe('a mark in words', () => {
  it.each([
    ['one-ring 0 9 4', 'one ring, 0 and 9, arrow at 4'],
    ['three-rings 17 12', 'three rings, day 17, month 12'],
    ['dots 09 6', '6 dots, year 09'],
    ['written 2009 4', 'written 4/2009'],
    ['serial 12 34', 'serial number 12 34'],
    ['plate 2009-04-01 ukca', 'plate: date 2009-04-01, UKCA mark'],
  ])('%s', (words, text) => expect(markText(mark('x', words).reading)).toBe(text))

  it.each([
    'two-rings 13 2009',
    'week 2009 54',
    'three-rings 40 2',
    'dots 2009',
    'plate',
    'plate soon',
    'square 1',
    'two-rings 4 2009 9',
  ])('refuses %s', (words) => {
    expect(markFromWords(words.split(' ')).kind).toBe('refused')
  })

  it('spans in months', () => {
    expect(spanText({ from: '2009-03-01', to: '2009-03-31' })).toBe('Mar 2009')
    expect(spanText({ from: '2009-03-01', to: '2009-09-30' })).toBe('Mar to Sep 2009')
    expect(spanText({ from: '2008-11-01', to: '2009-05-31' })).toBe('Nov 2008 to May 2009')
  })
})
