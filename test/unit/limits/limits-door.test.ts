import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { runLimits } from '../../../src/engines/limits/index.ts'
import { answerOf, ask, look, problemsOf, reading, verdictOf } from '../../support/limits-cases.ts'

const plate = { voltageV: 230, powerW: 1400, class: 'II', massKg: 6 }
const lead = (more: object = {}) => ({ kind: 'lead', plate, region: 'UK', lengthM: 6, ...more })
const insulation = (instrument: unknown, value: unknown = '5 MΩ') => ({
  kind: 'judge',
  quantity: 'insulation',
  reading: { value },
  instrument,
  limit: { kind: 'given', sense: 'at-least', value: '2 MΩ', testVoltageV: '500 V' },
})

describe('bad input at the door of the limits engine', () => {
  it.each([
    ['a lead of no length', lead({ lengthM: 0 }), /0 m is no lead/],
    ['a lead of 300 m', lead({ lengthM: 300 }), /No appliance has a lead of 300 m/],
    ['a length in the wrong unit', lead({ lengthM: '6 V' }), /is a unit of voltage, and this is length/],
    ['an instrument without a specification', insulation({ name: 'Grey one' }), /“Grey one” has no specification/],
    [
      'an instrument with ranges and no accuracy',
      insulation({
        name: 'Grey one',
        functions: [{ measures: 'resistance', ranges: [{ maximum: 2e7, resolution: 1e4 }] }],
      }),
      /Give its accuracy from the manual/,
    ],
    ['an instrument that is not known', insulation('the-red-one'), /name one known here: budget-multimeter/],
    ['a reading below zero', insulation('insulation-tester', -1), /-1 is negative/],
    ['a reading in another unit', insulation('insulation-tester', '5 mA'), /unit of current, and this is resistance/],
    ['no reading', insulation('insulation-tester', null), /Only “above” goes without a value/],
    ['a size that is none', { kind: 'conductor', size: '0.8', lengthM: 6 }, /“0.8” is no size of conductor known here/],
  ])('%s', (_, task, what) => {
    const problems = problemsOf(task)
    expect(problems).toHaveLength(1)
    expect(problemText(problems[0])).toMatch(what)
  })

  it.each([
    [
      'watts that contradict amperes',
      lead({ plate: { ...plate, currentA: 3 } }),
      'plate-contradicts-itself',
      /1400 W at 230 V is about 6.28 A, and the plate is said to have 3 A/,
    ],
    [
      'a plate with neither',
      lead({ plate: { voltageV: 230, class: 'II' } }),
      'plate-empty',
      /Without watts or amperes/,
    ],
    [
      'a machine for another mains',
      lead({ plate: { ...plate, voltageV: 120 } }),
      'other-mains',
      /120 V, and sockets in the United Kingdom give 230 V/,
    ],
    [
      'more than a plug carries',
      lead({ plate: { ...plate, powerW: 3500 } }),
      'more-than-a-plug',
      /15.7 A is more than the plug carries \(13 A\)/,
    ],
    ['a fuse without published times', { kind: 'fuse', ratingA: 5, currentA: 20 }, 'unknown-fuse', /5 A fuse/],
    [
      'a profile that is not known',
      { kind: 'expected-earth', profile: 'uk-cop-6.v1', lead: { lengthM: 6, size: '0.75' } },
      'unknown-profile',
      /uk-cop-6.v1/,
    ],
    [
      'a profile of another region',
      { kind: 'steps', profile: 'au-nz-3760.v1', region: 'UK', machine: { class: 'II' } },
      'profile-of-another-region',
      /not for the United Kingdom/,
    ],
    [
      'a type test taken for checks after repair',
      { kind: 'steps', profile: 'type-iec-60335-1.v1', region: 'EU', machine: { class: 'II' } },
      'profile-of-another-region',
      /is no set of checks after repair/,
    ],
    [
      'a class I machine without its lead',
      { kind: 'steps', profile: 'uk-cop-5.v1', region: 'UK', machine: { class: 'I' } },
      'lead-missing',
      /goes by the lead/,
    ],
  ])('%s', (_, task, code, what) => {
    const problems = problemsOf(task)
    expect(problems.map((one) => one.code)).toEqual([code])
    expect(problems[0].what).toMatch(what)
    expect(problems[0].mend).not.toBe('')
  })

  it('names the finding that does not go with its check', () => {
    const about = { profile: 'uk-cop-5.v1', region: 'UK', machine: { class: 'II' } }
    const findings = [
      look('visual'),
      look('insulation'),
      reading('protective-conductor-current', 0.001, 'leakage-tester'),
    ]
    expect(problemsOf({ kind: 'verdict', ...about, findings }).map(({ code, where }) => [code, where])).toEqual([
      ['reading-wanted', 'do.findings.1.step'],
      ['no-limit', 'do.findings.2.quantity'],
    ])
  })

  it('asks for a class II earth to be left, when it is judged by itself, and says so in a verdict', () => {
    const limit = { kind: 'profile', profile: 'uk-cop-5.v1', machine: { class: 'II' } }
    const judged = { quantity: 'earth-continuity', reading: { value: 0.1 }, instrument: 'low-ohm-tester', limit }
    expect(problemsOf({ kind: 'judge', ...judged })[0].what).toBe(
      'A class II machine has no protective conductor to test',
    )
    const verdict = verdictOf({ profile: 'uk-cop-5.v1', region: 'UK', appliance: 'II' }, [
      reading('earth-continuity', 0.1, 'low-ohm-tester'),
    ])
    expect(verdict.steps.find(({ id }) => id === 'earth-continuity')?.state).toBe('not-applicable')
  })

  it('takes quantities as text as well as numbers, and answers in plain JSON', () => {
    const asText = answerOf('lead', { ...lead({ plate: { ...plate, powerW: '1,4 kW' }, lengthM: '600 cm' }) })
    const asNumbers = answerOf('lead', lead())
    expect(asText).toEqual(asNumbers)
    const answer = ask(lead())
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
    expect(runLimits('nonsense').kind).toBe('refused')
  })
})
