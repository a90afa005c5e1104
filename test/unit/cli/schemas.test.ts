import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { jsonSchema, schemas } from '../../../src/cli/engine-commands.ts'

describe('docs/schemas', () => {
  it.each(Object.keys(schemas))('%s is what the code says (npm run schemas writes them)', (name) => {
    const written = JSON.parse(readFileSync(new URL(`../../../docs/schemas/${name}.schema.json`, import.meta.url), 'utf8')) as unknown
    const schema = jsonSchema(name)
    expect(schema.kind === 'ok' && JSON.parse(JSON.stringify(schema.value))).toEqual(written)
  })
})
