import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../../src/base/result.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { airView } from '../../../../src/machine/air/make-air-view.ts'
import type { Job } from '../../../../src/machine/job.ts'
import { hole, sealed, suctionAt } from '../../../support/gauge.ts'

const blueprint = blueprints.find(({ id }) => id === 'bagged-cylinder')!

/** Readings as diameters in mm (0: sealed) and kPa. */
const viewOf = (...readings: readonly (readonly [diameterMm: number, kPa: number])[]) => {
  const job: Job = {
    blueprint,
    plate: blueprint.plate,
    complaints: ['weak-suction'],
    missing: [],
    events: readings.map(([diameterMm, kPa], i) => ({
      kind: 'gauge',
      note: `g${i}`,
      reading: suctionAt(diameterMm === 0 ? sealed : hole(diameterMm), kPa * 1000),
    })),
    off: [],
    hourMinor: 800,
  }
  return valueOf(airView(job))
}

describe('readings that contradict each other', () => {
  it.each([
    ['two readings of one hole that disagree', 3, 7],
    ['a unit that is ten times too large', 53, 12],
    ['a unit that is ten times too small', 0.7, 12],
  ] as const)('%s: the odd one is named, and asked for again first', (_what, oddKPa, otherKPa) => {
    const { sets, next } = viewOf([0, 20], [otherKPa === 7 ? 19 : 13, otherKPa], [19, oddKPa], [30, 1.9])
    expect(sets[0]?.contradictions.join()).toMatch(
      /^“19 mm hole at the end of the hose” is off by \d+ times its uncertainty from any machine that shows the others\./,
    )
    expect(next[0]?.name).toBe('Again: 19 mm hole at the same place')
  })

  it('airflow that rises with suction is no machine at all, and it says so', () => {
    const { sets } = viewOf([0, 20], [13, 5], [30, 9], [19, 7])
    expect(sets[0]?.contradictions.length).toBeGreaterThan(1)
    expect(sets[0]?.contradictions.join()).toMatch(/“30 mm hole[^]*from any machine\./)
  })

  it('readings that go together are not called contradictory', () => {
    expect(viewOf([0, 21.6], [13, 12.9], [19, 6.9], [30, 1.75]).sets[0]?.contradictions).toEqual([])
  })
})

describe('what is read next', () => {
  it('begins with a hole, not sealed, which heats the motor', () => {
    expect(viewOf().next[0]?.reading.opening.kind).toBe('hole')
  })

  it('says what to do with a part left out', () => {
    const { next } = viewOf([13, 12.9], [19, 6.9], [30, 1.75])
    const out = next.find(({ reading }) => reading.out.length > 0)
    expect(out?.how.join()).toMatch(/^Plug out, take the .* out and close up again\. Run it for ten seconds at most/)
  })
})
