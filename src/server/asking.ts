import type { OpenAPIHono } from '@hono/zod-openapi'
import type { BlueprintDeps, FindBlueprint } from '../bench/blueprints.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { BenchId } from '../bench/contract.ts'
import { costsOf } from '../bench/costs.ts'
import { jobOf } from '../bench/job.ts'
import { marketPriceOf, whatToAsk } from '../bench/prices/what-to-ask.ts'
import type { Reckoner } from '../bench/prices/reckoner.ts'
import { machineDocument, noSuchMachine } from '../bench/queries.ts'
import { currentSettings } from '../bench/settings.ts'
import { askingRoute, marketRoute } from './asking-routes.ts'
import { noBlueprint } from './blueprints.ts'
import { refuse } from './refusals.ts'
import { typed } from './typed.ts'

type Deps = {
  readonly commands: (bench: BenchId) => CommandDeps
  readonly blueprints: BlueprintDeps
  readonly find: FindBlueprint
  readonly reckoner: Reckoner
}

/** The addresses of what machines fetch and what to ask for one. */
export const addAsking = (app: OpenAPIHono, { commands, blueprints, find, reckoner }: Deps): void => {
  app.openapi(marketRoute, async (c) => {
    const { blueprint: id, model, currency } = c.req.valid('query')
    const deps = commands(c.req.valid('param').bench)
    const blueprint = await find(id)
    if (blueprint === undefined) return typed(await noBlueprint(c, 404, id, blueprints))
    const kind = { blueprint, model, currency: currency ?? (await currentSettings(deps.settings)).currency }
    return typed(c.json({ market: await marketPriceOf({ ...deps, reckoner }, kind) }, 200))
  })
  app.openapi(askingRoute, async (c) => {
    const { bench, id } = c.req.valid('param')
    const deps = commands(bench)
    const document = await machineDocument(deps, id)
    if (document === null) return typed(refuse(c, 404, noSuchMachine(id)))
    const { state, notes } = document
    const blueprint = await find(state.blueprint)
    if (blueprint === undefined) return typed(await noBlueprint(c, 422, state.blueprint, blueprints))
    const settings = await currentSettings(deps.settings)
    const job = jobOf(state, notes, blueprint, settings.attitude, costsOf(settings, state.currency))
    const asked = await whatToAsk({ ...deps, reckoner }, job, state, c.req.valid('query'))
    return typed(asked.kind === 'refused' ? refuse(c, 422, ...asked.problems) : c.json(asked.value, 200))
  })
}
