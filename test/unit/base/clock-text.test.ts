import { describe, expect, it } from 'vitest'
import { clockText, dryText } from '../../../src/base/clock-text.ts'

const london = 'Europe/London'

describe('a moment near now', () => {
  it.each([
    ['2026-11-26T17:40:00.000Z', '2026-11-26T09:00:00.000Z', '17:40'],
    ['2026-11-27T17:40:00.000Z', '2026-11-26T17:40:00.000Z', '17:40 tomorrow'],
    ['2026-11-27T00:10:00.000Z', '2026-11-26T23:50:00.000Z', '00:10 tomorrow'],
    ['2026-11-25T17:40:00.000Z', '2026-11-26T00:01:00.000Z', '17:40 yesterday'],
    ['2026-11-28T17:40:00.000Z', '2026-11-26T17:40:00.000Z', '17:40 on Sat 28 Nov'],
    ['2027-01-01T08:00:00.000Z', '2026-12-31T08:00:00.000Z', '08:00 tomorrow'],
  ])('%s at %s is %s', (moment, now, said) => {
    expect(clockText(moment, now, london)).toBe(said)
  })

  // British Summer Time: forward on 29 March 2026, back on 25 October 2026, at 01:00 UTC (Summer Time Order 2002).
  it('keeps a day of 23 hours and one of 25 a day', () => {
    expect(clockText('2026-03-29T17:40:00.000Z', '2026-03-28T17:40:00.000Z', london)).toBe('18:40 tomorrow')
    expect(clockText('2026-10-25T17:40:00.000Z', '2026-10-24T17:40:00.000Z', london)).toBe('17:40 tomorrow')
    expect(clockText('2026-10-25T00:30:00.000Z', '2026-10-24T22:59:00.000Z', london)).toBe('01:30 tomorrow')
    expect(clockText('2026-10-25T00:30:00.000Z', '2026-10-24T23:30:00.000Z', london)).toBe('01:30')
  })

  it('is told in the reader’s zone: the same moment is another day elsewhere', () => {
    expect(clockText('2026-11-26T23:30:00.000Z', '2026-11-26T10:00:00.000Z', london)).toBe('23:30')
    expect(clockText('2026-11-26T23:30:00.000Z', '2026-11-26T10:00:00.000Z', 'Pacific/Auckland')).toBe('12:30 tomorrow')
  })
})

describe('when something is dry', () => {
  it('is a promise before its time and a question after', () => {
    const ready = '2026-11-27T17:40:00.000Z'
    expect(dryText(ready, '2026-11-26T17:40:00.000Z', london)).toBe('dry at 17:40 tomorrow')
    expect(dryText(ready, '2026-11-27T17:39:59.000Z', london)).toBe('dry at 17:40')
    expect(dryText(ready, ready, london)).toBe('should be dry since 17:40: feel it')
    expect(dryText(ready, '2026-11-28T09:00:00.000Z', london)).toBe('should be dry since 17:40 yesterday: feel it')
  })
})
