import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { jsonSchema, schemaNames } from '../../../src/bench/json-schemas.ts'

describe('docs/schemas', () => {
  it.each(schemaNames)('%s is what the code says (npm run schemas writes them)', (name) => {
    const written = JSON.parse(
      readFileSync(new URL(`../../../docs/schemas/${name}.schema.json`, import.meta.url), 'utf8'),
    ) as unknown
    expect(JSON.parse(JSON.stringify(jsonSchema(name)))).toEqual(written)
  })
})
