import { describe, expect, it } from 'vitest'
import { firstPersonProblems } from '../../../src/web/sign-in/first-person-draft.ts'

const draft = { name: 'Ada', passphrase: 'correct horse battery', again: 'correct horse battery' }

describe('the first who has a name', () => {
  it('types the passphrase twice alike and gives a name', () => {
    const codes = (over: Partial<typeof draft>) => firstPersonProblems({ ...draft, ...over }).map(({ code }) => code)
    expect(codes({})).toEqual([])
    expect(codes({ name: '  ' })).toEqual(['no-name'])
    expect(codes({ again: 'correct horse batter' })).toEqual(['not-the-same'])
    expect(codes({ name: '', passphrase: 'x' })).toEqual(['no-name', 'not-the-same'])
  })
})
