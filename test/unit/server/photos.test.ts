import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { OpenAPIHono } from '@hono/zod-openapi'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { largestPhotoBytes } from '../../../src/base/photo-limits.ts'
import { addPhotos } from '../../../src/server/photos.ts'
import { fileOriginalStore } from '../../../src/store/files/original-store.ts'
import { filePhotoStore } from '../../../src/store/files/photo-store.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'

describe('photographs over the API', () => {
  let folder = ''
  let app: OpenAPIHono
  const settings = memorySettingsStore()
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'thrum-photos-'))
    app = new OpenAPIHono()
    addPhotos(app, {
      photos: filePhotoStore(folder),
      originals: fileOriginalStore(join(folder, 'originals')),
      settings,
    })
  })
  afterAll(() => rm(folder, { recursive: true }))
  const send = (body: Uint8Array) =>
    app.request('/api/photos', {
      method: 'POST',
      body: new Uint8Array(body).buffer,
      headers: { 'content-type': 'application/octet-stream' },
    })

  it('are kept, and come back large and small as JPEG that never changes', async () => {
    const sent = await sharp({ create: { width: 900, height: 600, channels: 3, background: '#777' } })
      .png()
      .toBuffer()
    const answer = await send(sent)
    expect(answer.status).toBe(201)
    const { id } = (await answer.json()) as { id: string }
    for (const [size, width] of [
      ['large', 900],
      ['small', 480],
    ] as const) {
      const got = await app.request(`/api/photos/${id}?size=${size}`)
      expect(got.headers.get('content-type')).toBe('image/jpeg')
      expect(got.headers.get('cache-control')).toContain('immutable')
      const seen = await sharp(Buffer.from(await got.arrayBuffer())).metadata()
      expect([seen.format, seen.width]).toEqual(['jpeg', width])
    }
  })

  it('are refused by what they hold, not by what they are called, and when they are too large', async () => {
    const page = await send(Buffer.from('<!doctype html><script>alert(1)</script>'))
    expect(page.status).toBe(422)
    expect(await page.json()).toMatchObject({ problems: [{ code: 'not-a-photograph' }] })
    expect((await send(new Uint8Array(largestPhotoBytes + 1))).status).toBe(413)
  })

  it('are not found by anything but their name', async () => {
    for (const id of ['0'.repeat(64), '..%2F..%2Fetc%2Fpasswd', 'x'])
      expect((await app.request(`/api/photos/${id}`)).status).toBe(404)
  })

  it('keep the file as it was sent only where the settings say so, and give it out as a file', async () => {
    const sent = await sharp({ create: { width: 64, height: 48, channels: 3, background: '#a40' } })
      .jpeg()
      .withExif({ IFD0: { Model: 'Invented camera' } })
      .toBuffer()
    const { id } = (await (await send(sent)).json()) as { id: string }
    const before = await app.request(`/api/photos/${id}?size=original`)
    expect([before.status, await before.json()]).toMatchObject([404, { problems: [{ code: 'no-original' }] }])
    await settings.add({ at: '2026-03-14T10:00:00.000Z', change: { keepOriginals: true } })
    expect((await send(sent)).status).toBe(201)
    const original = await app.request(`/api/photos/${id}?size=original`)
    expect(original.headers.get('content-disposition')).toMatch(/^attachment/)
    const bytes = Buffer.from(await original.arrayBuffer())
    expect(bytes.equals(sent)).toBe(true)
    expect(bytes.includes('Invented camera')).toBe(true)
    // What is shown holds nothing of it.
    const shown = Buffer.from(await (await app.request(`/api/photos/${id}`)).arrayBuffer())
    expect(shown.includes('Invented camera')).toBe(false)
  })
})
