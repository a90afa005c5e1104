import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { AirRig } from '../../../src/machine/index.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeApp } from '../../../src/server/app.ts'
import { problemsSchema } from '../../../src/server/schemas.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'
import { noPhotos } from '../../support/no-photos.ts'

const app = makeApp({
  photos: noPhotos,
  benches: { own: memoryBench(), demo: memoryBench() },
  blueprints: [...blueprints, tinyBlueprint],
  ownBlueprints: memoryBlueprintStore(),
  settings: memorySettingsStore(),
  machineView: () => ({}) as MachineView,
  now: () => '2026-03-14T10:00:00.000Z',
  newId: () => 'id',
  pages: new Map(),
  hosts: null,
  log: () => {},
})

describe('/api/blueprints/:id/rig', () => {
  it('gives the rig, and the page to drill it by with the same holes', async () => {
    const answer = await app.request('/api/blueprints/bagged-cylinder/rig')
    const rig = (await answer.json()) as AirRig
    expect(answer.status).toBe(200)
    expect(rig.holes.length).toBeGreaterThanOrEqual(4)
    const page = await app.request('/api/blueprints/bagged-cylinder/rig/template.svg')
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'image/svg+xml'])
    const svg = await page.text()
    for (const { diameterMm } of rig.holes) expect(svg).toContain(`${diameterMm} mm`)
  })

  it.each(['rig', 'rig/template.svg'])('%s: refuses what is not there, and a blueprint of no kind', async (path) => {
    const missing = await app.request(`/api/blueprints/nowhere/${path}`)
    expect(missing.status).toBe(404)
    expect(problemsSchema.parse(await missing.json()).problems[0]?.what).toBe('There is no blueprint “nowhere”')
    const noKind = await app.request(`/api/blueprints/tiny/${path}`)
    expect(noKind.status).toBe(422)
    expect(problemsSchema.parse(await noKind.json()).problems[0]?.what).toBe(
      'This blueprint does not say how it stands',
    )
  })
})
