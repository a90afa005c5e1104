import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import type { Clock, SettingsStore } from '../bench/ports.ts'
import { changeSettings, currentSettings, type SettingsOutcome } from '../bench/settings.ts'
import { refuse } from './refusals.ts'
import * as routes from './settings-routes.ts'
import { typed } from './typed.ts'

/** The address of the settings: to read and to change. */
export const addSettings = (
  app: OpenAPIHono,
  deps: { readonly settings: SettingsStore; readonly now: Clock },
): void => {
  app.openapi(routes.settingsRoute, async (c) => typed(c.json(await currentSettings(deps.settings), 200)))
  app.openapi(routes.changeSettingsRoute, async (c) =>
    typed(answer(c, await changeSettings(deps, c.req.valid('json')))),
  )
}

const answer = (c: Context, outcome: SettingsOutcome): Response => {
  switch (outcome.kind) {
    case 'changed':
      return c.json(outcome.settings, 200)
    case 'refused':
      return refuse(c, 422, ...outcome.problems)
    case 'not-kept':
      return refuse(c, 507, ...outcome.problems)
  }
}
