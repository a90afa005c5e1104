import { createRoute, z } from '@hono/zod-openapi'
import { benchSchema, problemsSchema } from './schemas.ts'

const json = <Schema>(description: string, schema: Schema) => ({
  description,
  content: { 'application/json': { schema } },
})
const bench = z.strictObject({ bench: benchSchema })
const notThere = { 404: json('There is no such bench', problemsSchema) }

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

export const importOpenDataRoute = createRoute({
  method: 'post',
  path: '/api/bench/{bench}/open-data/import',
  summary: 'Takes in a file of repair records; sending the same file again does no harm',
  request: {
    params: bench,
    body: {
      required: true as const,
      content: {
        'application/json': {
          schema: z.strictObject({ csv: z.string(), leaveOutWrong: z.boolean().default(false) }),
        },
      },
    },
  },
  responses: {
    200: json(
      'How many were taken in, were there already, are of other products, and what was left out',
      z.looseObject({ kind: z.literal('imported'), imported: z.number().int(), already: z.number().int() }),
    ),
    400: json('Not JSON, or not of the form', problemsSchema),
    413: json('Larger than one megabyte', problemsSchema),
    415: json('Not sent as JSON', problemsSchema),
    422: json('What is wrong, by row and column; nothing was written', problemsSchema),
    507: json('The store could not keep it', problemsSchema),
    ...notThere,
  },
})
