import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { valueOf } from '../../../src/base/result.ts'
import { runStamps } from '../../../src/machine/index.ts'

const names = Array.from({ length: 9 }, (_, i) => `part ${i}`)
const rings = (part: string, year: number, month: number) => ({ part, kind: 'two-rings', seen: { year, month } })
const input = (stamps: readonly unknown[], more: object = {}) => ({
  today: '2024-06-01',
  earliestYear: 1980,
  parts: names,
  stamps,
  ...more,
})
const three = (...dates: readonly (readonly [number, number])[]) => dates.map(([y, m], i) => rings(names[i], y, m))
const run = (stamps: readonly unknown[], more: object = {}) => valueOf(runStamps(input(stamps, more)))
const verdicts = (stamps: readonly unknown[], more: object = {}) => run(stamps, more).parts.map((one) => one.verdict)

const someDates = fc.array(fc.tuple(fc.integer({ min: 1990, max: 2023 }), fc.integer({ min: 1, max: 12 })), {
  minLength: 3,
  maxLength: 8,
})

describe('the rule for several parts', () => {
  it('judges nothing under three parts and says so', () => {
    const answer = run(three([2010, 3], [2010, 4]))
    expect(answer.window).toEqual({ from: '2010-03-01', to: '2024-06-01', enough: false })
    expect(answer.remarks[0]).toMatch(/Fewer than 3/)
  })
  it('counts parts, not stamps', () => {
    expect(run([rings('part 0', 2010, 3), rings('part 0', 2010, 4), rings('part 1', 2010, 4)]).window.enough).toBe(
      false,
    )
  })
  it('does not count rings that name no year among the dated parts, nor judge them', () => {
    const yearless = { part: 'part 2', kind: 'three-rings', seen: { month: 12, day: 17 } }
    const answer = run([...three([2010, 3], [2010, 4]), yearless])
    expect(answer.window.enough).toBe(false)
    expect(verdicts([...three([2010, 3], [2010, 4], [2010, 5]), { ...yearless, part: 'part 3' }])).toEqual([
      'original',
      'original',
      'original',
      'not judged',
    ])
  })
  it('replaced is later than 12 months after the median, not at it', () => {
    expect(verdicts(three([2010, 4], [2010, 4], [2011, 4]))[2]).toBe('original')
    expect(verdicts(three([2010, 4], [2010, 4], [2011, 5]))[2]).toBe('likely replaced')
  })
  it('old stock is earlier than 18 months before the median, not at it', () => {
    expect(verdicts(three([2010, 4], [2010, 4], [2008, 10]))[2]).toBe('original')
    expect(verdicts(three([2010, 4], [2010, 4], [2008, 9]))[2]).toBe('old stock or donor')
  })
  it('replaced is later than two months after the plate’s date, not at it', () => {
    const plate = { date: '2010-04-01' }
    expect(verdicts(three([2010, 4], [2010, 4], [2010, 6]), { plate })[2]).toBe('original')
    expect(verdicts(three([2010, 4], [2010, 4], [2010, 7]), { plate })[2]).toBe('likely replaced')
  })
  it('a power limit ends the window, for dry machines of the EU or UK only', () => {
    const stamps = three([2014, 6], [2014, 6], [2014, 6])
    expect(run(stamps, { plate: { inputW: 1800, dryEuOrUk: true } }).window.to).toBe('2014-08-31')
    expect(run(stamps, { plate: { inputW: 1600, dryEuOrUk: true } }).window.to).toBe('2014-12-01')
    expect(run(stamps, { plate: { inputW: 1800 } }).window.to).toBe('2014-12-01')
  })
  it('a plate that disagrees is said, not hidden', () => {
    const answer = run(three([2014, 6], [2014, 6], [2014, 6]), { plate: { ukca: true } })
    expect(answer.remarks.join()).toMatch(/disagree/)
    expect(answer.window.from).toBe('2014-06-01')
  })
  it('a part with only a year spreads the window over that year and is not flagged for its first day', () => {
    const yearOnly = { part: 'part 2', kind: 'written', seen: { year: 2010 } }
    const answer = run([...three([2010, 3], [2010, 4]), yearOnly])
    expect(answer.window).toEqual({ from: '2010-04-01', to: '2011-06-01', enough: true })
    const late = run([...three([2011, 11], [2011, 11]), yearOnly])
    expect(late.parts[2]?.verdict).toBe('original')
  })
  it('takes week 1 that begins in December, ISO 8601: 2008-12-29 is 2009-W01-1', () => {
    const week = { part: 'part 0', kind: 'week', seen: { year: 9, week: 1 } }
    expect(run([week], { today: '2008-12-29' }).parts[0]?.candidates[0]?.from).toBe('2008-12-29')
  })
  it('keeps both months where public readings disagree', () => {
    const seen = { left: 2, right: 4, month: 3, coveredMonth: 4 }
    const [part] = run([{ part: 'part 0', kind: 'one-ring', seen }]).parts
    expect(part.candidates.map((one) => one.from)).toEqual(['2024-03-01', '2024-04-01'])
  })
})

describe('laws', () => {
  it('the order of stamps does not matter', () => {
    fc.assert(
      fc.property(someDates, (dates) => {
        const stamps = three(...dates)
        expect(run(stamps.toReversed()).window).toEqual(run(stamps).window)
      }),
    )
  })
  it('a stamp that repeats the median of an odd count changes nothing in the window', () => {
    fc.assert(
      fc.property(
        someDates.filter((dates) => dates.length % 2 === 1),
        (dates) => {
          const sorted = dates.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
          const median = sorted[(sorted.length - 1) / 2]
          expect(run(three(...dates, median)).window).toEqual(run(three(...dates)).window)
        },
      ),
    )
  })
  it('the window begins at a stamp and never ends after today', () => {
    fc.assert(
      fc.property(someDates, (dates) => {
        const { window, parts } = run(three(...dates))
        expect(parts.some((one) => one.candidates[0].from === window.from)).toBe(true)
        expect(window.to >= window.from && window.to <= '2024-06-01').toBe(true)
      }),
    )
  })
})

describe('what cannot be is refused with what, where and mend', () => {
  const bad: readonly (readonly [string, object, string])[] = [
    ['month 13', rings('part 0', 2010, 13), 'seen.month'],
    ['31 June', { part: 'part 0', kind: 'three-rings', seen: { year: 2010, month: 6, day: 31 } }, 'seen'],
    [
      'day 0 of two rings',
      { part: 'part 0', kind: 'three-rings', seen: { year: 2010, month: 6, day: { tens: 0, units: 0 } } },
      'seen',
    ],
    ['week 54', { part: 'part 0', kind: 'week', seen: { year: 2010, week: 54 } }, 'seen.week'],
    ['week 53 of a year of 52', { part: 'part 0', kind: 'week', seen: { year: 2010, week: 53 } }, 'seen'],
    ['a year before the design', rings('part 0', 1979, 1), 'seen'],
    ['a month to come', rings('part 0', 2024, 7), 'seen'],
    ['a part not named', rings('lid', 2010, 1), 'part'],
  ]
  it.each(bad)('%s', (_name, stamp, place) => {
    const answer = runStamps(input([stamp]))
    if (answer.kind !== 'refused') throw new Error('it was taken')
    expect(answer.problems).toHaveLength(1)
    const [first] = answer.problems
    expect(first.where).toBe(`stamps[0].${place}`)
    expect(problemText(first)).not.toMatch(/Invalid input/)
    expect(first.mend).not.toBe('')
  })
})
