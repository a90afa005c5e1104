import { createRoute, z } from '@hono/zod-openapi'
import { refusal } from './answers.ts'
import { benchSchema } from './schemas.ts'

const known = z.strictObject({ bench: benchSchema, id: z.string().min(1) })
const refusals = {
  404: refusal('There is no machine of this id'),
  422: refusal('The blueprint of this machine is not known'),
}

export const storyRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines/{id}/story.html',
  summary: 'The story of a machine as its notes stand: one HTML file that needs nothing beside it',
  request: { params: known, query: z.strictObject({ money: z.enum(['yes', 'no']).default('no') }) },
  responses: {
    200: { description: 'The story', content: { 'text/html': { schema: z.string() } } },
    ...refusals,
  },
})

export const chaptersRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines/{id}/chapters.txt',
  summary: 'The marks of the films of a machine, a line each; empty while no film was made',
  request: { params: known },
  responses: {
    200: { description: 'The marks', content: { 'text/plain': { schema: z.string() } } },
    ...refusals,
  },
})
