import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { adaptBlueprint, parseEdits } from '../../../src/blueprint/adapt.ts'
import { checkBlueprint } from '../../../src/blueprint/check.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { lintBlueprint } from '../../../src/blueprint/lint.ts'
import { blueprintSchema, type BlueprintInput } from '../../../src/blueprint/schema.ts'
import { valueOf } from '../../../src/base/result.ts'
import { gateProblems } from '../../../src/machine/index.ts'

const root = new URL('../../../', import.meta.url)
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8')
const guide = read('docs/blueprints.md')
const [example, edits] = [...guide.matchAll(/```json\n(.*?)```/gs)].map(
  (match) => JSON.parse(match[1] ?? '') as unknown,
)

/** Names of the problems that the files make, by the call that makes one. */
const codesIn = (files: readonly string[]): readonly string[] => [
  ...new Set(
    files.flatMap((file) =>
      [...read(file).matchAll(/\bproblem\(\s*['`]([a-z-]+)['`]/g)].map((match) => match[1] ?? ''),
    ),
  ),
]
const filesOf = (start: string): readonly string[] =>
  readdirSync(new URL('src/blueprint/', root))
    .filter((name) => name.startsWith(start) && name.endsWith('.ts'))
    .map((name) => `src/blueprint/${name}`)

describe('the guide to blueprints', () => {
  it('has a complete example that the checker calls sound, with nothing worth a second look', () => {
    const blueprint = valueOf(checkBlueprint(example))
    expect(lintBlueprint(blueprint)).toEqual([])
    expect(gateProblems(blueprint)).toEqual([])
  })

  it('has an example of edits that can be made on a blueprint that comes with the program', () => {
    const list = valueOf(parseEdits(edits))
    expect(list).toHaveLength(3)
    expect(adaptBlueprint(blueprintById('bagged-upright-two-motors')!, list).kind).toBe('ok')
  })

  it.each(['check', 'adapt', 'lint'])('says what each message of the files %s*.ts means', (start) => {
    const codes = codesIn(filesOf(start))
    expect(codes.length).toBeGreaterThan(1)
    for (const code of codes) expect(guide, code).toContain(`\`${code}\``)
  })

  it('names every field of a blueprint', () => {
    for (const field of Object.keys(blueprintSchema.shape))
      expect(guide, field).toMatch(new RegExp(`^\\| .*\`${field}\``, 'm'))
  })
})

it('a probe where no element is, and a supply there, are refused', () => {
  const copy = structuredClone(example) as BlueprintInput
  copy.points.push({ id: 'attic', name: 'Attic', at: [0, 0] })
  Object.assign(copy.checks[1], { red: 'attic' })
  expect(checkBlueprint(copy)).toMatchObject({
    kind: 'refused',
    problems: [{ code: 'probe-on-nothing', where: 'checks.across-switch' }],
  })
})
