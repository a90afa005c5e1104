import { expect, it } from 'vitest'
import { adaptedWords } from '../../../src/bench/adapted-words.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

it('says each edit, and what goes along with them', () => {
  expect(adaptedWords(tinyBlueprint, [{ kind: 'part-absent', part: 'switch' }])).toEqual({
    texts: ['Handle switch: not there'],
    gone: 'With that go 1 fault and 1 repair.',
    problems: [],
  })
  expect(adaptedWords(tinyBlueprint, [{ kind: 'plate', powerW: 900 }]).gone).toBe('')
})

it('says each edit, and what is wrong with them together', () => {
  const { texts, gone, problems } = adaptedWords(tinyBlueprint, [{ kind: 'part-absent', part: 'motor' }])
  expect([texts, gone]).toEqual([['Motor: not there'], ''])
  expect(problems.map(({ code }) => code)).toEqual(['no-proof-left'])
})
