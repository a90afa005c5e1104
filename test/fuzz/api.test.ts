import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { machineView } from '../../src/machine/index.ts'
import type { LogEntry } from '../../src/server/app.ts'
import { filePhotoStore } from '../../src/store/files/photo-store.ts'
import { accessAt } from '../support/access.ts'
import { added } from '../support/notes.ts'
import { openApp, send } from '../support/signed-app.ts'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'
import { fromSchema, mutated, type Schema } from './from-schema.ts'
import { inTime, memoryBound, runsOf, seed } from './runs.ts'

const machines = '/api/bench/own/machines'
const words = [
  ...tinyBlueprint.parts.map(({ id }) => id),
  ...tinyBlueprint.faults.map(({ id }) => id),
  ...tinyBlueprint.checks.map(({ id }) => id),
  ...tinyBlueprint.covers.map(({ id }) => id),
  ...tinyBlueprint.repairs.map(({ id }) => id),
  ...['tiny', 'm1', 'own', 'demo', 'GBP', 'UK', '', 'constructor', '__proto__', '2026-03-01', '2026-03'],
]

type Way = {
  readonly requestBody?: { readonly content?: Readonly<Record<string, { readonly schema?: Schema }>> }
  readonly parameters?: readonly { readonly in: string; readonly name: string; readonly schema?: Schema }[]
}

describe('the API', () => {
  it('answers whatever is sent to any address, in time, and never with a fault of its own', async () => {
    const thrown: LogEntry[] = []
    const folder = await mkdtemp(join(tmpdir(), 'thrum-fuzz-'))
    const { app } = openApp({
      photos: filePhotoStore(folder),
      access: accessAt(undefined, { isOpen: false }).access,
      machineView,
      log: (entry) => entry.kind === 'thrown' && thrown.push(entry),
    })
    await send(app, machines, { id: 'm1', content: added() })
    const root = app.getOpenAPI31Document({ openapi: '3.1.0', info: { title: '', version: '' } })
    const isBounded = memoryBound()
    const addresses = Object.entries((root.paths ?? {}) as Record<string, Record<string, Way>>).flatMap(
      ([path, ways]) => Object.entries(ways).map(([method, way]) => ({ path, method, way })),
    )
    // Once someone has a name everybody signs in, so what is about people comes last.
    const aboutPeople = addresses.filter(({ path }) => /people|passphrase/.test(path))
    for (const one of addresses) if (!aboutPeople.includes(one)) await walk(app, root, one, thrown)
    expect((await app.request(`${machines}/m1`)).status).toBe(200)
    for (const one of aboutPeople) await walk(app, root, one, thrown)
    expect((await app.request('/healthz')).status).toBe(200)
    isBounded()
    await rm(folder, { recursive: true, force: true })
  })
})

const walk = async (
  app: ReturnType<typeof openApp>['app'],
  root: unknown,
  { path, method, way }: { readonly path: string; readonly method: string; readonly way: Way },
  thrown: LogEntry[],
): Promise<void> => {
  // A connection that is kept open for as long as the page is there has no end to wait for.
  if (path.endsWith('/changes')) return
  const schema = way.requestBody?.content?.['application/json']?.schema
  const body = schema === undefined ? fc.constant(undefined) : mutated(fromSchema(schema, root, words))
  const name = fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom('m1', 'tiny', 'own', '2026-03', 'a.csv') },
    { weight: 1, arbitrary: fc.string({ maxLength: 20 }) },
  )
  const names = fc.array(name, { minLength: 3, maxLength: 3 })
  const query = fc.dictionary(
    fc.constantFrom(...(way.parameters ?? []).flatMap((one) => (one.in === 'query' ? [one.name] : [])), 'other'),
    fc.oneof(fc.constantFrom(...words, '1', '-1', '1e9', '500'), fc.string({ maxLength: 20 })),
    { maxKeys: 3 },
  )
  const property = fc.asyncProperty(names, query, body, async (filled, asked, sent) => {
    let at = 0
    const address = path.replace('{bench}', 'own').replace(/\{\w+\}/g, () => encodeURIComponent(filled[at++] ?? ''))
    const url = `${address}?${new URLSearchParams(asked)}`
    const text = sent === undefined ? undefined : JSON.stringify(sent)
    const answer = await inTime(`${method} ${url}`, () =>
      app.request(url, {
        method: method.toUpperCase(),
        headers: { 'content-type': 'application/json' },
        ...(method === 'get' || text === undefined ? {} : { body: text }),
      }),
    )
    await answer.arrayBuffer()
    if (answer.status >= 500)
      expect.fail(
        `${method} ${url} ${text}: ${answer.status} ${String(thrown.map((one) => ('thrown' in one ? (one.thrown as Error).stack : '')))}`,
      )
  })
  await fc.assert(property, { seed, numRuns: runsOf(schema === undefined ? 4 : 12) })
}
