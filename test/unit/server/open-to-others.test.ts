import { mkdtemp, rm } from 'node:fs/promises'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import decodeQR from 'qr/decode.js'
import { valueOf } from '../../../src/base/result.ts'
import { networkAddresses, namesThisMachine } from '../../../src/server/network-addresses.ts'
import { reachedAt } from '../../../src/server/reached-at.ts'
import { startServer, type ServeOptions } from '../../../src/server/serve.ts'
import { clientKey } from '../../../src/server/sign-in/access.ts'

let folder = ''
beforeEach(async () => void (folder = await mkdtemp(join(tmpdir(), 'thrum-open-'))))
afterEach(() => rm(folder, { recursive: true }))

const words = 'correct horse battery'
const start = async (over: Partial<ServeOptions> = {}) => {
  const printed: string[] = []
  const started = await startServer({
    folder,
    port: 0,
    host: '0.0.0.0',
    network: true,
    hashing: { ln: 4, r: 8, p: 1 },
    print: (line) => printed.push(line),
    ...over,
  })
  return { started, printed }
}

type Got = { readonly status: number; readonly cookie: string }
/** Asks by any name, as a browser that was led astray would; `fetch` allows no Host of one's own. */
const ask = (port: number, path: string, headers: Record<string, string> = {}, body?: string): Promise<Got> =>
  new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port, path, headers, method: body === undefined ? 'GET' : 'POST' },
      (answer) => {
        answer.resume()
        const cookie = (answer.headers['set-cookie'] ?? []).join()
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, cookie }))
      },
    )
    asked.on('error', reject)
    asked.end(body)
  })

describe('serving others', () => {
  it('does not begin without a passphrase, nor with a short one', async () => {
    for (const over of [{}, { host: '127.0.0.1', network: false, behindProxy: 'bench.example' }])
      expect((await start(over)).started).toMatchObject({ kind: 'refused', problems: [{ code: 'no-passphrase' }] })
    expect((await start({ passphrase: 'short' })).started).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'passphrase-too-short' }],
    })
  })

  it('lets nobody in without it, answers to its own names alone, and keeps it for the next start', async () => {
    const first = await start({ passphrase: words })
    const server = valueOf(first.started)
    const port = Number(new URL(server.address).port)
    for (const host of ['127.0.0.1', 'localhost', ...networkAddresses()])
      expect([host, (await ask(port, '/api/settings', { host: `${host}:${port}` })).status]).toEqual([host, 401])
    expect((await ask(port, '/healthz', { host: 'rebound.example' })).status).toBe(403)
    expect((await ask(port, '/healthz')).status).toBe(200)
    const json = { 'content-type': 'application/json', host: 'localhost' }
    const entered = await ask(port, '/api/sign-in', json, JSON.stringify({ passphrase: words }))
    expect(entered.status).toBe(200)
    expect(entered.cookie).not.toContain('Secure')
    // Without a proxy in front, what claims to come from one is not believed.
    const claimed = { ...json, 'x-forwarded-proto': 'https', 'x-forwarded-for': '203.0.113.9' }
    expect((await ask(port, '/api/sign-in', claimed, JSON.stringify({ passphrase: words }))).cookie).not.toContain(
      'Secure',
    )
    await server.stop()
    const again = valueOf((await start()).started)
    await again.stop()
  })

  it('behind a proxy believes it as to https, and answers to its name', async () => {
    const { started } = await start({
      host: '127.0.0.1',
      network: false,
      behindProxy: 'bench.example',
      passphrase: words,
    })
    const server = valueOf(started)
    const port = Number(new URL(server.address).port)
    const by = {
      'content-type': 'application/json',
      host: 'bench.example',
      origin: 'https://bench.example',
      'x-forwarded-proto': 'https',
    }
    expect((await ask(port, '/api/sign-in', by, JSON.stringify({ passphrase: words }))).cookie).toContain('; Secure')
    expect((await ask(port, '/healthz', { host: 'other.example' })).status).toBe(403)
    await server.stop()
  })

  it('prints where it is reached, and a code that a phone reads', () => {
    const lines = reachedAt(4170, ['192.168.7.20', '[2001:db8::7]'])
    expect(lines).toContain('  http://192.168.7.20:4170')
    expect(lines).toContain('  http://[2001:db8::7]:4170')
    expect(decodeQR(pictureOf(lines.at(-1) ?? ''))).toBe('http://192.168.7.20:4170')
    expect(reachedAt(4170, [])).toHaveLength(1)
  })

  it('names are those of this machine', () => {
    const knows = namesThisMachine(['Bench.Example'.toLowerCase()])
    for (const name of ['localhost', '127.0.0.1', '[::1]', 'bench.example', ...networkAddresses()])
      expect([name, knows(name)]).toEqual([name, true])
    for (const name of ['10.255.255.254', 'example', 'bench.example.evil.example', ''])
      expect([name, knows(name)]).toEqual([name, false])
  })

  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2'],
    ['2001:DB8:1:2::9', '2001:db8:1:2'],
    ['::1', '0:0:0:0'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    ['', ''],
  ])('%s counts as %s', (address, key) => expect(clientKey(address)).toBe(key))
})

describe('stopping', () => {
  it('lets a request that was begun end, takes no other, and is done within five seconds', async () => {
    const server = valueOf((await start({ host: '127.0.0.1', network: false })).started)
    const port = Number(new URL(server.address).port)
    const json = { 'content-type': 'application/json' }
    const body = JSON.stringify({ hourMinor: 1234 })
    const begun = new Promise<number>((resolve, reject) => {
      const asked = request(
        {
          host: '127.0.0.1',
          port,
          path: '/api/settings',
          method: 'PATCH',
          headers: { ...json, 'content-length': body.length },
        },
        (answer) => {
          answer.resume()
          resolve(answer.statusCode ?? 0)
        },
      )
      asked.on('error', reject)
      asked.write(body.slice(0, 5))
      setTimeout(() => asked.end(body.slice(5)), 700)
    })
    await new Promise((resolve) => setTimeout(resolve, 200))
    const before = performance.now()
    process.emit('SIGTERM')
    await new Promise((resolve) => setTimeout(resolve, 50))
    await expect(ask(port, '/healthz')).rejects.toThrow()
    expect(await begun).toBe(200)
    await server.stopped
    expect(performance.now() - before).toBeLessThan(5000)
  })

  it('does not wait for one that never ends', async () => {
    const server = valueOf((await start({ host: '127.0.0.1', network: false })).started)
    const port = Number(new URL(server.address).port)
    const hanging = request({
      host: '127.0.0.1',
      port,
      path: '/api/settings',
      method: 'PATCH',
      headers: { 'content-type': 'application/json', 'content-length': 100 },
    })
    const cut = new Promise((resolve) => hanging.on('error', resolve))
    hanging.write('{')
    await new Promise((resolve) => setTimeout(resolve, 200))
    const before = performance.now()
    await server.stop()
    expect(performance.now() - before).toBeLessThan(5000)
    await cut
  })
})

/** The half blocks of a terminal as a picture, four pixels a module: what is drawn is light, for terminals are dark. */
const pictureOf = (text: string) => {
  const rows = text
    .split('\n')
    .filter((row) => row !== '')
    .flatMap((row) => [[...row].map((sign) => '█▀'.includes(sign)), [...row].map((sign) => '█▄'.includes(sign))])
  const scale = 4
  const [width, height] = [(rows[0] ?? []).length * scale, rows.length * scale]
  const data = new Uint8ClampedArray(width * height * 4)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      data.fill(
        rows[Math.floor(y / scale)]?.[Math.floor(x / scale)] === true ? 255 : 0,
        (y * width + x) * 4,
        (y * width + x) * 4 + 3,
      )
  for (let at = 3; at < data.length; at += 4) data[at] = 255
  return { width, height, data }
}
