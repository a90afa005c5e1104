import { createRoute, z } from '@hono/zod-openapi'
import { json, jsonBody, refusal, writingRefusals } from './answers.ts'
import { benchSchema } from './schemas.ts'

/** An address that takes a CSV file in: whole, or without its wrong rows where that is asked for. */
export const importRoute = <Path extends `/api/bench/{bench}/${string}`>(told: {
  readonly path: Path
  readonly summary: string
  /** What a good answer says. */
  readonly answer: string
}) =>
  createRoute({
    method: 'post',
    path: told.path,
    summary: told.summary,
    request: {
      params: z.strictObject({ bench: benchSchema }),
      ...jsonBody(z.strictObject({ csv: z.string(), leaveOutWrong: z.boolean().default(false) })),
    },
    responses: {
      200: json(
        told.answer,
        z.looseObject({ kind: z.literal('imported'), imported: z.number().int(), already: z.number().int() }),
      ),
      ...writingRefusals,
      404: refusal('There is no such bench'),
      422: refusal('What is wrong, by row and column; nothing was written'),
    },
  })
