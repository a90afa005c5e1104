import { dsvFormat } from 'd3-dsv'
import { beforeAll, describe, expect, it } from 'vitest'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import type { SaleSheetView } from '../../../src/bench/sale/sheet-view.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeApp } from '../../../src/server/app.ts'
import { problemsSchema } from '../../../src/server/schemas.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { noPhotos } from '../../support/no-photos.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const app = makeApp({
  photos: noPhotos,
  benches: { own: memoryBench(), demo: memoryBench() },
  blueprints: [tinyBlueprint],
  ownBlueprints: memoryBlueprintStore(),
  settings: memorySettingsStore(),
  machineView: () => ({}) as MachineView,
  now: () => '2026-03-14T10:00:00.000Z',
  newId: (() => {
    let n = 0
    return () => `n${++n}`
  })(),
  pages: new Map(),
  hosts: null,
  log: () => {},
})
const bench = '/api/bench/own'
const headers = { 'content-type': 'application/json' }
const post = (path: string, body: unknown): Response | Promise<Response> =>
  app.request(`${bench}${path}`, { method: 'POST', headers, body: JSON.stringify(body) })
const note = (machine: string, version: number, content: NoteContentInput) =>
  post(`/machines/${machine}/notes`, { version, content })

describe('the sale sheet over the API', () => {
  beforeAll(async () => {
    const content = {
      kind: 'added',
      name: 'Grey',
      blueprint: 'tiny',
      plate: tinyBlueprint.plate,
      paidMinor: 300,
      currency: 'GBP',
    }
    await post('/machines', { id: 'm1', content })
    await note('m1', 1, { kind: 'worded', section: 'opening', text: 'Safety tested.' })
  })

  it('is given as what the page shows, each claim held against the notes', async () => {
    const answer = await app.request(`${bench}/machines/m1/sale-sheet`)
    const view = (await answer.json()) as SaleSheetView
    expect(view.unsupported).toBe(1)
    expect(view.sections.find(({ section }) => section === 'opening')?.claims[0]).toMatchObject({
      words: 'Safety tested',
      verdict: 'unsupported',
    })
  })

  it.each([
    ['pdf', 'application/pdf', '%PDF-'],
    ['html', 'text/html; charset=UTF-8', '<!doctype html>'],
    ['txt', 'text/plain; charset=UTF-8', 'Grey tiny upright: '],
  ])('is given as .%s', async (kind, type, start) => {
    const answer = await app.request(`${bench}/machines/m1/sale-sheet.${kind}`)
    // With or without a space before the parameter: both are the same by RFC 9110, 5.6.6, and which comes hangs on who writes it.
    expect([answer.status, answer.headers.get('content-type')?.replace(/;\s*/, '; ')]).toEqual([200, type])
    const text = Buffer.from(await answer.arrayBuffer()).toString('utf8')
    expect(text.startsWith(start)).toBe(true)
    if (kind !== 'pdf') expect(text).toContain('Safety tested †.')
  })

  it('lets the page load nothing', async () => {
    const answer = await app.request(`${bench}/machines/m1/sale-sheet.html`)
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'")
  })

  it.each(['', '.pdf', '.html', '.txt'])('is refused for a machine that is not there: sale-sheet%s', async (end) => {
    const answer = await app.request(`${bench}/machines/m9/sale-sheet${end}`)
    expect(answer.status).toBe(404)
    expect(problemsSchema.parse(await answer.json()).problems[0]?.code).toBe('unknown-machine')
  })
})

describe('open repair data over the API', () => {
  it('goes out as a file and comes in again on another bench; the same file twice adds nothing', async () => {
    const content = {
      kind: 'added',
      name: 'Old',
      blueprint: 'tiny',
      plate: tinyBlueprint.plate,
      paidMinor: 0,
      currency: 'GBP',
    }
    await post('/machines', { id: 'm2', content })
    await note('m2', 1, { kind: 'left', exit: 'scrap', receivedMinor: 0 })
    const answer = await app.request(`${bench}/open-data.csv?provider=A%20bench`)
    const csv = await answer.text()
    expect(
      dsvFormat(',')
        .parse(csv)
        .map(({ id, repair_status: status, data_provider: by }) => [id, status, by]),
    ).toEqual([['m2', 'End of life', 'A bench']])
    const take = async (): Promise<unknown> => (await post('/open-data/import', { csv })).json()
    expect(await take()).toMatchObject({ kind: 'imported', imported: 1, already: 0 })
    expect(await take()).toMatchObject({ kind: 'imported', imported: 0, already: 1 })
    const list = (await (await app.request(`${bench}/records`)).json()) as { readonly total: number }
    expect(list.total).toBe(1)
  })

  it('is refused with wrong columns, by name', async () => {
    const answer = await post('/open-data/import', { csv: 'id,make\n1,x' })
    expect(answer.status).toBe(422)
    expect(problemsSchema.parse(await answer.json()).problems.map(({ where }) => where)).toContain(
      'row 1, repair_status',
    )
  })
})
