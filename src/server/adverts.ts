import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi'
import { buyAdvert, buyAdvertSchema } from '../bench/adverts/buy-advert.ts'
import { comparedAdverts } from '../bench/adverts/compared-adverts.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { BenchId } from '../bench/contract.ts'
import { json, object, refusal, writingRefusals } from './answers.ts'
import { refuse } from './refusals.ts'
import { benchSchema, machineDocumentSchema } from './schemas.ts'
import { typed } from './typed.ts'

const advertDocument = z.looseObject({ state: z.looseObject({}), entries: z.array(z.looseObject({})) })

const buyRoute = createRoute({
  method: 'post',
  path: '/api/bench/{bench}/adverts/{id}/buy',
  summary: 'The machine of an advert is bought and comes on the bench with all that was said and seen; both or neither',
  request: {
    params: z.strictObject({ bench: benchSchema, id: z.string().min(1).max(120) }),
    body: { required: true as const, content: { 'application/json': { schema: buyAdvertSchema } } },
  },
  responses: {
    201: json('The machine and the advert', z.strictObject({ machine: machineDocumentSchema, advert: advertDocument })),
    ...writingRefusals,
    404: refusal('There is no advert of this id'),
    409: object('Something else was written meanwhile; it comes as it is now'),
    422: refusal('Against the rules; nothing was written'),
  },
})

const comparedRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/compared',
  summary: 'How the guesses of adverts compare with what came of the machines that were bought and have left',
  request: { params: z.strictObject({ bench: benchSchema }) },
  responses: {
    200: json('Each, and all together', z.strictObject({ each: z.array(z.looseObject({})), all: z.array(z.looseObject({})) })), // prettier-ignore
    404: refusal('There is no bench of this name'),
  },
})

/** What can be done with an advert beyond its log: buying the machine, and looking back. */
export const addAdverts = (app: OpenAPIHono, deps: (bench: BenchId) => CommandDeps): void => {
  app.openapi(comparedRoute, async (c) => {
    return typed(c.json(await comparedAdverts(deps(c.req.valid('param').bench)), 200))
  })
  app.openapi(buyRoute, async (c) => {
    const { bench, id } = c.req.valid('param')
    const outcome = await buyAdvert(deps(bench), id, c.req.valid('json'))
    switch (outcome.kind) {
      case 'done':
        return typed(c.json({ machine: outcome.machine, advert: outcome.advert }, 201))
      case 'refused':
        return typed(refuse(c, 422, ...outcome.problems))
      case 'missing':
        return typed(refuse(c, 404, ...outcome.problems))
      case 'conflict':
        return typed(c.json({ problems: outcome.problems, document: outcome.advert }, 409))
      case 'not-kept':
        return typed(refuse(c, 507, ...outcome.problems))
    }
  })
}
