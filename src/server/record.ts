import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import type { BenchId } from '../bench/contract.ts'
import type { BlueprintDeps, FindBlueprint } from '../bench/blueprints.ts'
import { jobOf } from '../bench/job.ts'
import type { BenchStores, SettingsStore } from '../bench/ports.ts'
import { machineDocument, noSuchMachine } from '../bench/queries.ts'
import { safetyRecordOf } from '../bench/safety-record.ts'
import { currentSettings } from '../bench/settings.ts'
import { safetyLabelPdf } from '../report/safety-label-pdf.ts'
import { safetyRecordPdf } from '../report/safety-record-pdf.ts'
import { noBlueprint } from './blueprints.ts'
import { refuse } from './refusals.ts'
import * as routes from './record-routes.ts'
import { typed } from './typed.ts'

type RecordDeps = {
  readonly benches: Readonly<Record<BenchId, BenchStores>>
  readonly settings: SettingsStore
}

type SafetyRecord = ReturnType<typeof safetyRecordOf>

/** The addresses of safety records: the record to print, and the label that leads back to the page. */
export const addRecords = (
  app: OpenAPIHono,
  { benches, settings }: RecordDeps,
  blueprints: BlueprintDeps,
  find: FindBlueprint,
): void => {
  const answer = async (
    c: Context,
    { bench, id }: { readonly bench: BenchId; readonly id: string },
    make: (record: SafetyRecord) => Promise<Uint8Array>,
  ): Promise<Response> => {
    const document = await machineDocument({ store: benches[bench].notes, blueprintById: find }, id)
    if (document === null) return refuse(c, 404, noSuchMachine(id))
    const blueprint = await find(document.state.blueprint)
    if (blueprint === undefined) return noBlueprint(c, 422, document.state.blueprint, blueprints)
    const job = jobOf(document.state, document.notes, blueprint)
    const bytes = await make(safetyRecordOf(document, job, await currentSettings(settings)))
    return c.body(new Uint8Array(bytes).buffer, 200, { 'content-type': 'application/pdf' })
  }
  app.openapi(routes.recordRoute, async (c) => typed(await answer(c, c.req.valid('param'), safetyRecordPdf)))
  app.openapi(routes.labelRoute, async (c) => {
    const { bench, id } = c.req.valid('param')
    const page = `${new URL(c.req.url).origin}${bench === 'demo' ? '/demo' : ''}/machine/${encodeURIComponent(id)}/proof`
    return typed(await answer(c, { bench, id }, (record) => safetyLabelPdf(record, page)))
  })
}
