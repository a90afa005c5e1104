// Writes the JSON Schemas of docs/schemas from the code's own schemas.
import { mkdirSync, writeFileSync } from 'node:fs'
import { ensureBuilt } from './ensure-built.mjs'

await ensureBuilt()
const { jsonSchema, schemas } = await import('../dist/cli/engine-commands.js')
const folder = new URL('../docs/schemas/', import.meta.url)
mkdirSync(folder, { recursive: true })
for (const name of Object.keys(schemas)) {
  writeFileSync(new URL(`${name}.schema.json`, folder), `${JSON.stringify(jsonSchema(name).value, null, 2)}\n`)
}
