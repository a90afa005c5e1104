import { describe, expect, it } from 'vitest'
import { noteLines } from '../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { added, flexRefitted, log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const lineOf = (input: NoteContentInput): string | undefined => noteLines(log([added(), input]), tinyBlueprint)[1]?.text

describe('how a note reads', () => {
  it.each<[NoteContentInput, string]>([
    [{ kind: 'seen', complaints: ['sparks'], text: 'At the brushes' }, 'Seen: sparks seen; At the brushes'],
    [
      { kind: 'reading', check: 'pins-on', result: { kind: 'open' }, minutes: 1 },
      'Line pin to neutral pin, switch on: open',
    ],
    [
      { kind: 'reading', check: 'pins-on', result: { kind: 'ohms', resistanceOhm: 14 }, minutes: 1 },
      'Line pin to neutral pin, switch on: 14 Ω',
    ],
    [
      { kind: 'reading', check: 'flex-line', result: { kind: 'jumps' }, minutes: 1 },
      'Flex, line conductor: jumps when moved',
    ],
    [
      { kind: 'reading', check: 'flex-line', result: { kind: 'cannot-tell' }, minutes: 1 },
      'Flex, line conductor: could not tell',
    ],
    [
      { kind: 'reading', check: 'look-flex', result: { kind: 'grade', outcome: 'cut' }, minutes: 1 },
      'Flex, whole length: Cut or crushed',
    ],
    [{ kind: 'opened', cover: 'back-cover', minutes: 3 }, 'Opened: back cover, 3 min'],
    [{ kind: 'closed', cover: 'back-cover', minutes: 0.5 }, 'Closed: back cover, 0.5 min'],
    [{ kind: 'confirmed', fault: 'flex-open' }, 'Confirmed: flex, live conductor open'],
    [flexRefitted, 'Repaired: flex cut back and refitted, 12 min, £1.50'],
    [
      {
        kind: 'repaired',
        repair: 'change-switch',
        option: 'salvaged',
        minutes: 15,
        costMinor: 0,
        text: 'Off the blue one',
      },
      'Repaired: switch changed (from the shelf), 15 min, £0.00 – Off the blue one',
    ],
    [{ kind: 'spent', costMinor: 250, text: 'Switch cleaner' }, 'Spent: Switch cleaner, £2.50'],
    [{ kind: 'said', text: 'Rang the seller' }, 'Rang the seller'],
    [
      { kind: 'left', exit: 'sell-working', receivedMinor: 3500, safety: 'Tested by K.' },
      'Sold working, £35.00. Safety: Tested by K.',
    ],
    [{ kind: 'left', exit: 'break-for-parts', receivedMinor: 900, minutes: 25 }, 'Broken for parts, 25 min, £9.00'],
  ])('%j', (input, text) => {
    expect(lineOf(input)).toBe(text)
  })

  it('tells how a machine came in, in its own currency', () => {
    const notes = log([added({ complaints: ['dead'], claim: 'Just stopped', missing: ['motor'], currency: 'EUR' })])
    expect(noteLines(notes, tinyBlueprint)[0]?.text).toBe(
      'Came in: Heather grey upright, paid €5.00. Seller says: dead: nothing happens at all; Just stopped. Missing: motor',
    )
  })

  it('keeps a struck note in the history, marked, and says what was struck', () => {
    const lines = noteLines(
      log([
        added(),
        { kind: 'reading', check: 'pins-on', result: { kind: 'open' }, minutes: 1 },
        { kind: 'struck', note: 'n2', reason: 'switch was off' },
      ]),
      tinyBlueprint,
    )
    expect(lines.map((line) => [line.text, line.struck, line.canStrike])).toEqual([
      ['Came in: Heather grey upright, paid £5.00', false, false],
      ['Line pin to neutral pin, switch on: open', true, false],
      ['Struck out: Line pin to neutral pin, switch on: open – switch was off', false, false],
    ])
  })

  it('lets only the leaving be struck once the machine has left', () => {
    const lines = noteLines(
      log([added(), flexRefitted, { kind: 'left', exit: 'scrap', receivedMinor: 0 }]),
      tinyBlueprint,
    )
    expect(lines.map((line) => line.canStrike)).toEqual([false, false, true])
  })

  it('falls back to ids when the blueprint is not known any more', () => {
    expect(noteLines(log([added(), flexRefitted]), null)[1]?.text).toBe('Repaired: refit-flex, 12 min, £1.50')
  })
})
