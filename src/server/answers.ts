import { z } from '@hono/zod-openapi'
import { problemsSchema } from './schemas.ts'

/** An answer in JSON, as the API's document says it. */
export const json = <Schema>(description: string, schema: Schema) => ({
  description,
  content: { 'application/json': { schema } },
})

/** An answer in JSON whose form the document leaves open. */
export const object = (description: string) => json(description, z.looseObject({}))

/** An answer that says what is wrong. */
export const refusal = (description: string) => json(description, problemsSchema)

/** A request that has to bring JSON of this form. */
export const jsonBody = <Schema extends z.ZodType>(schema: Schema) => ({
  body: { required: true as const, content: { 'application/json': { schema } } },
})

/** What can be wrong with JSON that is to be written, whatever it says. */
export const writingRefusals = {
  400: refusal('Not JSON, or not of the form'),
  413: refusal('Larger than one megabyte'),
  415: refusal('Not sent as JSON'),
  507: refusal('The store could not keep it; nothing was written'),
}
