import { createRoute, z } from '@hono/zod-openapi'
import { refusal } from './answers.ts'

const known = z.strictObject({ id: z.string().min(1) })
const refusals = {
  404: refusal('There is no blueprint of this name'),
  422: refusal('The blueprint does not say what kind of machine it is'),
}

export const rigRoute = createRoute({
  method: 'get',
  path: '/api/blueprints/{id}/rig',
  summary: 'A homemade rig to read the suction of machines of this architecture with',
  request: { params: known },
  responses: {
    200: {
      description: 'Holes and what is expected at each, chamber, gauges, making, cautions, sources',
      content: { 'application/json': { schema: z.looseObject({}) } },
    },
    ...refusals,
  },
})

export const rigTemplateRoute = createRoute({
  method: 'get',
  path: '/api/blueprints/{id}/rig/template.svg',
  summary: 'A page of A4 to drill the plates of the rig by, to be printed at its own size',
  request: { params: known },
  responses: {
    200: { description: 'The page', content: { 'image/svg+xml': { schema: z.string() } } },
    ...refusals,
  },
})
