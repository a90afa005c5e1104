import { z } from 'zod'
import { editsFileSchema } from '../blueprint/adapt-edits.ts'
import { blueprintSchema } from '../blueprint/schema.ts'
import { airflowRequestSchema } from '../engines/airflow/index.ts'
import { beliefProblemSchema } from '../engines/belief/index.ts'
import { limitsRequestSchema } from '../engines/limits/index.ts'
import { moneyRequestSchema } from '../engines/money/index.ts'
import { networkRequestSchema, networkSchema } from '../engines/network/index.ts'
import { planProblemSchema } from '../engines/plan/index.ts'
import { advertSchema } from '../machine/buying/index.ts'
import { stampsSchema } from '../machine/index.ts'
import { benchNotesSchema } from './note.ts'
import { settingsChangeSchema } from './settings-change.ts'

const schemas: Readonly<Record<string, z.ZodType>> = {
  blueprint: blueprintSchema,
  notes: benchNotesSchema,
  network: networkSchema,
  'network-request': networkRequestSchema,
  airflow: airflowRequestSchema,
  limits: limitsRequestSchema,
  money: moneyRequestSchema,
  belief: beliefProblemSchema,
  plan: planProblemSchema,
  stamps: stampsSchema,
  edits: editsFileSchema,
  settings: settingsChangeSchema,
  advert: advertSchema,
}

/** Names of the forms that outside input may take. */
export const schemaNames: readonly string[] = Object.keys(schemas)

/** A form by name as JSON Schema (draft 2020-12), as input may take it; null when there is none of this name. */
export const jsonSchema = (name: string): unknown => {
  const schema = Object.hasOwn(schemas, name) ? schemas[name] : undefined
  return schema === undefined ? null : z.toJSONSchema(schema, { io: 'input' })
}
