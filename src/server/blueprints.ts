import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { problem } from '../base/problem.ts'
import {
  blueprintIds,
  blueprintOrigin,
  keepBlueprint,
  keepVariant,
  type BlueprintDeps,
  type FindBlueprint,
  type KeepOutcome,
} from '../bench/blueprints.ts'
import { blueprintEntry } from '../blueprint/entry.ts'
import * as routes from './blueprint-routes.ts'
import { refuse } from './refusals.ts'
import { typed } from './typed.ts'

/** The addresses of blueprints: the library's and one's own, to read, to adapt, to take in and to hand on. */
export const addBlueprints = (app: OpenAPIHono, deps: BlueprintDeps, find: FindBlueprint): void => {
  app.openapi(routes.blueprintsRoute, async (c) => {
    const own = (await deps.own.list()).map(({ blueprint }) => blueprint)
    return typed(c.json({ blueprints: [...deps.library, ...own].map(blueprintEntry) }, 200))
  })
  app.openapi(routes.blueprintRoute, async (c) => {
    const { id } = c.req.valid('param')
    const blueprint = await find(id)
    return typed(blueprint === undefined ? await noBlueprint(c, 404, id, deps) : c.json(blueprint, 200))
  })
  app.openapi(routes.blueprintFileRoute, async (c) => {
    const { id } = c.req.valid('param')
    const blueprint = await find(id)
    if (blueprint === undefined) return typed(await noBlueprint(c, 404, id, deps))
    return typed(
      c.body(`${JSON.stringify(blueprint, null, 2)}\n`, 200, {
        'content-type': 'application/json',
        'content-disposition': `attachment; filename="${blueprint.id}.json"`,
      }),
    )
  })
  app.openapi(routes.originRoute, async (c) => {
    const { id } = c.req.valid('param')
    const origin = await blueprintOrigin(deps, id)
    return typed(origin === null ? await noBlueprint(c, 404, id, deps) : c.json(origin, 200))
  })
  app.openapi(routes.newBlueprintRoute, async (c) => {
    return typed(answer(c, await keepBlueprint(deps, c.req.valid('json'))))
  })
  app.openapi(routes.adaptRoute, async (c) => {
    return typed(answer(c, await keepVariant(deps, c.req.valid('param').id, c.req.valid('json'))))
  })
}

/** The refusal of a blueprint that is neither the library's nor one's own. */
export const noBlueprint = async (c: Context, status: 404 | 422, id: string, deps: Omit<BlueprintDeps, 'now'>) => {
  const mend = `There are: ${(await blueprintIds(deps)).join(', ')}`
  return refuse(c, status, problem('unknown-blueprint', 'id', `There is no blueprint “${id}”`, mend))
}

const answer = (c: Context, outcome: KeepOutcome): Response => {
  switch (outcome.kind) {
    case 'kept':
      return c.json({ id: outcome.id, isNew: outcome.isNew, blueprint: outcome.blueprint }, 201)
    case 'refused':
      return refuse(c, 422, ...outcome.problems)
    case 'missing':
      return refuse(c, 404, ...outcome.problems)
    case 'not-kept':
      return refuse(c, 507, ...outcome.problems)
  }
}
