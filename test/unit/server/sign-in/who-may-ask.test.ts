import { describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../../../src/bench/contract.ts'
import { allowedTo, permissions } from '../../../../src/server/sign-in/permissions.ts'
import { accessAt } from '../../../support/access.ts'
import { added } from '../../../support/notes.ts'
import {
  addressesOf,
  cookieOf,
  openApp,
  passphrases,
  peopledApp,
  send,
  signedInAs,
} from '../../../support/signed-app.ts'

const ask = (
  app: Awaited<ReturnType<typeof peopledApp>>['app'],
  { method, path }: { method: string; path: string },
  cookie?: string,
) =>
  app.request(path, {
    method,
    headers: { 'content-type': 'application/json', ...(cookie === undefined ? {} : { cookie }) },
    ...(method === 'GET' ? {} : { body: '{}' }),
  })

describe('every address of the API', () => {
  it('is named in the table of permissions', () => {
    const { app } = openApp()
    const unnamed = addressesOf(app).filter(({ named }) => permissions[named] === undefined)
    expect(unnamed.map(({ named }) => named)).toEqual([])
  })

  it('answers 401 without a sign-in, but for health and signing in and out', async () => {
    const { app } = await peopledApp()
    for (const address of addressesOf(app)) {
      const { status } = await ask(app, address)
      if (permissions[address.named] === 'anyone') expect([address.named, status]).not.toEqual([address.named, 401])
      else expect([address.named, status]).toEqual([address.named, 401])
    }
    for (const path of ['/api/openapi.json', '/api/nothing', '/api/bench/own/backup', '/api'])
      expect([path, (await app.request(path)).status]).not.toEqual([path, 200])
  })

  it('answers 403 to the lesser role where the table says keeper, and never else', async () => {
    const { app } = await peopledApp()
    const cookie = await signedInAs(app, 'Ben')
    for (const address of addressesOf(app)) {
      if (address.named === 'post /api/sign-out') continue
      const { status } = await ask(app, address, cookie)
      expect([address.named, status === 403]).toEqual([address.named, permissions[address.named] === 'keeper'])
    }
  })

  it('is never refused to the keeper for the role', async () => {
    const { app } = await peopledApp()
    const cookie = await signedInAs(app, 'Ada')
    for (const address of addressesOf(app)) {
      if (address.named === 'post /api/sign-out') continue
      const { status } = await ask(app, address, cookie)
      expect([address.named, [401, 403].includes(status)]).toEqual([address.named, false])
    }
  })

  it('is refused where the table does not name it', async () => {
    const { app } = await peopledApp()
    const answer = await app.request('/api/nothing', { headers: { cookie: await signedInAs(app, 'Ada') } })
    expect(answer.status).toBe(404)
    for (const path of ['/api/settings/', '//api/settings', '/api/Settings', '/api/bench/own/books/lines/a/b'])
      expect([path, allowedTo('GET', path)]).toEqual([path, null])
    expect(allowedTo('DELETE', '/api/settings')).toBeNull()
    expect(allowedTo('HEAD', '/api/settings')).toBe('bench')
  })

  it('the books, spending, import, settings, people and devices are the keeper’s', () => {
    const keepers = Object.entries(permissions).flatMap(([address, allowed]) => (allowed === 'keeper' ? [address] : []))
    for (const word of ['/books', '/expenses', '/import', 'patch /api/settings', '/people', '/devices'])
      expect(keepers.some((address) => address.includes(word))).toBe(true)
    const others = Object.keys(permissions).filter((address) => permissions[address] !== 'keeper')
    for (const word of ['/books', '/expenses', '/import', '/people', '/devices', '/backup'])
      expect(others.filter((address) => address.includes(word))).toEqual([])
  })
})

describe('on this machine alone', () => {
  it('nobody signs in while nobody has a name', async () => {
    const { app } = openApp({ access: accessAt(undefined, { isOpen: false }).access })
    expect((await app.request('/api/bench/own/books')).status).toBe(200)
    expect(await (await app.request('/api/who')).json()).toEqual({
      needed: false,
      person: null,
      role: 'keeper',
      people: [],
    })
    expect(await (await app.request('/api/sign-in')).json()).toEqual({ needed: false, by: 'nothing' })
  })

  it('everybody does once people have names', async () => {
    const { app } = await peopledApp({ access: accessAt(undefined, { isOpen: false }).access })
    expect((await app.request('/api/bench/own/machines')).status).toBe(401)
  })
})

describe('the cookie', () => {
  it('is out of reach of scripts and of other sites, and over https goes over https alone', async () => {
    const plain = await peopledApp()
    const words = { name: 'Ada', passphrase: passphrases.Ada }
    const set = (await send(plain.app, '/api/sign-in', words)).headers.get('set-cookie') ?? ''
    expect(set).toMatch(/^thrum-device=[A-Za-z0-9_-]{43}; Max-Age=15552000; Path=\/; HttpOnly; SameSite=Strict$/)
    const secure = await peopledApp({ access: accessAt(undefined, { isSecure: () => true }).access })
    expect((await send(secure.app, '/api/sign-in', words)).headers.get('set-cookie')).toContain('; Secure')
  })

  it('that is nobody’s is taken back, and one of another form is not looked up', async () => {
    const { app } = await peopledApp()
    const answer = await app.request('/api/who', { headers: { cookie: `thrum-device=${'a'.repeat(43)}` } })
    expect([answer.status, answer.headers.get('set-cookie')]).toEqual([401, expect.stringContaining('Max-Age=0')])
    expect((await app.request('/api/who', { headers: { cookie: 'thrum-device=%00%00; thrum-device=' } })).status).toBe(
      401,
    )
  })

  it('is changed for another after a day', async () => {
    const { app, pass } = await peopledApp()
    const cookie = await signedInAs(app, 'Ada')
    pass(25 * 60 * 60)
    const answer = await app.request('/api/who', { headers: { cookie } })
    const next = cookieOf(answer)
    expect(next).not.toBeNull()
    expect(next).not.toBe(cookie)
    expect((await app.request('/api/who', { headers: { cookie: next! } })).status).toBe(200)
  })

  it('is worth nothing after signing out, and the browser is told to forget', async () => {
    const { app } = await peopledApp()
    const cookie = await signedInAs(app, 'Ada')
    const out = await send(app, '/api/sign-out', {}, { cookie })
    expect([out.status, out.headers.get('clear-site-data')]).toEqual([200, '"cache"'])
    expect((await app.request('/api/who', { headers: { cookie } })).status).toBe(401)
  })
})

describe('devices', () => {
  it('are listed for the keeper and can be shut out', async () => {
    const { app } = await peopledApp()
    const ben = await signedInAs(app, 'Ben')
    const ada = await signedInAs(app, 'Ada')
    const list = async () =>
      (
        (await (await app.request('/api/devices', { headers: { cookie: ada } })).json()) as {
          devices: { id: string; person: { name: string }; isThis: boolean }[]
        }
      ).devices
    const shown = await list()
    expect(shown.map(({ person, isThis }) => [person.name, isThis])).toEqual(
      expect.arrayContaining([
        ['Ada', true],
        ['Ben', false],
      ]),
    )
    expect(JSON.stringify(shown)).not.toMatch(/token|scrypt/)
    const his = shown.find(({ person }) => person.name === 'Ben')!.id
    expect((await send(app, `/api/devices/${his}/shut-out`, {}, { cookie: ada })).status).toBe(200)
    expect((await app.request('/api/who', { headers: { cookie: ben } })).status).toBe(401)
    expect((await send(app, `/api/devices/${his}/shut-out`, {}, { cookie: ada })).status).toBe(404)
  })
})

describe('notes', () => {
  it('carry who wrote them, whatever the body says', async () => {
    const { app } = await peopledApp()
    const [ada, ben] = [await signedInAs(app, 'Ada'), await signedInAs(app, 'Ben')]
    const machines = '/api/bench/own/machines'
    await send(app, machines, { id: 'm1', content: added() }, { cookie: ada })
    const note = { version: 1, content: { kind: 'said', text: 'Heard it rattle' } }
    expect((await send(app, `${machines}/m1/notes`, { ...note, by: 'id-1' }, { cookie: ben })).status).toBe(400)
    const answer = await send(app, `${machines}/m1/notes`, note, { cookie: ben })
    const { notes, lines } = (await answer.json()) as MachineDocument
    const { people, person } = (await (await app.request('/api/who', { headers: { cookie: ben } })).json()) as {
      people: { id: string; name: string }[]
      person: { id: string }
    }
    const nameOf = (id: string | undefined): string | undefined => people.find((one) => one.id === id)?.name
    expect(notes.map(({ by }) => nameOf(by))).toEqual(['Ada', 'Ben'])
    expect(lines.map(({ by }) => nameOf(by))).toEqual(['Ada', 'Ben'])
    expect(person.id).toBe(notes[1]?.by)
    // So do entries of other logs.
    const seen = { kind: 'seen', blueprint: 'tiny', model: '', priceMinor: 4000, currency: 'GBP', day: '2026-03-01' }
    const price = await send(app, '/api/bench/own/prices', { content: seen }, { cookie: ben })
    expect([price.status, nameOf(((await price.json()) as { entries: { by?: string }[] }).entries[0]?.by)]).toEqual([
      201,
      'Ben',
    ])
  })

  it('have nobody’s name where nobody has one', async () => {
    const { app } = openApp({ access: accessAt(undefined, { isOpen: false }).access })
    const answer = await send(app, '/api/bench/own/machines', { content: added() })
    expect(((await answer.json()) as MachineDocument).notes[0]).not.toHaveProperty('by')
  })
})
