import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { conductorSizes, limitsFor, runLimits, type Judgement } from '../../../src/engines/limits/index.ts'
import { safetyProfiles } from '../../../src/facts/safety-profiles.ts'
import { truthFile } from '../../support/truth-case.ts'

type Row = {
  readonly profile: string
  readonly quantity: string
  readonly class: 'I' | 'II'
  readonly isPortable: boolean
  readonly lead: { readonly lengthM: number; readonly size: string } | null
  readonly value: number
  readonly status: string
}

const { rows } = truthFile<{ readonly rows: readonly Row[] }>('limits-rows/rows.json')

/** An instrument with next to no uncertainty that meets every method. */
const perfect = {
  name: 'perfect',
  functions: ['resistance', 'protective-conductor-current', 'touch-current', 'substitute-leakage', 'voltage'].map(
    (measures) => ({
      measures,
      accuracy: { kind: 'absolute', plusMinus: 0 },
      ranges: [{ maximum: 1e9, resolution: 1e-9 }],
      testVoltageV: 500,
      testCurrentA: 25,
    }),
  ),
}

const judge = (row: Row, value: number): Judgement => {
  const { profile, quantity, isPortable, lead } = row
  const answer = valueOf(
    runLimits({
      format: 'thrum-limits-1',
      do: {
        kind: 'judge',
        quantity,
        reading: { value },
        instrument: perfect,
        limit: { kind: 'profile', profile, machine: { class: row.class, isPortable }, lead },
      },
    }),
  )
  if (answer.kind !== 'judge') throw new Error('not a judgement')
  return answer.answer
}

const nameOf = (row: Row): string =>
  `${row.profile} ${row.quantity} class ${row.class}${row.isPortable ? '' : ', not portable'}`

describe('each limit, both sides of its boundary', () => {
  it.each(rows.map((row) => [nameOf(row), row] as const))('%s', (_, row) => {
    const inside = judge(row, row.value * (1 - 1e-5))
    const outside = judge(row, row.value * (1 + 1e-5))
    const { sense } = inside.limit
    expect(sense).toBe(row.quantity === 'insulation' ? 'at-least' : 'at-most')
    expect([inside.kind, outside.kind]).toEqual(sense === 'at-most' ? ['pass', 'fail'] : ['fail', 'pass'])
  })
  it('there is a row for every limit of every profile, and none besides', () => {
    const lead = { lengthM: 8, size: conductorSizes[0] }
    const wanted = safetyProfiles.flatMap((profile) =>
      (['I', 'II'] as const).flatMap((appliance) =>
        [true, false].flatMap((isPortable) =>
          limitsFor(
            profile,
            { class: appliance, isPortable, hasElectronicSwitch: false, hasSurgeSuppressor: false },
            lead,
          )
            .filter(({ limit }) => isPortable || limit.portable === false)
            .map(
              ({ limit }) => `${profile.id} ${limit.quantity} class ${appliance}${isPortable ? '' : ', not portable'}`,
            ),
        ),
      ),
    )
    expect(rows.map(nameOf).sort()).toEqual([...wanted].sort())
  })
  it('what the table has from memory, the fact does not call retrieved', () => {
    for (const row of rows.filter(({ status }) => status === 'from memory')) {
      const profile = safetyProfiles.find(({ id }) => id === row.profile)
      const limits = profile?.limits.filter((one) => one.quantity === row.quantity && one.classes.includes(row.class))
      expect(limits?.length, nameOf(row)).toBeGreaterThan(0)
      for (const { source } of limits ?? []) {
        const says = source.evidence === 'from memory' || /from memory/.test(`${source.title} ${source.clause ?? ''}`)
        expect(says, nameOf(row)).toBe(true)
      }
    }
  })
})
