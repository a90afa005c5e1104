import { createRoute, z } from '@hono/zod-openapi'
import { refusal } from './answers.ts'
import { importRoute } from './import-route.ts'
import { benchSchema } from './schemas.ts'

const bench = z.strictObject({ bench: benchSchema })
const notThere = { 404: refusal('There is no such bench') }

export const openDataRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/open-data.csv',
  summary: 'Closed machines as repair records of the Open Repair Data Standard 0.3',
  request: {
    params: bench,
    query: z.strictObject({
      /** Under which name they are given out. */
      provider: z.string().trim().max(120).optional(),
      country: z
        .string()
        .regex(/^[A-Z]{3}$/, 'a country is three capital letters, such as GBR')
        .optional(),
    }),
  },
  responses: {
    200: { description: 'The file, CSV in UTF-8', content: { 'text/csv': { schema: z.string() } } },
    ...notThere,
  },
})

export const importOpenDataRoute = importRoute({
  path: '/api/bench/{bench}/open-data/import',
  summary: 'Takes in a file of repair records; sending the same file again does no harm',
  answer: 'How many were taken in, were there already, are of other products, and what was left out',
})
