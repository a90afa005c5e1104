import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { largestPhotoBytes } from '../base/photo-limits.ts'
import { problem } from '../base/problem.ts'
import { keepPhoto, type PhotoPlaces } from '../bench/photos/keep-photo.ts'
import type { OriginalStore } from '../bench/photos/original-ports.ts'
import * as routes from './photo-routes.ts'
import { refuse } from './refusals.ts'
import { typed } from './typed.ts'

/** The addresses of photographs. */
export const addPhotos = (app: OpenAPIHono, places: PhotoPlaces): void => {
  const { photos, originals } = places
  app.use('/api/photos', bodyLimit({ maxSize: largestPhotoBytes, onError: (c) => refuse(c, 413, tooLarge) }))
  app.openapi(routes.newPhotoRoute, async (c) => {
    const bytes = new Uint8Array(await c.req.arrayBuffer())
    const outcome = await keepPhoto(places, bytes)
    switch (outcome.kind) {
      case 'kept':
        return typed(c.json(outcome.photo, 201))
      case 'refused':
        return typed(refuse(c, 422, outcome.problem))
      case 'not-kept':
        return typed(refuse(c, 507, outcome.problem))
    }
  })
  app.openapi(routes.photoRoute, async (c) => {
    const { id } = c.req.valid('param')
    const { size } = c.req.valid('query')
    if (size === 'original') return typed(await originalAnswer(c, originals, id))
    const bytes = await photos.get(id, size)
    if (bytes === null) return typed(refuse(c, 404, noPhoto))
    c.header('cache-control', 'private, max-age=31536000, immutable')
    return typed(c.body(new Uint8Array(bytes).buffer, 200, { 'content-type': 'image/jpeg' }))
  })
}

/** The file is only ever kept as a file, never shown as a page: what it holds is as it was sent. */
const originalAnswer = async (c: Context, originals: OriginalStore | undefined, id: string): Promise<Response> => {
  const bytes = (await originals?.get(id)) ?? null
  if (bytes === null) return refuse(c, 404, noOriginal)
  c.header('content-disposition', `attachment; filename="photograph-${id.slice(0, 8)}"`)
  c.header('cache-control', 'private, max-age=31536000, immutable')
  return c.body(new Uint8Array(bytes).buffer, 200, { 'content-type': 'application/octet-stream' })
}

const noOriginal = problem(
  'no-original',
  '',
  'The file of this photograph was not kept as it was sent',
  'Look at the photograph as it is kept, or say in the settings that such files are kept from now on',
)
const tooLarge = problem(
  'photograph-too-large',
  'photo',
  'This file is larger than 30 megabytes',
  'Send a photograph, not a film, or set the camera to a smaller size',
)
const noPhoto = problem('unknown-photograph', '', 'There is no photograph of this name', 'Add it to the machine again')
