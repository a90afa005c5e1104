import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import type { BlueprintDeps, FindBlueprint } from '../bench/blueprints.ts'
import { airRigOf, drillingSheetOf, type AirRig } from '../machine/index.ts'
import { drillingTemplateSvg } from '../report/drilling-template.ts'
import { noBlueprint } from './blueprints.ts'
import { refuse } from './refusals.ts'
import * as routes from './rig-routes.ts'
import { typed } from './typed.ts'

/** The addresses of gauge rigs: how to make one for an architecture, and the page to drill its plates by. */
export const addRigs = (app: OpenAPIHono, deps: BlueprintDeps, find: FindBlueprint): void => {
  const answer = async (c: Context, id: string, show: (rig: AirRig) => Response): Promise<Response> => {
    const blueprint = await find(id)
    if (blueprint === undefined) return noBlueprint(c, 404, id, deps)
    const rig = airRigOf(blueprint)
    return rig.kind === 'ok' ? show(rig.value) : refuse(c, 422, ...rig.problems)
  }
  app.openapi(routes.rigRoute, async (c) => typed(await answer(c, c.req.valid('param').id, (rig) => c.json(rig, 200))))
  app.openapi(routes.rigTemplateRoute, async (c) =>
    typed(
      await answer(c, c.req.valid('param').id, (rig) =>
        c.body(drillingTemplateSvg(drillingSheetOf(rig)), 200, { 'content-type': 'image/svg+xml' }),
      ),
    ),
  )
}
