import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { wattsChecks } from '../../../src/blueprint/library/shared/watts-checks.ts'
import { gradedCheckSchema } from '../../../src/blueprint/schema.ts'

const brush = { shareOfPlate: 0.1, on: 'handle back', off: 'handle up' }
const fragment = (options: Partial<Parameters<typeof wattsChecks>[0]> = {}) =>
  (wattsChecks({ hose: true, brush, ...options }).checks ?? []).map((check) => gradedCheckSchema.parse(check))

describe('checks with a power meter', () => {
  it('say nothing of faults that an architecture goes without', () => {
    const tub = blueprintById('tub-by-pass')!
    const known = new Set(tub.faults.map(({ id }) => id))
    const watts = tub.checks.flatMap((check) => (check.kind !== 'meter' && check.scale !== undefined ? [check] : []))
    expect(watts.map(({ id }) => id)).toEqual(['run-watts-open', 'run-watts-blocked'])
    for (const { under } of watts) expect(Object.keys(under).filter((id) => !known.has(id))).toEqual([])
  })

  it('ask nobody to close a hose where there is none', () => {
    expect(fragment({ hose: false, brush: undefined }).map(({ id }) => id)).toEqual(['run-watts-open'])
  })

  it('leave the brush out where it has no motor', () => {
    expect(fragment({ brush: undefined }).map(({ id }) => id)).toEqual(['run-watts-open', 'run-watts-blocked'])
  })

  it('run the machine, so that they wait for the dead checks, and never ask to hold a motor', () => {
    for (const { kind, caution, how } of fragment()) {
      expect(kind).toBe('run')
      expect(caution).toMatch(/Never hold the brush or the motor/)
      expect(how).toMatch(/RCD socket of 30 mA or less/)
      expect(how).toMatch(/Plug out before touching/)
    }
  })
})
