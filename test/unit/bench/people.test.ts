import { describe, expect, it } from 'vitest'
import {
  addPerson,
  changeRole,
  removePerson,
  setPassphrase,
  type PeopleDeps,
} from '../../../src/bench/people/people-commands.ts'
import { standing } from '../../../src/bench/people/person.ts'
import { recognise, signIn, signInBy } from '../../../src/bench/people/sign-in.ts'
import { accessAt } from '../../support/access.ts'

const words = 'correct horse battery'
const second = 'four plain words here'
const day = 24 * 60 * 60

const keeper = { name: 'Ada', role: 'keeper', passphrase: words } as const
const helper = { name: 'Ben', role: 'bench', passphrase: second } as const

const into = async (deps: PeopleDeps, name: string, passphrase: string): Promise<string | null> => {
  const outcome = await signIn(deps, { name, passphrase, device: 'phone' })
  return outcome.kind === 'signed-in' ? outcome.token : null
}

describe('people', () => {
  it('begin with a keeper of the books, and somebody always is', async () => {
    const { access } = accessAt()
    expect(await addPerson(access, helper)).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'first-keeps-the-books' }],
    })
    expect((await addPerson(access, keeper)).kind).toBe('done')
    expect((await addPerson(access, helper)).kind).toBe('done')
    expect(await changeRole(access, 'Ada', 'bench')).toMatchObject({ problems: [{ code: 'last-keeper' }] })
    expect(await removePerson(access, 'Ada')).toMatchObject({ problems: [{ code: 'last-keeper' }] })
    expect((await changeRole(access, 'ben', 'keeper')).kind).toBe('done')
    expect((await removePerson(access, 'Ada')).kind).toBe('done')
    expect(standing(await access.people.people()).map(({ name }) => name)).toEqual(['Ben'])
  })

  it.each([
    [{ ...helper, name: ' ADA ' }, 'name-taken'],
    [{ ...helper, name: '' }, 'no-name'],
    [{ ...helper, passphrase: 'too short' }, 'passphrase-too-short'],
    [{ ...helper, passphrase: 'aaaaaaaaaaaaaaa' }, 'passphrase-too-plain'],
    [{ ...helper, passphrase: 'ab'.repeat(150) }, 'passphrase-too-long'],
  ])('are refused where something is wrong: %#', async (person, code) => {
    const { access } = accessAt()
    await addPerson(access, keeper)
    expect(await addPerson(access, person)).toMatchObject({ kind: 'refused', problems: [{ code }] })
  })

  it('end the one passphrase of the bench, and its devices', async () => {
    const { access } = accessAt()
    expect((await setPassphrase(access, null, words)).kind).toBe('done')
    const token = await into(access, '', words)
    expect(await recognise(access, token!)).toMatchObject({ signedIn: { person: null, role: 'keeper' } })
    await addPerson(access, { ...keeper, passphrase: second })
    expect(await recognise(access, token!)).toBeNull()
    expect(await into(access, '', words)).toBeNull()
    expect(await into(access, 'bench', words)).toBeNull()
    expect(await setPassphrase(access, null, words)).toMatchObject({ problems: [{ code: 'whose-passphrase' }] })
  })
})

describe('signing in', () => {
  it('asks for what there is', async () => {
    const { access } = accessAt()
    expect(signInBy(await access.people.people())).toBe('nothing')
    expect(await into(access, '', '')).toBeNull()
    await setPassphrase(access, null, words)
    expect(signInBy(await access.people.people())).toBe('passphrase')
    await addPerson(access, keeper)
    expect(signInBy(await access.people.people())).toBe('name')
  })

  it('takes a name and its own passphrase alone, and says not which was wrong', async () => {
    const { access } = accessAt()
    await addPerson(access, keeper)
    await addPerson(access, helper)
    expect(await into(access, 'ada', words)).not.toBeNull()
    expect(await signIn(access, { name: 'Ada', passphrase: second, device: '' })).toEqual({ kind: 'wrong' })
    expect(await signIn(access, { name: 'Nobody', passphrase: words, device: '' })).toEqual({ kind: 'wrong' })
  })

  it('ends where a person goes or their passphrase changes', async () => {
    const { access } = accessAt()
    await addPerson(access, keeper)
    await addPerson(access, helper)
    const [ada, ben] = [await into(access, 'Ada', words), await into(access, 'Ben', second)]
    await setPassphrase(access, 'Ada', 'another set of words')
    await removePerson(access, 'Ben')
    expect(await recognise(access, ada!)).toBeNull()
    expect(await recognise(access, ben!)).toBeNull()
    expect(await into(access, 'Ada', words)).toBeNull()
    expect(await into(access, 'Ben', second)).toBeNull()
  })
})

describe('a device', () => {
  const signedIn = async () => {
    const { access, pass } = accessAt()
    await setPassphrase(access, null, words)
    return { access, pass, token: (await into(access, '', words))! }
  }

  it('stays signed in as long as it is used within half a year, and no longer', async () => {
    const { access, pass, token } = await signedIn()
    pass(179 * day)
    const first = await recognise(access, token)
    expect(first?.newToken).not.toBeNull()
    pass(179 * day)
    expect(await recognise(access, first!.newToken!)).not.toBeNull()
    pass(181 * day)
    expect(await recognise(access, first!.newToken!)).toBeNull()
  })

  it('changes its token each day; the old one counts a minute longer', async () => {
    const { access, pass, token } = await signedIn()
    expect((await recognise(access, token))?.newToken).toBeNull()
    pass(day + 1)
    const next = (await recognise(access, token))!.newToken!
    // Asked again at once, as pages do: no third token.
    expect((await recognise(access, token))?.newToken).toBeNull()
    expect((await recognise(access, next))?.newToken).toBeNull()
    pass(30)
    expect(await recognise(access, token)).not.toBeNull()
    pass(40)
    expect(await recognise(access, token)).toBeNull()
    expect(await recognise(access, next)).not.toBeNull()
  })

  it('is handed another where the new one was lost on the way', async () => {
    const { access, pass, token } = await signedIn()
    pass(day + 1)
    const lost = (await recognise(access, token))!.newToken!
    pass(100)
    const next = (await recognise(access, token))!.newToken
    expect(next).not.toBeNull()
    expect(await recognise(access, lost)).toBeNull()
    expect(await recognise(access, next!)).not.toBeNull()
  })

  it('hands out one token to many requests at once', async () => {
    const { access, pass, token } = await signedIn()
    pass(day + 1)
    const answers = await Promise.all(Array.from({ length: 8 }, () => recognise(access, token)))
    expect(answers.every((one) => one !== null)).toBe(true)
    expect(answers.filter((one) => one?.newToken !== null)).toHaveLength(1)
  })

  it('is never kept with its token', async () => {
    const { access, token } = await signedIn()
    expect(JSON.stringify(await access.people.devices())).not.toContain(token)
  })
})
