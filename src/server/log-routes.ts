import { createRoute, z } from '@hono/zod-openapi'
import { json, jsonBody, object, refusal, writingRefusals } from './answers.ts'
import { benchSchema, chosenId } from './schemas.ts'

/** How one kind of log is named in addresses and in the document of the API. */
export type LogNames = { readonly path: string; readonly one: string; readonly many: string }

const bench = z.strictObject({ bench: benchSchema })
const one = z.strictObject({ bench: benchSchema, id: z.string().min(1).max(120) })

const listQuery = z.strictObject({
  /** `gone`: those that are no longer there, or decided. */
  state: z.enum(['there', 'gone']).default('there'),
  group: z.string().max(120).optional(),
  text: z.string().max(200).optional(),
  after: z.coerce.number().int().min(0).optional(),
  limit: z.coerce.number().int().min(1).max(500).default(50),
})

const list = z.strictObject({
  items: z.array(z.looseObject({})),
  total: z.number().int(),
  after: z.number().int().nullable(),
  groups: z.array(
    z.strictObject({
      group: z.string(),
      currency: z.string(),
      logs: z.number().int(),
      count: z.number().int(),
      stockMinor: z.number().int(),
    }),
  ),
})
const document = z.looseObject({ state: z.looseObject({}), entries: z.array(z.looseObject({})) })

const notThere = { 404: refusal('There is none of this id') }
const refusals = {
  ...writingRefusals,
  409: object('Something else was written meanwhile; it comes as it is now'),
  422: refusal('Against the rules; nothing was written'),
}

/** The four addresses of a kind of log. */
export const logRoutes = <Content extends z.ZodType>({ path, one: name, many }: LogNames, content: Content) => {
  const all = `/api/bench/{bench}/${path}`
  return {
    list: createRoute({
      method: 'get',
      path: all,
      summary: `${many}, the newest first`,
      request: { params: bench, query: listQuery },
      responses: { 200: json(`A stretch of them, and how many there are of each group`, list), ...notThere },
    }),
    begin: createRoute({
      method: 'post',
      path: all,
      summary: `Begins the log of one ${name}; sending the same id and content again does no harm`,
      request: { params: bench, ...jsonBody(z.strictObject({ id: chosenId.optional(), content })) },
      responses: { 201: json(`The ${name}`, document), ...notThere, ...refusals },
    }),
    one: createRoute({
      method: 'get',
      path: `${all}/{id}`,
      summary: `One ${name} with its history`,
      request: { params: one },
      responses: { 200: json(`The ${name}`, document), ...notThere },
    }),
    add: createRoute({
      method: 'post',
      path: `${all}/{id}/entries`,
      summary: `Writes about one ${name}; sending the same id and content again does no harm`,
      request: {
        params: one,
        ...jsonBody(z.strictObject({ id: chosenId.optional(), version: z.number().int().min(0), content })),
      },
      responses: { 200: json(`The ${name} with the entry`, document), ...notThere, ...refusals },
    }),
  }
}
