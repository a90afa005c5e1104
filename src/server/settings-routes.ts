import { createRoute, z } from '@hono/zod-openapi'
import { currencies, type Currency } from '../base/money.ts'
import { costsSetSchema, settingsChangeSchema } from '../bench/settings-change.ts'
import type { Settings } from '../bench/settings.ts'
import { attitudeIds } from '../facts/attitudes.ts'
import { regions } from '../facts/regions.ts'
import { json, refusal, writingRefusals } from './answers.ts'

export const settingsSchema = z
  .strictObject({
    /** What an hour of one's own time is worth, minor units; a new machine takes it over. */
    hourMinor: z.number().int(),
    currency: z.enum(currencies as readonly [Currency, ...Currency[]]),
    attitude: z.enum(attitudeIds),
    region: z.enum(regions),
    checkedBy: z.string(),
    /** Whether files of photographs are kept as they were sent too. */
    keepOriginals: z.boolean(),
    /** What things cost, where it is set. */
    costs: costsSetSchema,
  })
  .openapi('Settings') satisfies z.ZodType<Settings>

export const settingsRoute = createRoute({
  method: 'get',
  path: '/api/settings',
  summary: 'What holds for the whole bench: the worth of an hour, the currency, how risk is weighed',
  responses: { 200: json('The settings', settingsSchema) },
})

export const changeSettingsRoute = createRoute({
  method: 'patch',
  path: '/api/settings',
  summary: 'Changes settings; what is left out stays as it was. Machines that are in hand keep their own hour',
  request: {
    body: { required: true as const, content: { 'application/json': { schema: settingsChangeSchema } } },
  },
  responses: {
    200: json('The settings as they are now', settingsSchema),
    ...writingRefusals,
    422: refusal('Nothing is said to be changed'),
  },
})
