import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { OpenAPIHono } from '@hono/zod-openapi'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addPhotos, largestPhotoBytes } from '../../../src/server/photos.ts'
import { filePhotoStore } from '../../../src/store/files/photo-store.ts'

describe('photographs over the API', () => {
  let folder = ''
  let app: OpenAPIHono
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'thrum-photos-'))
    app = new OpenAPIHono()
    addPhotos(app, filePhotoStore(folder))
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
})
