import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { valueOf } from '../../../src/base/result.ts'
import { brushCheck } from '../../../src/machine/brush-check.ts'

const drive = (motorRpm: number, rollDiameterM = 0.03, motorDiameterM = 0.006) => ({
  motorRpm,
  rollDiameterM,
  motorDiameterM,
})
const refusal = (reading: Parameters<typeof brushCheck>[0]): string => {
  const answer = brushCheck(reading)
  return answer.kind === 'ok' ? '' : answer.problems.map(problemText).join(' ')
}

describe('a brush roll', () => {
  // Velocity ratio of a flat belt with slip s, as machine-element handbooks give it: n2/n1 = (d1/d2)(1 − s) (common practice).
  it.each([
    [25_000, 5000, 0],
    [25_000, 4900, 0.02],
    [25_000, 4700, 0.06],
    [25_000, 3500, 0.3],
  ])('driven at %d rpm by 6 mm onto 30 mm and turning at %d rpm slips by %d', (motorRpm, rollRpm, share) => {
    expect(valueOf(brushCheck({ rollRpm, drive: drive(motorRpm) })).slip?.share).toBeCloseTo(share, 12)
  })

  it('is told on one side of a limit only where the uncertainty leaves no doubt', () => {
    const verdictAt = (rollRpm: number) => valueOf(brushCheck({ rollRpm, drive: drive(25_000) })).slip
    expect(verdictAt(4000)?.verdict).toBe('replace')
    expect(verdictAt(4450)?.verdict).toBe('not told')
    expect(verdictAt(4450)?.uncertainty).toBeCloseTo(2 * 0.89 * 0.02, 12)
    expect(verdictAt(5080)?.verdict).toBe('as new')
  })

  it('turns freely, heavily, or not, by the watts it adds', () => {
    const dragAt = (onW: number) => valueOf(brushCheck({ rollRpm: 3600, drag: { onW, offW: 800 } })).drag?.verdict
    expect([802, 830, 870].map(dragAt)).toEqual(['not turning', 'free', 'heavy'])
  })

  it('says in words what it comes to', () => {
    const { text } = valueOf(brushCheck({ rollRpm: 3500, drive: drive(25_000), drag: { onW: 870, offW: 800 } }))
    expect(text).toEqual([
      'The roll turns at 3500 rpm, as brush rolls do.',
      'The belt slips by 30.0 % (give or take 2.8): replace it, and look whether the roll turns freely.',
      'Driving the roll takes 70 W, more than 40 W off the floor: hair in its bearings, or a bearing going.',
    ])
  })

  it('refuses readings that cannot be', () => {
    expect(refusal({ rollRpm: 36_000 })).toMatch(/36000 rpm is no speed of a brush roll/)
    expect(refusal({ rollRpm: 6000, drive: drive(25_000) })).toMatch(/20 % faster than its belt could drive it/)
    expect(refusal({ rollRpm: 4000, drive: drive(3000) })).toMatch(/no faster than the roll/)
    expect(refusal({ rollRpm: 4000, drag: { onW: 700, offW: 800 } })).toMatch(/less with the roll driven/)
  })
})
