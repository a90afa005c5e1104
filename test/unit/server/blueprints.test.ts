import { describe, expect, it } from 'vitest'
import { blueprintSchema } from '../../../src/blueprint/schema.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeApp } from '../../../src/server/app.ts'
import { keptBlueprintSchema, originSchema } from '../../../src/server/blueprint-routes.ts'
import { blueprintListSchema, machineDocumentSchema, problemsSchema } from '../../../src/server/schemas.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { added } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'
import { noPhotos } from '../../support/no-photos.ts'

const makeTinyApp = () => {
  let ids = 0
  return makeApp({
    photos: noPhotos,
    benches: { own: memoryBench(), demo: memoryBench() },
    blueprints: [tinyBlueprint],
    ownBlueprints: memoryBlueprintStore(),
    settings: memorySettingsStore(),
    machineView: (job) => ({ blueprint: job.blueprint.id, off: job.off }) as unknown as MachineView,
    now: () => '2026-03-14T10:00:00.000Z',
    newId: () => `id-${++ids}`,
    pages: new Map(),
    hosts: null,
    log: () => {},
  })
}
type App = ReturnType<typeof makeTinyApp>

const post = (app: App, path: string, body: unknown) =>
  app.request(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })
const adapt = (app: App, body: object, id = 'tiny') => post(app, `/api/blueprints/${id}/adapt`, body)
const noSwitch = { name: 'Tiny odd', edits: [{ kind: 'part-absent', part: 'switch' }] }

describe('adapting a blueprint', () => {
  it('keeps the variant, lists it after those of the program, and gives it in full and as a file', async () => {
    const app = makeTinyApp()
    const answer = await adapt(app, noSwitch)
    expect(answer.status).toBe(201)
    const kept = keptBlueprintSchema.parse(await answer.json())
    expect(kept).toMatchObject({ id: 'own-tiny-odd-1', isNew: true })
    const list = blueprintListSchema.parse(await (await app.request('/api/blueprints')).json())
    expect(list.blueprints.map(({ id, name }) => [id, name])).toEqual([
      ['tiny', 'Tiny upright'],
      ['own-tiny-odd-1', 'Tiny odd'],
    ])
    expect(await (await app.request('/api/blueprints/own-tiny-odd-1')).json()).toEqual(kept.blueprint)
    const file = await app.request('/api/blueprints/own-tiny-odd-1/file')
    expect(file.headers.get('content-disposition')).toBe('attachment; filename="own-tiny-odd-1.json"')
    expect(blueprintSchema.parse(await file.json())).toEqual(kept.blueprint)
    expect(originSchema.parse(await (await app.request('/api/blueprints/own-tiny-odd-1/origin')).json())).toEqual({
      savedAt: '2026-03-14T10:00:00.000Z',
      base: { id: 'tiny', name: 'Tiny upright' },
      differences: ['Handle switch: not there'],
    })
    expect((await app.request('/api/blueprints/tiny/origin')).status).toBe(404)
  })

  it('serves a machine from then on', async () => {
    const app = makeTinyApp()
    await post(app, '/api/bench/own/machines', { id: 'm1', content: added() })
    await adapt(app, noSwitch)
    const described = { kind: 'described-by', blueprint: 'own-tiny-odd-1', edits: noSwitch.edits }
    const answer = await post(app, '/api/bench/own/machines/m1/notes', { version: 1, content: described })
    const { state, lines } = machineDocumentSchema.parse(await answer.json())
    expect(state.blueprint).toBe('own-tiny-odd-1')
    expect(lines[1]?.text).toBe('This machine is different, read by “Tiny odd”: Handle switch: not there')
    expect(await (await app.request('/api/bench/own/machines/m1/view')).json()).toEqual({
      blueprint: 'own-tiny-odd-1',
      off: [],
    })
    const another = { id: 'm2', content: { ...added(), blueprint: 'own-tiny-odd-1' } }
    expect((await post(app, '/api/bench/own/machines', another)).status).toBe(201)
  })

  it.each([
    ['of nothing', 'huge', noSwitch, 404, 'unknown-blueprint'],
    [
      'with an unknown part',
      'tiny',
      { name: 'x', edits: [{ kind: 'part-absent', part: 'wing' }] },
      422,
      'unknown-part',
    ],
    ['without a name', 'tiny', { ...noSwitch, name: ' ' }, 400, 'not-of-the-form'],
    ['with an unknown edit', 'tiny', { name: 'x', edits: [{ kind: 'part-painted' }] }, 400, 'not-of-the-form'],
  ])('%s is refused and keeps nothing', async (_name, id, body, status, code) => {
    const app = makeTinyApp()
    const answer = await adapt(app, body, id)
    expect(answer.status).toBe(status)
    expect(problemsSchema.parse(await answer.json()).problems[0]?.code).toBe(code)
    const list = blueprintListSchema.parse(await (await app.request('/api/blueprints')).json())
    expect(list.blueprints).toHaveLength(1)
  })
})

describe('taking in a whole blueprint', () => {
  it('gives it an id of its own; what was given out as a file and comes back is known again', async () => {
    const app = makeTinyApp()
    const mine = await post(app, '/api/blueprints', { ...tinyBlueprint, name: 'Mine' })
    expect(keptBlueprintSchema.parse(await mine.json())).toMatchObject({ id: 'own-mine-1', isNew: true })
    const file = await (await app.request('/api/blueprints/own-mine-1/file')).text()
    const again = await post(app, '/api/blueprints', file)
    expect(keptBlueprintSchema.parse(await again.json())).toMatchObject({ id: 'own-mine-1', isNew: false })
  })

  it('says each mistake with its mend', async () => {
    const app = makeTinyApp()
    const broken = { ...tinyBlueprint, supply: { line: 'plug.ll', neutral: 'plug.n' } }
    const answer = await post(app, '/api/blueprints', broken)
    expect(answer.status).toBe(422)
    expect(problemsSchema.parse(await answer.json()).problems).toMatchObject([
      { code: 'unknown-point', where: 'supply.line', mend: expect.stringContaining('Write “plug.l”') as string },
    ])
    expect((await post(app, '/api/blueprints', '{')).status).toBe(400)
    expect((await post(app, '/api/blueprints', JSON.stringify({ a: 'x'.repeat(1_100_000) }))).status).toBe(413)
  })
})

it('a file of a blueprint that is not there is not found', async () => {
  expect((await makeTinyApp().request('/api/blueprints/huge/file')).status).toBe(404)
})
