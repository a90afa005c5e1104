import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { runStamps } from '../../../src/machine/index.ts'

const here = import.meta.dirname
const json = (name: string, file: string): unknown => JSON.parse(readFileSync(join(here, name, file), 'utf8'))

describe('date stamps against published readings', () => {
  for (const folder of readdirSync(here, { withFileTypes: true }).filter((entry) => entry.isDirectory())) {
    it(folder.name, () => {
      expect(runStamps(json(folder.name, 'input.json'))).toMatchObject({
        kind: 'ok',
        value: json(folder.name, 'expected.json'),
      })
    })
  }
})
