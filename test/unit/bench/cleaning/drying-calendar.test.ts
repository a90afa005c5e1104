import { describe, expect, it } from 'vitest'
import { dryingCalendar } from '../../../../src/bench/cleaning/drying-calendar.ts'

const now = '2026-11-26T17:40:12.345Z'
const calendarOf = (machine: string, name = 'Motor filter') =>
  dryingCalendar(machine, [{ note: 'n2', name, readyAt: '1998-01-19T07:00:00.000Z' }], now)

/** Section 3.1: lines are unfolded by taking out each line break that a space follows. */
const unfolded = (text: string): readonly string[] => text.replaceAll('\r\n ', '').split('\r\n')
const valueOf = (text: string, name: string): string =>
  unfolded(text)
    .find((line) => line.startsWith(`${name}:`))!
    .slice(name.length + 1)

/** RFC 5545, iCalendar; sections named beside each check. */
describe('the calendar of what dries', () => {
  it('opens and closes its parts in order, each line ended by CRLF (3.1, 3.4, 3.6.1, 3.6.6)', () => {
    const text = calendarOf('Grey upright')
    expect(text.endsWith('\r\n')).toBe(true)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    const parts = unfolded(text).filter((line) => /^(BEGIN|END):/.test(line))
    expect(parts).toEqual(['BEGIN:VCALENDAR', 'BEGIN:VEVENT', 'BEGIN:VALARM', 'END:VALARM', 'END:VEVENT', 'END:VCALENDAR']) // prettier-ignore
  })

  it('has what must be there, once each (3.6: VERSION, PRODID; 3.6.1: UID, DTSTAMP, DTSTART; 3.6.6: ACTION, TRIGGER)', () => {
    const lines = unfolded(calendarOf('Grey upright'))
    for (const name of ['VERSION', 'PRODID', 'UID', 'DTSTAMP', 'DTSTART', 'ACTION', 'TRIGGER'])
      expect(lines.filter((line) => line.startsWith(`${name}:`))).toHaveLength(1)
    expect(lines).toContain('VERSION:2.0')
    expect(lines).toContain('ACTION:DISPLAY')
    // 3.6.6: an alarm that displays has a description; DURATION and DTEND exclude each other in an event.
    const alarm = lines.slice(lines.indexOf('BEGIN:VALARM'), lines.indexOf('END:VALARM'))
    expect(alarm.some((line) => line.startsWith('DESCRIPTION:'))).toBe(true)
    expect(lines.some((line) => line.startsWith('DTEND'))).toBe(false)
  })

  it('writes moments in UTC: 3.3.5, form 2, whose own example is 19980119T070000Z', () => {
    expect(valueOf(calendarOf('Grey upright'), 'DTSTART')).toBe('19980119T070000Z')
    expect(valueOf(calendarOf('Grey upright'), 'DTSTAMP')).toBe('20261126T174012Z')
  })

  it('escapes text by 3.3.11', () => {
    const said = valueOf(calendarOf('Upright, old; no\\name\nsecond line'), 'SUMMARY')
    expect(said).toBe(String.raw`Motor filter should be dry: Upright\, old\; no\\name\nsecond line`)
  })

  it('folds after 75 octets at most and cuts no letter in two (3.1)', () => {
    const name = 'Ä€😀'.repeat(40)
    const text = calendarOf(name)
    for (const line of text.split('\r\n')) {
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
      expect(line).not.toContain('\uFFFD')
    }
    expect(new TextDecoder().decode(new TextEncoder().encode(text))).toBe(text)
    expect(valueOf(text, 'SUMMARY')).toBe(`Motor filter should be dry: ${name}`)
  })
})
