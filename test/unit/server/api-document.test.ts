import { describe, expect, it } from 'vitest'
import { appWith } from '../../support/memory-app.ts'

describe('documents', () => {
  it.each(['blueprint', 'notes', 'network', 'network-request', 'plan', 'belief'])('schema %s', async (name) => {
    const schema = (await (await appWith().request(`/api/schemas/${name}`)).json()) as Record<string, unknown>
    expect(schema['$schema']).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema['type']).toBe('object')
  })

  it('describe every address of the API', async () => {
    const response = await appWith().request('/api/openapi.json')
    const document = (await response.json()) as { openapi: string; paths: Record<string, Record<string, unknown>> }
    expect(response.status).toBe(200)
    expect(document.openapi).toBe('3.1.0')
    const addresses = Object.entries(document.paths).flatMap(([path, ways]) =>
      Object.keys(ways).map((way) => `${way} ${path}`),
    )
    expect(addresses.sort()).toEqual([
      'get /api/bench/{bench}/adverts',
      'get /api/bench/{bench}/adverts/{id}',
      'get /api/bench/{bench}/books',
      'get /api/bench/{bench}/books/lines/{month}',
      'get /api/bench/{bench}/books/{file}',
      'get /api/bench/{bench}/changes',
      'get /api/bench/{bench}/compared',
      'get /api/bench/{bench}/expenses',
      'get /api/bench/{bench}/expenses/{id}',
      'get /api/bench/{bench}/machines',
      'get /api/bench/{bench}/machines/{id}',
      'get /api/bench/{bench}/machines/{id}/asking',
      'get /api/bench/{bench}/machines/{id}/chapters.txt',
      'get /api/bench/{bench}/machines/{id}/label.pdf',
      'get /api/bench/{bench}/machines/{id}/record.pdf',
      'get /api/bench/{bench}/machines/{id}/sale-sheet',
      'get /api/bench/{bench}/machines/{id}/sale-sheet.html',
      'get /api/bench/{bench}/machines/{id}/sale-sheet.pdf',
      'get /api/bench/{bench}/machines/{id}/sale-sheet.txt',
      'get /api/bench/{bench}/machines/{id}/story.html',
      'get /api/bench/{bench}/machines/{id}/view',
      'get /api/bench/{bench}/market',
      'get /api/bench/{bench}/open-data.csv',
      'get /api/bench/{bench}/prices',
      'get /api/bench/{bench}/prices/{id}',
      'get /api/bench/{bench}/records',
      'get /api/bench/{bench}/records/{id}',
      'get /api/bench/{bench}/shelf',
      'get /api/bench/{bench}/shelf/{id}',
      'get /api/blueprints',
      'get /api/blueprints/{id}',
      'get /api/blueprints/{id}/file',
      'get /api/blueprints/{id}/origin',
      'get /api/blueprints/{id}/rig',
      'get /api/blueprints/{id}/rig/template.svg',
      'get /api/devices',
      'get /api/people',
      'get /api/photos/{id}',
      'get /api/schemas/{name}',
      'get /api/settings',
      'get /api/sign-in',
      'get /api/who',
      'get /healthz',
      'patch /api/settings',
      'post /api/bench/{bench}/adverts',
      'post /api/bench/{bench}/adverts/{id}/buy',
      'post /api/bench/{bench}/adverts/{id}/entries',
      'post /api/bench/{bench}/books/import',
      'post /api/bench/{bench}/expenses',
      'post /api/bench/{bench}/expenses/{id}/entries',
      'post /api/bench/{bench}/machines',
      'post /api/bench/{bench}/machines/{id}/notes',
      'post /api/bench/{bench}/machines/{id}/take-off',
      'post /api/bench/{bench}/open-data/import',
      'post /api/bench/{bench}/prices',
      'post /api/bench/{bench}/prices/{id}/entries',
      'post /api/bench/{bench}/records',
      'post /api/bench/{bench}/records/{id}/entries',
      'post /api/bench/{bench}/shelf',
      'post /api/bench/{bench}/shelf/{id}/entries',
      'post /api/blueprints',
      'post /api/blueprints/{id}/adapt',
      'post /api/devices/{id}/shut-out',
      'post /api/people',
      'post /api/people/{id}/passphrase',
      'post /api/people/{id}/remove',
      'post /api/people/{id}/role',
      'post /api/photos',
      'post /api/sign-in',
      'post /api/sign-out',
      'post /api/who/passphrase',
    ])
  })

  it('say that the program is well', async () => {
    expect(await (await appWith().request('/healthz')).json()).toEqual({ status: 'ok' })
  })
})
