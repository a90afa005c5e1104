import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkNote } from '../../../src/bench/append.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { noteLines } from '../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { safetyRecordOf } from '../../../src/bench/safety-record.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { proofView } from '../../../src/machine/index.ts'
import { added, content, log } from '../../support/notes.ts'
import { gatesPassedOf } from '../../support/pass-gates.ts'

const blueprintOf = (id: string) => blueprints.find((one) => one.id === id)!
const twoCores = blueprintOf('commercial-upright')
const earthed = blueprintOf('commercial-upright-earthed')

const cameIn = (blueprint: typeof twoCores) => added({ blueprint: blueprint.id, plate: blueprint.plate })
const rules = (region: 'UK' | 'EU' = 'UK', profile = 'uk-cop-5.v1'): NoteContentInput => ({
  kind: 'rules',
  rules: { region, profile },
})
const look = (step: 'visual' | 'polarity' | 'run', good = true): NoteContentInput => ({
  kind: 'proof',
  finding: { kind: 'look', step, good },
})
const reading = (
  quantity: 'insulation' | 'earth-continuity' | 'touch-current',
  value: number,
  instrument: string,
  over: object = {},
): NoteContentInput => ({ kind: 'proof', finding: { kind: 'reading', quantity, value, instrument, ...over } })
const insulated = reading('insulation', 50e6, 'insulation-tester', { testVoltageV: 500, checkedOn: '2026-01-10' })

const viewOf = (blueprint: typeof twoCores, notes: readonly NoteContentInput[]) => {
  const kept = log([cameIn(blueprint), ...notes])
  return proofView(jobOf(foldNotes(kept), kept, blueprint), 'UK')
}
const stateOf = (view: ReturnType<typeof viewOf>, id: string) => view.steps.find((step) => step.id === id)!
const refusals = (blueprint: typeof twoCores, notes: readonly NoteContentInput[], next: NoteContentInput) => {
  const result = checkNote(log([cameIn(blueprint), ...notes]), content(next), blueprint)
  return result.kind === 'ok' ? [] : result.problems.map(problemText)
}

const ready = gatesPassedOf(twoCores)
const proved = [...ready, rules(), look('visual'), insulated, look('polarity'), look('run')]

describe('a machine of class II', () => {
  it('is proved fit by looks and an insulation tester, with the protective conductor not applicable', () => {
    const view = viewOf(twoCores, proved)
    expect(view.verdict).toMatchObject({ kind: 'fit', title: 'Fit to sell', toProve: [] })
    expect(stateOf(view, 'earth-continuity')).toMatchObject({ state: 'not-applicable', stateText: 'does not apply' })
    expect(stateOf(view, 'insulation').findings[0]).toMatchObject({
      read: '50 MΩ at 500 V',
      kind: 'pass',
      instrument: 'Insulation tester, 250 and 500 V',
      checkedOn: '2026-01-10',
    })
  })

  it('is not proven by a multimeter, which tests at about a volt', () => {
    const meter = reading('insulation', 50e6, 'budget-multimeter')
    const view = viewOf(twoCores, [...ready, rules(), look('visual'), meter, look('polarity'), look('run')])
    expect(view.verdict.kind).toBe('not-proven')
    expect(view.verdict.toProve[0]).toMatchObject({ step: 'insulation' })
    expect(view.verdict.toProve[0]?.instruments).toContain('Insulation tester, 250 and 500 V')
    expect(stateOf(view, 'insulation').findings[0]).toMatchObject({ kind: 'not-provable' })
  })

  it('is not fit once anything failed, whatever else was found', () => {
    expect(viewOf(twoCores, [...proved, look('visual', false)]).verdict.kind).toBe('not-fit')
    const low = reading('insulation', 0.4e6, 'insulation-tester', { testVoltageV: 500 })
    expect(viewOf(twoCores, [...ready, rules(), low]).verdict.kind).toBe('not-fit')
  })

  it('counts the run that its own checks show', () => {
    const shows = twoCores.checks.find((check) => check.kind !== 'meter' && check.provesWorking)!
    const ran = { kind: 'reading', check: shows.id, minutes: 5 } as const
    const outcome = shows.kind === 'meter' ? '' : shows.outcomes[0].id
    const view = viewOf(twoCores, [...proved.slice(0, -1), { ...ran, result: { kind: 'grade', outcome } }])
    expect(view.verdict.kind).toBe('fit')
    expect(stateOf(view, 'run').findings[0]).toMatchObject({ note: null, kind: 'pass' })
  })

  it('has its proof void once a cover was opened, until it is made again', () => {
    const door = { cover: 'bag-door', minutes: 1 } as const
    const opened = [...proved, { kind: 'opened', ...door } as const, { kind: 'closed', ...door } as const]
    const view = viewOf(twoCores, opened)
    expect(view.verdict.kind).toBe('not-proven')
    expect(view.voided?.findings).toHaveLength(4)
    expect(viewOf(twoCores, [...opened, look('visual'), insulated, look('polarity'), look('run')]).verdict.kind).toBe(
      'fit',
    )
  })
})

describe('a machine of class I', () => {
  it('asks for the protective conductor, its limit the cord and 0.1 Ω', () => {
    const lead: NoteContentInput = {
      kind: 'rules',
      rules: { region: 'UK', profile: 'uk-cop-5.v1' },
      lead: { size: '0.75 mm2', lengthM: 8 },
    }
    const earth = stateOf(viewOf(earthed, [lead]), 'earth-continuity')
    // 0.1 + 8 × 26.0/1000 = 0.308 Ω: IEC 60228 class 5 maximum, as the code of practice adds the cord (electrical facts 4.1).
    expect(earth.limits[0]?.text).toBe('at most 0.308 Ω')
    expect(earth.state).toBe('not-done')
    const good = reading('earth-continuity', 0.21, 'low-ohm-tester', { part: 'motor housing' })
    expect(stateOf(viewOf(earthed, [lead, good]), 'earth-continuity').state).toBe('passed')
    const cheap = reading('earth-continuity', 0.2, 'budget-multimeter')
    expect(stateOf(viewOf(earthed, [lead, cheap]), 'earth-continuity').state).toBe('not-proven')
    const open = reading('earth-continuity', 60, 'budget-multimeter')
    expect(stateOf(viewOf(earthed, [lead, open]), 'earth-continuity').state).toBe('failed')
  })
})

describe('what is refused at the door', () => {
  it.each([
    ['before the rules are chosen', ready, look('visual'), /It is not said yet by which rules/],
    ['rules of another region', ready, rules('EU'), /“uk-cop-5\.v1” is not of the European Union\. Use one of eu-/],
    [
      'an earth that a class II machine has not',
      [...ready, rules()],
      reading('earth-continuity', 0.1, 'low-ohm-tester'),
      /class II has no protective conductor/,
    ],
    [
      'a live reading before the dead checks',
      [rules()],
      reading('touch-current', 0.0002, 'leakage-tester'),
      /switched on, and it must not be yet/,
    ],
    ['a run before the dead checks', [rules()], look('run'), /switched on, and it must not be yet/],
    [
      'an insulation proved by eye',
      [...ready, rules()],
      { kind: 'proof', finding: { kind: 'look', step: 'insulation', good: true } } as const,
      /proved by a reading, not by looking/,
    ],
  ] as const)('%s', (_what, notes, next, words) => {
    expect(refusals(twoCores, notes, next).join(' ')).toMatch(words)
  })

  it('an instrument without a specification, in words', () => {
    expect(() => content(reading('insulation', 5e6, 'my old meter'))).toThrow(/has no specification/)
  })

  it('selling it as working unproved and without a reason; with proof no reason is asked for', () => {
    const shows = twoCores.checks.find((check) => check.kind !== 'meter' && check.provesWorking)!
    const outcome = shows.kind === 'meter' ? '' : shows.outcomes[0].id
    const ran = { kind: 'reading', check: shows.id, minutes: 5, result: { kind: 'grade', outcome } } as const
    const sold = { kind: 'left', exit: 'sell-working', receivedMinor: 4000 } as const
    expect(refusals(twoCores, [...ready, ran], sold).join()).toMatch(/do not prove it fit to sell/)
    expect(refusals(twoCores, [...ready, ran], { ...sold, safety: 'To a repairer who tests it' })).toEqual([])
    expect(refusals(twoCores, [...proved, ran], sold)).toEqual([])
  })
})

describe('the record', () => {
  const kept = log([cameIn(twoCores), ...proved])
  const document = { state: foldNotes(kept), notes: kept, lines: noteLines(kept, twoCores) }
  const settings = { region: 'UK', checkedBy: 'A. Tester' } as const

  it('says what was proved, by what, with which instruments, and when', () => {
    const record = safetyRecordOf(document, jobOf(document.state, kept, twoCores), settings)
    expect(record).toMatchObject({
      verdict: { kind: 'fit' },
      rules: { region: 'the United Kingdom', id: 'uk-cop-5.v1' },
      instruments: [{ name: 'Insulation tester, 250 and 500 V', checkedOn: '10 January 2026' }],
      madeBy: 'A. Tester',
      madeOn: '14 March 2026',
      overruled: null,
      voided: null,
    })
    expect(record.remarks.join(' ')).toMatch(/Local rules and a competent person decide/)
    expect(JSON.stringify(record)).not.toMatch(/certif|complian/i)
  })

  it('prints the reason of one sold unproved', () => {
    const left: NoteContentInput = { kind: 'left', exit: 'sell-working', receivedMinor: 1, safety: 'To a repairer' }
    const sold = log([cameIn(twoCores), ...ready, rules(), look('visual'), left])
    const soldDocument = { state: foldNotes(sold), notes: sold, lines: noteLines(sold, twoCores) }
    const record = safetyRecordOf(soldDocument, jobOf(soldDocument.state, sold, twoCores), settings)
    expect(record).toMatchObject({ verdict: { kind: 'not-proven' }, overruled: 'To a repairer' })
  })
})
