// Writes the JSON Schemas of docs/schemas from the code's own schemas.
import { mkdirSync, writeFileSync } from 'node:fs'
import { ensureBuilt } from './ensure-built.mjs'

await ensureBuilt()
const { jsonSchema, schemaNames } = await import('../dist/bench/json-schemas.js')
const folder = new URL('../docs/schemas/', import.meta.url)
mkdirSync(folder, { recursive: true })
for (const name of schemaNames) {
  writeFileSync(new URL(`${name}.schema.json`, folder), `${JSON.stringify(jsonSchema(name), null, 2)}\n`)
}
