import type { Drying } from '../contract.ts'

type Entry = Pick<Drying, 'note' | 'readyAt'> & { readonly name: string }

/**
 * What dries, as a calendar that a phone takes in: an entry with an alarm for each, by RFC 5545. Moments stand in UTC, so that the
 * phone shows them in its own time.
 * @param machine its name
 * @param now when the calendar is written, ISO 8601
 */
export const dryingCalendar = (machine: string, drying: readonly Entry[], now: string): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Thrum//Drying//EN',
    ...drying.flatMap((one) => eventOf(machine, one, now)),
    'END:VCALENDAR',
  ]
    .map(folded)
    .join('')

const minutesLong = 15

const eventOf = (machine: string, { note, name, readyAt }: Entry, now: string): readonly string[] => {
  const summary = escaped(`${name} should be dry: ${machine}`)
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(note)}@drying.thrum`,
    `DTSTAMP:${utcOf(now)}`,
    `DTSTART:${utcOf(readyAt)}`,
    `DURATION:PT${minutesLong}M`,
    `SUMMARY:${summary}`,
    `DESCRIPTION:${escaped('Feel it through before it goes back in. Damp, it waits longer.')}`,
    'TRANSP:TRANSPARENT',
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    'TRIGGER:PT0M',
    `DESCRIPTION:${summary}`,
    'END:VALARM',
    'END:VEVENT',
  ]
}

/** `2026-03-15T17:40:00.000Z` → `20260315T174000Z`, section 3.3.5, form 2. */
const utcOf = (iso: string): string => new Date(iso).toISOString().replace(/\.\d+/, '').replace(/[-:]/g, '')

/** Section 3.3.11: backslash, semicolon and comma are escaped, a line break is written out. */
const escaped = (text: string): string => text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n')

const mostOctets = 75

/** Section 3.1: no line is longer than 75 octets; what is over goes on after a line break and a space. Letters stay whole. */
const folded = (line: string): string => {
  let [out, octets] = ['', 0]
  for (const letter of line) {
    const size = octetsOf(letter)
    if (octets + size > mostOctets) [out, octets] = [`${out}\r\n `, 1]
    out += letter
    octets += size
  }
  return `${out}\r\n`
}

/** How many octets a letter takes in UTF-8. */
const octetsOf = (letter: string): number => {
  const code = letter.codePointAt(0) ?? 0
  if (code < 0x80) return 1
  if (code < 0x800) return 2
  return code < 0x10000 ? 3 : 4
}
