import type { OpenAPIHono } from '@hono/zod-openapi'
import { stream } from 'hono/streaming'
import { createHash } from 'node:crypto'
import type { CommandDeps } from '../bench/commands.ts'
import type { BenchId } from '../bench/contract.ts'
import { openDataFile } from '../bench/open-data/export-records.ts'
import { importOpenData } from '../bench/open-data/import-records.ts'
import { csvText } from '../report/csv.ts'
import * as routes from './open-data-routes.ts'
import { refuse } from './refusals.ts'
import { typed } from './typed.ts'

/** The addresses of open repair data, out and in. */
export const addOpenData = (app: OpenAPIHono, deps: (bench: BenchId) => CommandDeps): void => {
  app.openapi(routes.openDataRoute, async (c) => {
    const { header, stretches } = await openDataFile(deps(c.req.valid('param').bench), c.req.valid('query'))
    c.header('content-type', 'text/csv; charset=utf-8; header=present')
    c.header('content-disposition', 'attachment; filename="open-repair-data.csv"')
    return typed(
      stream(c, async (out) => {
        for await (const text of csvText(header, stretches)) await out.write(text)
      }),
    )
  })
  app.openapi(routes.importOpenDataRoute, async (c) => {
    const { csv, leaveOutWrong } = c.req.valid('json')
    const outcome = await importOpenData({ ...deps(c.req.valid('param').bench), hash }, csv, leaveOutWrong)
    if (outcome.kind === 'imported') return typed(c.json(outcome, 200))
    return typed(refuse(c, outcome.kind === 'refused' ? 422 : 507, ...outcome.problems))
  })
}

const hash = (text: string): string => createHash('sha256').update(text).digest('hex')
