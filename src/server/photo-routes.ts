import { createRoute, z } from '@hono/zod-openapi'
import { refusal } from './answers.ts'

const photoSchema = z
  .strictObject({
    id: z.string(),
    widthPx: z.number().int(),
    heightPx: z.number().int(),
    bytes: z.number().int(),
  })
  .openapi('Photo')

export const newPhotoRoute = createRoute({
  method: 'post',
  path: '/api/photos',
  summary:
    'Keeps a photograph, sent as the body; the same one sent again does no harm. A note of a machine then names it by its id',
  request: {
    body: { required: true as const, content: { 'application/octet-stream': { schema: z.string() } } },
  },
  responses: {
    201: { description: 'It is kept', content: { 'application/json': { schema: photoSchema } } },
    413: refusal('Larger than 30 megabytes'),
    422: refusal('No photograph, a broken one, or one with too many pixels'),
    507: refusal('The store could not keep it'),
  },
})

export const photoRoute = createRoute({
  method: 'get',
  path: '/api/photos/{id}',
  summary:
    'A photograph as JPEG, which never changes under its id; `original`: the file as it was sent, where it was kept',
  request: {
    params: z.strictObject({ id: z.string().min(1).max(120) }),
    query: z.strictObject({ size: z.enum(['large', 'small', 'original']).default('large') }),
  },
  responses: {
    200: {
      description: 'The photograph',
      content: { 'image/jpeg': { schema: z.string() }, 'application/octet-stream': { schema: z.string() } },
    },
    404: refusal('There is no photograph of this id'),
  },
})
