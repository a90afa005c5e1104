import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { makeImage } from '../../../src/store/files/photo-image.ts'
import { filePhotoStore } from '../../../src/store/files/photo-store.ts'
import { readStaticFiles } from '../../../src/server/static-files.ts'
import { accessAt } from '../../support/access.ts'
import { added } from '../../support/notes.ts'
import { blackPng } from '../../support/black-png.ts'
import { openApp, passphrases, peopledApp, send, signedInAs } from '../../support/signed-app.ts'

const here = () => openApp({ access: accessAt(undefined, { isOpen: false }).access }).app
const machines = '/api/bench/own/machines'

describe('a page of another site', () => {
  it.each([
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
    { origin: 'http://elsewhere.example' },
    { origin: 'http://localhost:9999' },
    { origin: 'null' },
    { 'sec-fetch-site': 'same-origin', origin: 'https://elsewhere.example' },
  ])('changes nothing: %o', async (headers) => {
    const app = here()
    for (const [path, method] of [
      [machines, 'POST'],
      ['/api/settings', 'PATCH'],
      ['/api/photos', 'POST'],
      ['/api/sign-in', 'POST'],
    ] as const)
      expect([
        path,
        (await send(app, path, { content: added() }, headers as Record<string, string>, method)).status,
      ]).toEqual([path, 403])
    expect(await (await app.request(machines)).json()).toMatchObject({ inHand: 0 })
  })

  it('is told from the program’s own and from programs that are no browsers', async () => {
    for (const headers of [
      {},
      { 'sec-fetch-site': 'same-origin', origin: 'http://localhost' },
      { 'sec-fetch-site': 'none' },
    ])
      expect((await send(here(), machines, { content: added() }, headers as Record<string, string>)).status).toBe(201)
  })
})

describe('what is sent in', () => {
  it('is not unpacked', async () => {
    for (const packing of ['gzip', 'br', 'deflate, gzip'])
      expect((await send(here(), machines, { content: added() }, { 'content-encoding': packing })).status).toBe(415)
  })

  it('is limited by kind, by what is said and by what comes', async () => {
    const { app } = openApp()
    const long = 'x'.repeat(5000)
    expect((await send(app, '/api/sign-in', { name: '', passphrase: long })).status).toBe(413)
    const streamed = new ReadableStream({
      pull: (to) => to.enqueue(new TextEncoder().encode('x'.repeat(64 * 1024))),
    })
    const request = new Request('http://localhost/api/bench/own/machines', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: streamed,
      duplex: 'half',
    } as RequestInit)
    expect((await here().request(request)).status).toBe(413)
  })

  it.each([
    '{"content":{"kind":"added","__proto__":{"polluted":true}}}',
    '{"content":{"kind":"added"},"__proto__":{"polluted":true}}',
    '{"content":{"plate":{"\\u005f_proto__":{"polluted":true}}}}',
    `{"a":${'['.repeat(20_000)}{"\\u005f_proto__":1}${']'.repeat(20_000)}}`,
  ])('has no key __proto__: %#', async (body) => {
    const answer = await send(here(), machines, body)
    expect(answer.status).toBe(400)
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })

  it('in a whole blueprint and its edits changes no object of the program', async () => {
    const app = here()
    const text = JSON.stringify(blueprints[0]).replace('{', '{"__proto__":{"polluted":true},')
    expect((await send(app, '/api/blueprints', text)).status).toBe(400)
    const edits = [{ kind: 'part-price', part: '__proto__', priceMinor: 5 }]
    expect((await send(app, '/api/blueprints/tiny/adapt', { name: 'Other', edits })).status).toBeLessThan(500)
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })

  it('may name parts as every object has them, and that stays a name', async () => {
    const app = here()
    const { state } = (await (await send(app, machines, { content: added() })).json()) as MachineDocument
    for (const part of ['__proto__', 'constructor', 'toString']) {
      const content = { kind: 'valued', parts: [{ part, priceMinor: 5 }] }
      expect((await send(app, `${machines}/${state.id}/notes`, { version: 1, content })).status).toBe(422)
    }
    expect((await app.request(`/api/blueprints/__proto__`)).status).toBe(404)
  })
})

describe('a photograph', () => {
  let folder = ''
  beforeAll(async () => void (folder = await mkdtemp(join(tmpdir(), 'thrum-guard-'))))
  afterAll(() => rm(folder, { recursive: true }))

  it.each([
    ['a drawing', '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>alert(1)</script></svg>'],
    [
      'a drawing that names other files',
      '<?xml version="1.0"?><!DOCTYPE s [<!ENTITY x SYSTEM "file:///etc/passwd">]><svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><text>&x;</text></svg>',
    ],
    ['a page', '<!doctype html><script>alert(1)</script>'],
    ['a film', 'GIF89a\u0001\u0000\u0001\u0000\u0000\u0000\u0000;'],
  ])('is not %s', async (_what, text) => {
    const { app } = openApp({ photos: filePhotoStore(folder), access: accessAt(undefined, { isOpen: false }).access })
    const answer = await app.request('/api/photos', {
      method: 'POST',
      body: text,
      headers: { 'content-type': 'image/jpeg' },
    })
    expect([answer.status, await answer.json()]).toEqual([
      422,
      expect.objectContaining({ problems: [expect.objectContaining({ code: 'not-a-photograph' })] }),
    ])
  })

  it('is not a small file that unfolds into a huge one', async () => {
    // 400 megapixels of one colour in some 50 kB.
    const bomb = blackPng(20_000)
    expect(bomb.length).toBeLessThan(200_000)
    expect(await sharp(bomb, { limitInputPixels: false }).metadata()).toMatchObject({ format: 'png', width: 20_000 })
    expect(await makeImage(bomb)).toMatchObject({ kind: 'refused', problems: [{ code: 'too-many-pixels' }] })
  })
})

describe('files of the pages', () => {
  it('are found by their own names alone', async () => {
    const pages = await readStaticFiles(new URL('../../../src/web/public', import.meta.url).pathname)
    expect([...pages.keys()]).toContain('/mark.svg')
    const { app } = openApp({ pages })
    for (const path of [
      '/../app.tsx',
      '/..%2f..%2fpackage.json',
      '/%2e%2e/index.html',
      '/mark.svg/..%2f..%2findex.html',
      '//etc/passwd',
      '/assets/..\\..\\index.html',
      '/mark.svg%00',
    ]) {
      const answer = await app.request(`http://localhost${path}`)
      expect(await answer.text()).not.toMatch(/"name": "thrum"|root:|React/)
    }
  })
})

describe('what goes out', () => {
  it('has a policy without scripts or styles inline, and is framed, sniffed and read by nobody else', async () => {
    const { app } = openApp()
    for (const path of ['/healthz', '/api/nothing', '/', machines]) {
      const { headers } = await app.request(path)
      const policy = headers.get('content-security-policy') ?? ''
      expect(policy).toContain("default-src 'self'")
      expect(policy).toContain("frame-ancestors 'none'")
      expect(policy).not.toMatch(/unsafe|\*|http/)
      expect(Object.fromEntries(headers)).toMatchObject({
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
      })
    }
  })

  it('never carries what was sent in a header of its own', async () => {
    const app = here()
    for (const path of [
      '/api/blueprints/tiny%0d%0aset-cookie:a=b/file',
      '/api/bench/own/books/a%0d%0ax:y.csv',
      '/api/photos/%0d%0aa?size=small',
    ])
      expect([
        path,
        [...(await app.request(path)).headers.keys()].filter((name) => ['set-cookie', 'x'].includes(name)),
      ]).toEqual([path, []])
    const file = await app.request('/api/blueprints/tiny/file')
    expect(file.headers.get('content-disposition')).toBe('attachment; filename="tiny.json"')
    const evil = { ...blueprints[0], id: 'a"\r\nset-cookie: a=b', name: 'Evil' }
    expect((await send(app, '/api/blueprints', evil)).status).toBe(422)
  })
})

describe('guessing', () => {
  const guess = (app: Parameters<typeof send>[0], client: string, passphrase = 'wrong words here') =>
    send(app, '/api/sign-in', { name: 'Ada', passphrase }, { 'x-test-client': client })

  it('waits longer with every slip, by address, and says how long', async () => {
    const { app, pass } = await peopledApp()
    for (let slip = 0; slip < 6; slip++) expect((await guess(app, '192.0.2.7')).status).toBe(401)
    const waits: number[] = []
    for (let slip = 0; slip < 12; slip++) {
      const refused = await guess(app, '192.0.2.7')
      expect(refused.status).toBe(429)
      waits.push(Number(refused.headers.get('retry-after')))
      pass(waits.at(-1)!)
      await guess(app, '192.0.2.7')
    }
    expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900])
    // The right words do not help while it waits; another address is not held up by it.
    expect((await guess(app, '192.0.2.7', passphrases.Ada)).status).toBe(429)
    expect((await guess(app, '192.0.2.8', passphrases.Ada)).status).toBe(200)
  })

  it('from many addresses is slowed down together, never for longer than a minute', async () => {
    const { app, pass } = await peopledApp()
    let refused = 0
    for (let client = 0; client < 60; client++) if ((await guess(app, `198.51.100.${client}`)).status === 429) refused++
    expect(refused).toBeGreaterThan(25)
    pass(61)
    expect((await guess(app, '203.0.113.1', passphrases.Ada)).status).toBe(200)
  })

  it('with many second halves of an IPv6 address is one address', async () => {
    const { app } = await peopledApp()
    const statuses = []
    for (let end = 0; end < 8; end++) statuses.push((await guess(app, `2001:db8:1:2::${end}`)).status)
    expect(statuses.filter((one) => one === 429).length).toBeGreaterThan(0)
  })

  it('many at once is no way round', async () => {
    const { app } = await peopledApp()
    const statuses = await Promise.all(Array.from({ length: 30 }, async () => (await guess(app, '192.0.2.7')).status))
    expect(statuses.filter((one) => one === 401)).toHaveLength(6)
  })
})

describe('asking', () => {
  it('is let in generously, then slowed down', async () => {
    const { app, pass } = await peopledApp()
    const cookie = await signedInAs(app, 'Ada')
    const ask = async () => (await app.request('/api/who', { headers: { cookie } })).status
    const statuses = await Promise.all(Array.from({ length: 700 }, ask))
    expect(statuses.filter((one) => one === 200).length).toBeGreaterThan(500)
    expect(statuses.at(-1)).toBe(429)
    pass(2)
    expect(await ask()).toBe(200)
  })
})
