import { createRoute, z } from '@hono/zod-openapi'
import { currencies, type Currency } from '../base/money.ts'
import { grades, improvementIds } from '../facts/asking.ts'
import { askingChoicesSchema } from '../machine/asking-choices.ts'
import { json, refusal } from './answers.ts'
import { benchSchema } from './schemas.ts'

const minor = z.number().int()
const marketPriceSchema = z
  .strictObject({
    currency: z.enum(currencies as readonly [Currency, ...Currency[]]),
    lowMinor: minor,
    medianMinor: minor,
    highMinor: minor,
    own: z.number().int(),
    seen: z.number().int(),
  })
  .openapi('MarketPrice')

const notThere = { 404: refusal('There is none of this name') }
const refusals = {
  400: refusal('Not of the form'),
  422: refusal('Its blueprint is not known here, or a part is named that is not missing'),
}

export const marketRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/market',
  summary: 'What comparable sales say that machines of a blueprint and model fetch, cleaned and working',
  request: {
    params: z.strictObject({ bench: benchSchema }),
    query: z.strictObject({
      blueprint: z.string().min(1).max(120),
      model: z.string().max(120).default(''),
      currency: z.enum(currencies as readonly [Currency, ...Currency[]]).optional(),
    }),
  },
  responses: {
    200: json(
      'One sale: the median and what nine in ten lie between; null where there is no sale to compare with',
      z.strictObject({ market: marketPriceSchema.nullable() }),
    ),
    ...notThere,
    ...refusals,
  },
})

/** Several of a kind in an address: `cleaned,new-filters`; an empty text is none of them. */
const several = <Name extends string>(one: z.ZodType<Name, string>) =>
  z
    .string()
    .max(2000)
    .transform((text) => text.split(',').filter((part) => part !== ''))
    .pipe(z.array(one))

const { dayMinor, horizonDays } = askingChoicesSchema.shape

export const askingRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines/{id}/asking',
  summary:
    'What to ask for a machine: the price that brings most, its band, price against days, what each improvement adds',
  request: {
    params: z.strictObject({ bench: benchSchema, id: z.string().min(1) }),
    query: z.strictObject({
      grade: z.enum(grades).optional(),
      done: several(z.enum(improvementIds)).optional(),
      found: several(z.string().max(120)).optional(),
      dayMinor: z.coerce.number().pipe(dayMinor.unwrap()).optional(),
      horizonDays: z.coerce.number().pipe(horizonDays.unwrap()).optional(),
    }),
  },
  responses: {
    200: json(
      'The price with its band, the prices it rests on and the listings its days rest on',
      z.strictObject({
        asking: z.looseObject({ askMinor: minor }),
        prices: z.array(z.looseObject({ id: z.string() })),
        listings: z.array(z.looseObject({ id: z.string() })),
      }),
    ),
    ...notThere,
    ...refusals,
  },
})
