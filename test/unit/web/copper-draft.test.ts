import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { cableCopper } from '../../../src/machine/index.ts'
import { copperDraftOf, measuredCopper, type CopperDraft } from '../../../src/web/proof/copper-draft.ts'

const draft: CopperDraft = {
  ...copperDraftOf('0.75 mm2'),
  length: '8',
  resistance: '0.2',
  instrument: 'low-ohm-tester',
}
const answerTo = (over: Partial<CopperDraft>) => valueOf(cableCopper(valueOf(measuredCopper({ ...draft, ...over }))))

describe('a measured cable as it is typed', () => {
  it('gets the units that stand beside the fields, and keeps those typed', () => {
    expect(valueOf(measuredCopper(draft))).toMatchObject({ length: '8 m', resistance: '0.2 Ω', temperatureC: 20 })
    expect(valueOf(measuredCopper({ ...draft, length: '800cm', temperature: '−5,5' }))).toMatchObject({
      length: '800cm',
      temperatureC: -5.5,
    })
  })

  it.each([
    ['lengthM', { length: ' ' }],
    ['reading', { resistance: '' }],
    ['temperatureC', { temperature: 'cold' }],
    ['temperatureC', { temperature: '' }],
  ] as const)('names the field %s where it is missing', (field, over) => {
    const read = measuredCopper({ ...draft, ...over })
    expect(read.kind === 'refused' ? read.problems.map(({ where }) => where) : []).toEqual([field])
  })

  // IEC 60228:2004, table 3, class 5: 0.75 mm² at most 26.0 Ω/km at 20 °C, so 8 m have at most 0.208 Ω; 0.5 mm² 39.0 Ω/km, 0.312 Ω.
  it('is judged by the most its size can have', () => {
    const thin = answerTo({ resistance: '0.312' })
    expect(thin.maximumOhm).toBeCloseTo(0.208, 6)
    expect(thin.kind).toBe('too-much')
    expect(thin.couldBe).toContain('0.5 mm2')
    expect(answerTo({ resistance: '0.2' }).kind).toBe('as-claimed')
  })

  it('is judged at its temperature: copper of 5 °C has less', () => {
    // k = 234.5 + t (IEC 60228, annex B): 239.5 / 254.5.
    expect(answerTo({ temperature: '5' }).maximumOhm).toBeCloseTo((0.208 * 239.5) / 254.5, 4)
  })

  it.each([
    ['lengthM', { length: 'x' }],
    ['reading', { resistance: 'x' }],
    ['instrument', { instrument: 'foo' }],
  ] as const)('refuses what the engines cannot read, at its field %s', (field, over) => {
    const answer = cableCopper(valueOf(measuredCopper({ ...draft, ...over })))
    expect(answer.kind === 'refused' ? answer.problems.map(({ where }) => where) : []).toEqual([
      expect.stringMatching(new RegExp(`\\.${field}(\\.|$)`)),
    ])
  })
})
