import type { OpenAPIHono } from '@hono/zod-openapi'
import { bodyLimit } from 'hono/body-limit'
import { problem } from '../base/problem.ts'
import type { PhotoStore } from '../bench/photos/photo-ports.ts'
import * as routes from './photo-routes.ts'
import { refuse } from './refusals.ts'
import { typed } from './typed.ts'

/** The largest file that phones make of a photograph, with room to spare. */
export const largestPhotoBytes = 30 * 1024 * 1024

/** The addresses of photographs. */
export const addPhotos = (app: OpenAPIHono, photos: PhotoStore): void => {
  app.use('/api/photos', bodyLimit({ maxSize: largestPhotoBytes, onError: (c) => refuse(c, 413, tooLarge) }))
  app.openapi(routes.newPhotoRoute, async (c) => {
    const outcome = await photos.put(new Uint8Array(await c.req.arrayBuffer()))
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
    const bytes = await photos.get(id, c.req.valid('query').size)
    if (bytes === null) return typed(refuse(c, 404, noPhoto))
    c.header('cache-control', 'private, max-age=31536000, immutable')
    return typed(c.body(new Uint8Array(bytes).buffer, 200, { 'content-type': 'image/jpeg' }))
  })
}

const tooLarge = problem(
  'photograph-too-large',
  'photo',
  'This file is larger than 30 megabytes',
  'Send a photograph, not a film, or set the camera to a smaller size',
)
const noPhoto = problem('unknown-photograph', '', 'There is no photograph of this name', 'Add it to the machine again')
