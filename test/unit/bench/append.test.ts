import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkNote } from '../../../src/bench/append.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { added, content, flexRefitted, gatesPassed, log, runsWell } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

/** Refusals of a note after these, as lines of text with their codes; empty when it is taken. */
const refusals = (before: readonly NoteContentInput[], next: NoteContentInput): readonly string[] => {
  const result = checkNote(log(before), content(next), tinyBlueprint)
  return result.kind === 'ok' ? [] : result.problems.map((each) => `[${each.code}] ${problemText(each)}`)
}

const opened = (cover: string): NoteContentInput => ({ kind: 'opened', cover, minutes: 1 })
const closed = (cover: string): NoteContentInput => ({ kind: 'closed', cover, minutes: 1 })
const graded = (check: string, outcome: string): NoteContentInput => ({
  kind: 'reading',
  check,
  result: { kind: 'grade', outcome },
  minutes: 1,
})
const open = (check: string): NoteContentInput => ({ kind: 'reading', check, result: { kind: 'open' }, minutes: 1 })
const soldWorking: NoteContentInput = {
  kind: 'left',
  exit: 'sell-working',
  receivedMinor: 3500,
  safety: 'Tested by K.',
}

describe('the first note', () => {
  it('must say that the machine came in', () => {
    expect(refusals([], open('pins-on'))).toEqual([
      '[first-note] kind: The first note of a machine says that it came in. Add the machine first.',
    ])
    expect(refusals([], added())).toEqual([])
  })

  it('names only parts of the blueprint as missing', () => {
    expect(refusals([], added({ missing: ['motor', 'hose'] }))).toEqual([
      '[unknown-part] missing[1]: “hose” is not a part here. Use one of plug, flex, switch, motor.',
    ])
  })

  it('is not written twice', () => {
    expect(refusals([added()], added())[0]).toContain('[already-added]')
  })
})

describe('names that the blueprint does not know', () => {
  it.each<[NoteContentInput, string]>([
    [open('pins-off'), '[unknown-check] check: “pins-off” is not a check here. Use one of pins-on,'],
    [opened('lid'), '[unknown-cover] cover: “lid” is not a cover here. Use one of back-cover, motor-cover.'],
    [closed('lid'), '[unknown-cover] cover: “lid” is not a cover here. Use one of back-cover, motor-cover.'],
    [{ kind: 'confirmed', fault: 'flux' }, '[unknown-fault] fault: “flux” is not a fault here. Use one of flex-open,'],
    [
      { ...flexRefitted, repair: 'new-flex' } as NoteContentInput,
      '[unknown-repair] repair: “new-flex” is not a repair here. Use one of refit-flex,',
    ],
    [
      { ...flexRefitted, option: 'new' } as NoteContentInput,
      '[unknown-option] option: “new” is not an option here. It must be refit.',
    ],
    [
      graded('look-flex', 'fine'),
      '[unknown-outcome] result.outcome: “fine” is not an outcome here. Use one of good, cut.',
    ],
  ])('%j', (next, text) => {
    const found = refusals([added()], next)
    expect(found).toHaveLength(1)
    expect(found[0]?.startsWith(text)).toBe(true)
  })
})

describe('readings', () => {
  it('cannot be taken behind a cover that is on, and says where else to measure', () => {
    // motor.a hangs on switch.out by one lead; motor.b on the neutral pin by the flex.
    expect(refusals([added(), opened('back-cover')], open('motor-winding'))).toEqual([
      '[covered] check: Probe point `motor.a` is behind the motor cover. Open it first, or measure at `switch.out`.',
      '[covered] check: Probe point `motor.b` is behind the motor cover. Open it first, or measure at `plug.n`.',
    ])
  })

  it('name the covers in order when several are on', () => {
    expect(refusals([added()], graded('look-brushes', 'long'))).toEqual([
      '[covered] check: “Motor brushes” needs the motor cover off. Open first, in this order: back cover and motor cover.',
    ])
  })

  it('are taken once the covers are off, and not after that opening is struck out', () => {
    const before = [added(), opened('back-cover'), opened('motor-cover')]
    expect(refusals(before, open('motor-winding'))).toEqual([])
    expect(refusals([...before, { kind: 'struck', note: 'n3' }], open('motor-winding'))).toHaveLength(2)
  })

  it('of a meter are not graded, and of a graded check not in ohms', () => {
    expect(refusals([added()], graded('pins-on', 'good'))).toEqual([
      '[wrong-result] result: “Line pin to neutral pin, switch on” is read from the meter, not graded. Enter ohms, open, rises then open, jumps when moved, or could not tell.',
    ])
    expect(refusals([added()], open('look-flex'))).toEqual([
      '[wrong-result] result: “Flex, whole length” is graded, not read from a meter. Enter one of good, cut, or could not tell.',
    ])
  })

  it('may always be “could not tell”', () => {
    const cannotTell = (check: string): NoteContentInput => ({
      kind: 'reading',
      check,
      result: { kind: 'cannot-tell' },
      minutes: 1,
    })
    expect(refusals([added()], cannotTell('pins-on'))).toEqual([])
    expect(refusals([added()], cannotTell('look-flex'))).toEqual([])
  })
})

describe('running', () => {
  it('waits for the checks before it', () => {
    expect(refusals([added()], runsWell)).toEqual([
      '[running-barred] check: “Run it for a minute” runs the machine, and it must not be run yet: Both pins to touchable metal; Flex, whole length. With the plug out, mend what was not passed and make the checks named.',
    ])
    expect(refusals([added(), ...gatesPassed], runsWell)).toEqual([])
  })

  it('is barred by a confirmed danger until that is repaired and the checks are made again', () => {
    const danger = [added(), ...gatesPassed, { kind: 'confirmed', fault: 'flex-open' } as const]
    expect(refusals(danger, runsWell)[0]).toContain('a broken conductor can arc')
    expect(refusals([...danger, flexRefitted], runsWell)[0]).toContain('[running-barred]')
    expect(refusals([...danger, flexRefitted, ...gatesPassed], runsWell)).toEqual([])
  })

  it('needs every cover on', () => {
    expect(refusals([added(), ...gatesPassed, opened('back-cover')], runsWell)).toEqual([
      '[covers-off] check: “Run it for a minute” runs the machine, and the back cover is off. Close all covers first: nothing is run with a cover off.',
    ])
  })
})

describe('covers', () => {
  it('come off in order, once', () => {
    expect(refusals([added()], opened('motor-cover'))).toEqual([
      '[order-of-covers] cover: The motor cover comes off after the back cover. Open the back cover first.',
    ])
    expect(refusals([added(), opened('back-cover')], opened('motor-cover'))).toEqual([])
    expect(refusals([added(), opened('back-cover')], opened('back-cover'))[0]).toContain('[already-off]')
  })

  it('go back in reverse, if off', () => {
    const both = [added(), opened('back-cover'), opened('motor-cover')]
    expect(refusals([added()], closed('back-cover'))).toEqual([
      '[not-off] cover: The back cover is not off. All covers are on.',
    ])
    expect(refusals([added(), opened('back-cover')], closed('motor-cover'))).toEqual([
      '[not-off] cover: The motor cover is not off. Off now: back cover (back-cover).',
    ])
    expect(refusals(both, closed('back-cover'))).toEqual([
      '[order-of-covers] cover: The motor cover goes back before the back cover. Close the motor cover first.',
    ])
    expect(refusals([...both, closed('motor-cover')], closed('back-cover'))).toEqual([])
  })
})

describe('repairs', () => {
  it('need their covers off', () => {
    const change = { kind: 'repaired', repair: 'change-motor', option: 'salvaged', minutes: 30, costMinor: 0 } as const
    expect(refusals([added()], change)).toEqual([
      '[covered] repair: “Motor changed” needs the motor cover off. Open first, in this order: back cover and motor cover.',
    ])
    expect(refusals([added(), opened('back-cover'), opened('motor-cover')], change)).toEqual([])
  })
})

describe('leaving', () => {
  it('as working needs a proof or words on safety, and a check since the last repair that shows it works', () => {
    const repaired = [added(), ...gatesPassed, runsWell, flexRefitted, ...gatesPassed]
    expect(refusals(repaired, { ...soldWorking, safety: ' ' })).toEqual([
      '[no-safety-words] safety: The checks after repair do not prove it fit to sell, and nothing is said about that. Make the checks that are open on the page Proof, or say who made them and with what, or why it is sold without.',
      '[not-shown-working] exit: No check made since the last work on it shows that it works. Pass “Run it for a minute” first, or sell it for spares or repair.',
    ])
    expect(refusals([...repaired, graded('run', 'weak')], soldWorking)).toHaveLength(1)
    expect(refusals([...repaired, runsWell], soldWorking)).toEqual([])
  })

  it('as working is refused with a danger open', () => {
    const confirmed = [added(), ...gatesPassed, runsWell, { kind: 'confirmed', fault: 'motor-leaks' } as const]
    expect(refusals(confirmed, soldWorking)[0]).toContain('touchable metal can become live')
  })

  it.each(['sell-for-spares', 'break-for-parts', 'scrap'] as const)('%s asks for nothing', (exit) => {
    expect(refusals([added(), opened('back-cover')], { kind: 'left', exit, receivedMinor: 0 })).toEqual([])
  })

  it('ends the log, until it is struck out', () => {
    const gone = [added(), { kind: 'left', exit: 'sell-for-spares', receivedMinor: 600 } as const]
    expect(refusals(gone, open('pins-on'))).toEqual([
      '[has-left] This machine was sold for spares or repair on 14 March 2026. If that was a slip, strike out the note of it first.',
    ])
    expect(refusals(gone, { kind: 'struck', note: 'n2' })).toEqual([])
    expect(refusals([...gone, { kind: 'struck', note: 'n2' }], open('pins-on'))).toEqual([])
  })
})

describe('striking out', () => {
  const before = [added(), flexRefitted, { kind: 'struck', note: 'n2' } as const]
  it.each<[string, string]>([
    ['n9', '[unknown-note] note: “n9” is not a note of this machine. Name a note of its log.'],
    [
      'n1',
      '[cannot-strike] note: The first note of a machine cannot be struck out. Write a note that says what was wrong.',
    ],
    ['n2', '[already-struck] note: This note is struck out already. Nothing is left to do.'],
    ['n3', '[cannot-strike] note: A strike cannot itself be struck out. Enter again what was struck out.'],
  ])('%s', (note, text) => {
    expect(refusals(before, { kind: 'struck', note })).toEqual([text])
  })

  it('takes a repair', () => {
    expect(refusals([added(), flexRefitted], { kind: 'struck', note: 'n2' })).toEqual([])
  })
})
