import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { checkAdvert, parseAdvert } from '../../../src/machine/buying/index.ts'

const tub = blueprintById('tub-by-pass')!
const plain = { blueprint: tub.id, askingMinor: 1500, distanceKm: 8 }

const refusal = (own: Readonly<Record<string, unknown>>): string => {
  const parsed = parseAdvert({ ...plain, ...own })
  const checked = parsed.kind === 'ok' ? checkAdvert(parsed.value, tub) : parsed
  return checked.kind === 'ok' ? 'accepted' : checked.problems.map(problemText).join('\n')
}

describe('an advert', () => {
  it('needs no more than blueprint, price and distance', () => {
    expect(refusal({})).toBe('accepted')
    expect(parseAdvert(plain)).toMatchObject({
      kind: 'ok',
      value: { condition: 'good', wanted: { kind: 'profit', minor: 0 } },
    })
  })

  it.each([
    [{ askingMinor: -100 }, 'askingMinor: -100 is not right: a price is zero or more'],
    [{ askingMinor: 9.5 }, 'a whole number of pence or cents'],
    [{ distanceKm: 5000 }, 'distanceKm: 5000 is not right: nobody fetches a machine from further than 1000 km'],
    [{ missing: ['hose-2'] }, '“hose-2” is not a part here'],
    [{ complaints: ['will-not-park'] }, 'fits no fault of “'],
    [{ answers: [{ question: 'momnet', answer: 'bang' }] }, '“momnet” is not a question here. Did you mean moment'],
    [
      { answers: [{ question: 'opened', answer: 'maybe' }] },
      '“maybe” is not an answer here. Use one of no, yes, unsure',
    ],
    [{ answers: Array(2).fill({ question: 'opened', answer: 'no' }) }, 'has two answers'],
    [
      { looked: [{ check: 'pins-onn', result: { kind: 'open' } }] },
      '“pins-onn” is not a check here. Did you mean pins-on',
    ],
    [{ looked: [{ check: 'pins-on', result: { kind: 'grade', outcome: 'whole' } }] }, 'does not read like that'],
    [{ colour: 'red' }, 'advert'],
  ])('%j is refused', (own, words) => {
    expect(refusal(own)).toContain(words)
  })
})
