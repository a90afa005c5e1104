import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { WhatToAsk } from '../../../src/bench/prices/what-to-ask.ts'
import type { MarketPrice } from '../../../src/machine/market.ts'
import { machineView } from '../../../src/machine/index.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeApp } from '../../../src/server/app.ts'
import { machineDocumentSchema, problemsSchema } from '../../../src/server/schemas.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { added } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'
import { noPhotos } from '../../support/no-photos.ts'

const appOf = () => {
  let ids = 0
  return makeApp({
    photos: noPhotos,
    benches: { own: memoryBench(), demo: memoryBench() },
    blueprints: [tinyBlueprint, ...blueprints],
    ownBlueprints: memoryBlueprintStore(),
    settings: memorySettingsStore(),
    machineView: (job) => machineView(job),
    now: () => '2026-06-01T10:00:00.000Z',
    newId: () => `id-${++ids}`,
    pages: new Map(),
    hosts: null,
    log: () => undefined,
  })
}
type App = ReturnType<typeof appOf>

const post = (app: App, path: string, body: unknown) =>
  app.request(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
const see = (app: App, over: object = {}) =>
  post(app, '/api/bench/own/prices', {
    content: { kind: 'seen', blueprint: 'tiny', priceMinor: 5000, currency: 'GBP', day: '2026-05-20', ...over },
  })
const marketOf = async (app: App, query = ''): Promise<MarketPrice | null> => {
  const response = await app.request(`/api/bench/own/market?blueprint=tiny${query}`)
  expect(response.status).toBe(200)
  return ((await response.json()) as { market: MarketPrice | null }).market
}
const addM1 = (app: App) => post(app, '/api/bench/own/machines', { id: 'm1', content: added() })
const asking = async (app: App, query = ''): Promise<WhatToAsk> => {
  const response = await app.request(`/api/bench/own/machines/m1/asking${query}`)
  expect(response.status).toBe(200)
  return (await response.json()) as WhatToAsk
}

describe('what machines fetch', () => {
  it('is nothing until a price is entered, then that, until it is struck out', async () => {
    const app = appOf()
    expect(await marketOf(app)).toBeNull()
    const { entries } = (await (await see(app)).json()) as { entries: { id: string; log: string }[] }
    const market = (await marketOf(app))!
    expect(market).toMatchObject({ own: 0, seen: 1, currency: 'GBP' })
    // A price above the middle of the blueprint's range pulls the median above it, and not beyond itself.
    expect(market.medianMinor).toBeGreaterThan(4000)
    expect(market.medianMinor).toBeLessThan(5000)
    expect(await marketOf(app, '&currency=EUR')).toBeNull()
    const struck = { version: 1, content: { kind: 'struck', note: entries[0].id } }
    expect((await post(app, `/api/bench/own/prices/${entries[0].log}/entries`, struck)).status).toBe(200)
    expect(await marketOf(app)).toBeNull()
  })

  it('holds in the view of a machine', async () => {
    const app = appOf()
    await addM1(app)
    const view = async () => (await (await app.request('/api/bench/own/machines/m1/view')).json()) as MachineView
    const before = (await view()).worth
    await see(app, { priceMinor: 9000 })
    const after = (await view()).worth
    expect(after.prices.working.minor).toBeGreaterThan(before.prices.working.minor)
    expect(after.repairedSum.sources.join()).toContain('From 1 price you entered, £')
  })

  it('refuses a blueprint that is not known', async () => {
    const response = await appOf().request('/api/bench/own/market?blueprint=none')
    expect(response.status).toBe(404)
    expect(problemsSchema.parse(await response.json()).problems[0].what).toContain('“none”')
  })
})

describe('what to ask for a machine', () => {
  it('goes by what is chosen', async () => {
    const app = appOf()
    await addM1(app)
    await see(app)
    const usual = await asking(app)
    expect(usual.asking.choices).toEqual({
      grade: 'B',
      done: ['cleaned', 'new-filters'],
      found: [],
      dayMinor: 0,
      horizonDays: 30,
    })
    expect(usual.prices).toMatchObject([{ from: 'entered', priceMinor: 5000, say: { level: 'kind' } }])
    const worse = await asking(app, '?grade=C&done=&dayMinor=20&horizonDays=14')
    expect(worse.asking.choices).toEqual({ grade: 'C', done: [], found: [], dayMinor: 20, horizonDays: 14 })
    expect(worse.asking.askMinor).toBeLessThan(usual.asking.askMinor)
  })

  it('a listing is noted and counts for the days, under its grade from then on', async () => {
    const app = appOf()
    await addM1(app)
    const note = { version: 1, content: { kind: 'listed', priceMinor: 4200, where: 'shed door', grade: 'C' } }
    const written = await post(app, '/api/bench/own/machines/m1/notes', note)
    const document = machineDocumentSchema.parse(await written.json())
    expect(document.lines.at(-1)?.text).toBe('Offered at £42.00, grade C: shed door')
    expect(document.state.listed).toMatchObject([{ priceMinor: 4200, to: null }])
    const { asking: view, listings } = await asking(app)
    expect(view.choices.grade).toBe('C')
    expect(listings).toMatchObject([{ ended: 'unsold', priceMinor: 4200 }])
  })

  it.each([
    ['?grade=E', 400],
    ['?done=painted', 400],
    ['?horizonDays=0', 400],
    ['?found=hose', 422],
  ])('refuses %s', async (query, status) => {
    const app = appOf()
    await addM1(app)
    const response = await app.request(`/api/bench/own/machines/m1/asking${query}`)
    expect(response.status).toBe(status)
    expect(problemsSchema.parse(await response.json()).problems.length).toBeGreaterThan(0)
  })

  it('a listing for nothing is refused, and so is one of a machine that is not there', async () => {
    const app = appOf()
    await addM1(app)
    const free = { version: 1, content: { kind: 'listed', priceMinor: 0 } }
    expect((await post(app, '/api/bench/own/machines/m1/notes', free)).status).toBe(400)
    expect((await app.request('/api/bench/own/machines/m2/asking')).status).toBe(404)
  })
})
