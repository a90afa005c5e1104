import { beforeAll, describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeApp } from '../../../src/server/app.ts'
import { problemsSchema } from '../../../src/server/schemas.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { noPhotos } from '../../support/no-photos.ts'

const blueprint = blueprints.find(({ id }) => id === 'commercial-upright')!

const app = makeApp({
  photos: noPhotos,
  benches: { own: memoryBench(), demo: memoryBench() },
  blueprints: [blueprint],
  ownBlueprints: memoryBlueprintStore(),
  settings: memorySettingsStore(),
  machineView: () => ({}) as MachineView,
  now: () => '2026-03-14T10:00:00.000Z',
  newId: () => 'n1',
  pages: new Map(),
  hosts: null,
  log: () => {},
})
const machines = '/api/bench/own/machines'

describe('the safety record and its label', () => {
  beforeAll(async () => {
    const content = {
      kind: 'added',
      name: 'Grey',
      blueprint: blueprint.id,
      plate: blueprint.plate,
      paidMinor: 300,
      currency: 'GBP',
    }
    const headers = { 'content-type': 'application/json' }
    await app.request(machines, { method: 'POST', headers, body: JSON.stringify({ id: 'm1', content }) })
  })

  it.each(['record.pdf', 'label.pdf'])('%s is a PDF, the same for the same notes', async (name) => {
    const one = await app.request(`${machines}/m1/${name}`)
    const other = await app.request(`${machines}/m1/${name}`)
    expect([one.status, one.headers.get('content-type')]).toEqual([200, 'application/pdf'])
    const bytes = Buffer.from(await one.arrayBuffer())
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
    expect(bytes.equals(Buffer.from(await other.arrayBuffer()))).toBe(true)
  })

  it('is refused for a machine that is not there', async () => {
    const answer = await app.request(`${machines}/m9/record.pdf`)
    expect(answer.status).toBe(404)
    expect(problemsSchema.parse(await answer.json()).problems[0]?.what).toBe('There is no machine “m9” on this bench')
  })
})
