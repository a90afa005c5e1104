import { describe, expect, it } from 'vitest'
import { problem } from '../../../src/base/problem.ts'
import type { SettingsStore } from '../../../src/bench/ports.ts'
import type { Job } from '../../../src/machine/job.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeApp } from '../../../src/server/app.ts'
import { machineDocumentSchema, problemsSchema } from '../../../src/server/schemas.ts'
import { settingsSchema } from '../../../src/server/settings-routes.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { added } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'
import { noPhotos } from '../../support/no-photos.ts'

const appWith = (settings: SettingsStore, seen: Job[] = []) => {
  let ids = 0
  return makeApp({
    photos: noPhotos,
    benches: { own: memoryBench(), demo: memoryBench() },
    blueprints: [tinyBlueprint],
    ownBlueprints: memoryBlueprintStore(),
    settings,
    machineView: (job) => {
      seen.push(job)
      return {} as MachineView
    },
    now: () => '2026-03-14T10:00:00.000Z',
    newId: () => `id-${++ids}`,
    pages: new Map(),
    hosts: null,
    log: () => {},
  })
}
type App = ReturnType<typeof appWith>

const send = (app: App, method: string, path: string, body: unknown) =>
  app.request(path, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
const patch = (app: App, body: unknown) => send(app, 'PATCH', '/api/settings', body)
const settingsOf = async (response: Response) => settingsSchema.parse(await response.json())
const refusal = async (response: Response): Promise<[number, ...string[]]> => {
  const { problems } = problemsSchema.parse(await response.json())
  return [response.status, ...problems.map((one) => `${one.where}: ${one.what}`)]
}

describe('/api/settings', () => {
  it('gives what holds, and changes only what is named', async () => {
    const app = appWith(memorySettingsStore())
    const first = {
      hourMinor: 800,
      currency: 'GBP',
      attitude: 'average',
      region: 'UK',
      checkedBy: '',
      keepOriginals: false,
      costs: {},
    }
    expect(await settingsOf(await app.request('/api/settings'))).toEqual(first)
    const changed = await patch(app, { hourMinor: 950 })
    expect([changed.status, await settingsOf(changed)]).toEqual([200, { ...first, hourMinor: 950 }])
    await patch(app, { attitude: 'cautious' })
    expect(await settingsOf(await app.request('/api/settings'))).toEqual({
      ...first,
      hourMinor: 950,
      attitude: 'cautious',
    })
  })

  it('refuses what is not of the form, naming each place, and changes nothing', async () => {
    const app = appWith(memorySettingsStore())
    const wrong = { hourMinor: -1, currency: 'XYZ', attitude: 'bold' }
    const [status, ...where] = await refusal(await patch(app, wrong))
    expect(status).toBe(400)
    expect(where.map((line) => line.split(':')[0])).toEqual(['hourMinor', 'currency', 'attitude'])
    expect((await refusal(await patch(app, { hour: 5 })))[0]).toBe(400)
    expect((await refusal(await patch(app, {})))[0]).toBe(422)
    expect((await settingsOf(await app.request('/api/settings'))).hourMinor).toBe(800)
  })

  it('says so when the store cannot keep it', async () => {
    const full: SettingsStore = {
      changes: () => Promise.resolve([]),
      add: () =>
        Promise.resolve({ kind: 'not-kept', problem: problem('disk-full', '', 'The disk is full', 'Make room') }),
    }
    expect(await refusal(await patch(appWith(full), { hourMinor: 5 }))).toEqual([507, ': The disk is full'])
  })

  it('stands in the document of the API', async () => {
    const document = (await (await appWith(memorySettingsStore()).request('/api/openapi.json')).json()) as {
      paths: Record<string, object>
    }
    expect(Object.keys(document.paths['/api/settings'] ?? {}).toSorted()).toEqual(['get', 'patch'])
  })
})

describe('what the settings hold for', () => {
  it('a new machine takes the hour over; the view is told how risk is weighed and what was put in', async () => {
    const seen: Job[] = []
    const app = appWith(memorySettingsStore(), seen)
    await patch(app, { hourMinor: 950, attitude: 'cautious' })
    const made = await send(app, 'POST', '/api/bench/own/machines', { id: 'm1', content: added() })
    expect(machineDocumentSchema.parse(await made.json()).state.hourMinor).toBe(950)
    await app.request('/api/bench/own/machines/m1/view')
    expect(seen).toMatchObject([{ hourMinor: 950, attitude: 'cautious', putInMinor: 500 }])
  })

  it('the view is told what things cost', async () => {
    const seen: Job[] = []
    const app = appWith(memorySettingsStore(), seen)
    await send(app, 'POST', '/api/bench/own/machines', { id: 'm1', content: added() })
    const answer = await patch(app, { costs: { postageMinor: 350 } })
    expect((await settingsOf(answer)).costs).toEqual({ postageMinor: 350 })
    await app.request('/api/bench/own/machines/m1/view')
    expect(seen).toMatchObject([{ costs: { postageMinor: 350, from: { postageMinor: 'set' } } }])
    const wrong = { costs: { partFeeShare: 1.2, postageMinor: 0.5, tea: 3 } }
    const [status, ...where] = await refusal(await patch(app, wrong))
    expect(status).toBe(400)
    expect(where.map((line) => line.split(':')[0]).toSorted()).toEqual([
      'costs',
      'costs.partFeeShare',
      'costs.postageMinor',
    ])
  })

  it('a price goes in by a note and comes out with its day', async () => {
    const app = appWith(memorySettingsStore())
    await send(app, 'POST', '/api/bench/own/machines', { id: 'm1', content: added() })
    const content = { kind: 'valued', sparesMinor: 700, parts: [{ part: 'motor', priceMinor: 900 }] }
    const answer = await send(app, 'POST', '/api/bench/own/machines/m1/notes', { version: 1, content })
    const set = (minor: number) => ({ minor, at: '2026-03-14T10:00:00.000Z' })
    expect(machineDocumentSchema.parse(await answer.json()).state.prices).toEqual({
      working: null,
      spares: set(700),
      parts: { motor: set(900) },
    })
  })
})
