import { describe, expect, it } from 'vitest'
import { makeListeners } from '../../../../src/store/changes.ts'
import { removePerson, setPassphrase } from '../../../../src/bench/people/people-commands.ts'
import { accessAt } from '../../../support/access.ts'
import { cookieOf, openApp, passphrases, peopledApp, send, signedInAs } from '../../../support/signed-app.ts'

type Shown = { readonly id: string; readonly name: string; readonly role: string; readonly goneAt: string | null }
const shownIn = async (answer: Response): Promise<readonly Shown[]> =>
  ((await answer.json()) as { readonly people: readonly Shown[] }).people
const codeIn = async (answer: Response): Promise<readonly [number, string | undefined]> => [
  answer.status,
  ((await answer.json()) as { readonly problems?: readonly { readonly code: string }[] }).problems?.[0]?.code,
]

const setUp = async (over: Parameters<typeof peopledApp>[0] = {}) => {
  const made = await peopledApp(over)
  const { app } = made
  const [ada, ben] = [await signedInAs(app, 'Ada'), await signedInAs(app, 'Ben')]
  const asking = (cookie: string) => async (path: string, body: unknown) => send(app, path, body, { cookie })
  const people = await shownIn(await app.request('/api/people', { headers: { cookie: ada } }))
  const idOf = (name: string): string => people.find((one) => one.name === name)?.id ?? ''
  const isIn = async (cookie: string): Promise<boolean> =>
    (await app.request('/api/who', { headers: { cookie } })).status === 200
  return { ...made, ada, ben, byAda: asking(ada), byBen: asking(ben), idOf, isIn }
}

describe('the keeper', () => {
  it('adds people, changes what they may do, and takes them off with their devices', async () => {
    const { app, byAda, ben, idOf, isIn } = await setUp()
    const added = await byAda('/api/people', { name: 'Cid', role: 'bench', passphrase: 'some more plain words' })
    const text = await added.clone().text()
    expect(text).not.toMatch(/scrypt|plain words/)
    expect((await shownIn(added)).map(({ name, role }) => [name, role])).toEqual([
      ['Ada', 'keeper'],
      ['Ben', 'bench'],
      ['Cid', 'bench'],
    ])
    const signedIn = await send(app, '/api/sign-in', { name: 'Cid', passphrase: 'some more plain words' })
    expect(signedIn.status).toBe(200)
    expect((await byAda(`/api/people/${idOf('Ben')}/role`, { role: 'keeper' })).status).toBe(200)
    expect((await app.request('/api/devices', { headers: { cookie: ben } })).status).toBe(200)
    const left = await shownIn(await byAda(`/api/people/${idOf('Ben')}/remove`, {}))
    expect(left.find(({ name }) => name === 'Ben')?.goneAt).not.toBeNull()
    expect(await isIn(ben)).toBe(false)
    expect(await codeIn(await byAda(`/api/people/${idOf('Ben')}/remove`, {}))).toEqual([404, 'unknown-person'])
  })

  it('is told why something cannot be', async () => {
    const { byAda, idOf } = await setUp()
    const cid = { name: 'Cid', role: 'bench', passphrase: 'some more plain words' }
    expect(await codeIn(await byAda('/api/people', { ...cid, passphrase: 'short' }))).toEqual([422, 'passphrase-too-short']) // prettier-ignore
    expect(await codeIn(await byAda('/api/people', { ...cid, name: 'ada' }))).toEqual([422, 'name-taken'])
    expect(await codeIn(await byAda('/api/people', { ...cid, role: 'owner' }))).toEqual([400, 'not-of-the-form'])
    expect(await codeIn(await byAda(`/api/people/${idOf('Ada')}/remove`, {}))).toEqual([422, 'last-keeper'])
    expect(await codeIn(await byAda(`/api/people/${idOf('Ada')}/role`, { role: 'bench' }))).toEqual([422, 'last-keeper']) // prettier-ignore
  })

  it('sets somebody’s passphrase anew, which shuts their devices out', async () => {
    const { app, byAda, ben, idOf, isIn } = await setUp()
    const passphrase = 'a new one for today'
    expect((await byAda(`/api/people/${idOf('Ben')}/passphrase`, { passphrase })).status).toBe(200)
    expect(await isIn(ben)).toBe(false)
    expect((await send(app, '/api/sign-in', { name: 'Ben', passphrase: passphrases.Ben })).status).toBe(401)
    expect((await send(app, '/api/sign-in', { name: 'Ben', passphrase })).status).toBe(200)
  })
})

describe('the first who has a name', () => {
  const first = { name: 'Ada', role: 'keeper', passphrase: passphrases.Ada } as const

  it('is added by whoever came in with the passphrase of the bench, which counts no more', async () => {
    const { app, access } = openApp()
    await setPassphrase(access, null, 'words of the whole bench')
    const one = cookieOf(await send(app, '/api/sign-in', { passphrase: 'words of the whole bench' }))!
    expect(await codeIn(await send(app, '/api/people', first))).toEqual([401, 'sign-in-needed'])
    expect(await codeIn(await send(app, '/api/people', { ...first, role: 'bench' }, { cookie: one }))).toEqual([422, 'first-keeps-the-books']) // prettier-ignore
    expect((await send(app, '/api/people', first, { cookie: one })).status).toBe(200)
    expect((await app.request('/api/who', { headers: { cookie: one } })).status).toBe(401)
    expect((await send(app, '/api/sign-in', { passphrase: 'words of the whole bench' })).status).toBe(401)
    // Nobody is locked out: who added the first name goes on under it.
    expect((await app.request('/api/people', { headers: { cookie: await signedInAs(app, 'Ada') } })).status).toBe(200)
  })

  it('is added on the machine itself without a sign-in, and only the first', async () => {
    const { app } = openApp({ access: accessAt(undefined, { isOpen: false }).access })
    expect((await send(app, '/api/people', first)).status).toBe(200)
    expect(await codeIn(await send(app, '/api/people', { ...first, name: 'Ben' }))).toEqual([401, 'sign-in-needed'])
    expect((await app.request('/api/people', { headers: { cookie: await signedInAs(app, 'Ada') } })).status).toBe(200)
  })
})

describe('one’s own passphrase', () => {
  it('is set by whoever knows the old one', async () => {
    const { app, byBen, ben, isIn } = await setUp()
    const passphrase = 'words of my own now'
    expect(await codeIn(await byBen('/api/who/passphrase', { old: 'not the one it is', passphrase }))).toEqual([422, 'wrong-passphrase']) // prettier-ignore
    expect(await isIn(ben)).toBe(true)
    expect((await byBen('/api/who/passphrase', { old: passphrases.Ben, passphrase })).status).toBe(200)
    expect(await isIn(ben)).toBe(false)
    expect((await send(app, '/api/sign-in', { name: 'Ben', passphrase })).status).toBe(200)
  })

  it('is not found by trying', async () => {
    const { byBen } = await setUp()
    const statuses: number[] = []
    for (let tries = 0; tries < 8; tries++)
      statuses.push((await byBen('/api/who/passphrase', { old: `try number ${tries}`, passphrase: 'x' })).status)
    expect(statuses).toEqual([422, 422, 422, 422, 422, 422, 429, 429])
  })
})

describe('what is told as it is written', () => {
  const address = '/api/bench/own/changes'
  const hearing = async () => {
    const changes = makeListeners()
    const made = await setUp({ changes })
    const hear = (cookie: string) => made.app.request(address, { headers: { cookie } })
    return { ...made, changes, hear }
  }

  it('ends for a device that is shut out, in that moment, and goes on for others', async () => {
    const { app, byAda, ada, ben, hear, changes } = await hearing()
    const [benHears, adaHears] = [await hear(ben), await hear(ada)]
    const { devices } = (await (await app.request('/api/devices', { headers: { cookie: ada } })).json()) as { devices: readonly { id: string; person: { name: string } }[] } // prettier-ignore
    const device = devices.find(({ person }) => person.name === 'Ben')?.id
    expect((await byAda(`/api/devices/${device}/shut-out`, {})).status).toBe(200)
    // Fulfilled only when it has ended.
    expect(await benHears.text()).toContain('event: ready')
    changes.tell('own', { kind: 'machine', id: 'm1', version: 1 })
    const reader = adaHears.body!.getReader()
    let heard = ''
    while (!heard.includes('m1')) heard += new TextDecoder().decode((await reader.read()).value)
    await reader.cancel()
    await expect.poll(() => changes.someone()).toBe(false)
  })

  it('ends for a person who is taken off or whose role is another, and for whoever signs out', async () => {
    const { app, byAda, byBen, ben, hear, idOf } = await hearing()
    const first = await hear(ben)
    await byAda(`/api/people/${idOf('Ben')}/role`, { role: 'keeper' })
    await first.text()
    const second = await hear(ben)
    await byBen('/api/sign-out', {})
    await second.text()
    const again = cookieOf(await send(app, '/api/sign-in', { name: 'Ben', passphrase: passphrases.Ben }))!
    const third = await hear(again)
    await byAda(`/api/people/${idOf('Ben')}/remove`, {})
    await third.text()
  })

  it('ends where nobody had to sign in, once people have names', async () => {
    const { app } = openApp({ changes: makeListeners(), access: accessAt(undefined, { isOpen: false }).access })
    const hears = await app.request(address)
    await send(app, '/api/people', { name: 'Ada', role: 'keeper', passphrase: passphrases.Ada })
    await hears.text()
    expect((await app.request(address)).status).toBe(401)
  })

  it('ends soon where another program took the person off', { timeout: 15_000 }, async () => {
    const { access, ben, hear } = await hearing()
    const hears = await hear(ben)
    // Past the application, as the command line does.
    expect((await removePerson(access, 'Ben')).kind).toBe('done')
    const before = performance.now()
    await hears.text()
    expect(performance.now() - before).toBeLessThan(8000)
  })
})
