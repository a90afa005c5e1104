import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { blueprintSchema, type Blueprint } from '../../../src/blueprint/schema.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

/** The upright whose moves are weighed quickest: every command answers with them. */
const upright = blueprintById('bagged-upright-one-motor')!
let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
})
afterEach(() => line.remove())

const edits = {
  format: 'thrum-edits-1',
  edits: [
    { kind: 'part-absent', part: 'cut-out' },
    { kind: 'cover-fixings', cover: 'handle-cover', fixings: [{ count: 2, kind: 'TX15 plastic 3.5 × 16' }] },
  ],
}
const adapt = async (name: string, ...more: readonly string[]) =>
  line.json('blueprint', 'adapt', upright.id, '--edits', await line.file('edits.json', edits), '--name', name, ...more)
const problemsOf = (value: unknown) => (value as { problems: { code: string; where: string }[] }).problems

describe('blueprint adapt, export and import', () => {
  it('keeps a variant, lists it, and gives out the same as a file', async () => {
    const out = join(line.folder, 'variant.json')
    const { code, value } = await adapt('No cut-out', '--out', out)
    expect(code).toBe(0)
    expect(value).toMatchObject({ id: 'own-no-cut-out-1', isNew: true })
    const kept = blueprintSchema.parse((value as { blueprint: unknown }).blueprint)
    expect(kept.parts.map(({ id }) => id)).not.toContain('cut-out')
    expect(blueprintSchema.parse(JSON.parse(await readFile(out, 'utf8')))).toEqual(kept)
    expect((await line.json('blueprint', 'export', 'own-no-cut-out-1')).value).toEqual(kept)
    expect((await line.run('blueprints')).out).toContain('own-no-cut-out-1  No cut-out')
    const readings = (await line.json('blueprint', 'readings', 'own-no-cut-out-1')).value as { check: string }[]
    expect(readings.map(({ check }) => check)).not.toContain('cut-out-through')
    const again = await line.json('blueprint', 'import', out)
    expect(again.value).toMatchObject({ id: 'own-no-cut-out-1', isNew: false })
  })

  it('takes in a file from another bench as the same but for its id', async () => {
    const out = join(line.folder, 'variant.json')
    await adapt('Mine', '--out', out)
    const other = await makeCommandLine()
    const { value } = await other.json('blueprint', 'import', out)
    const { id, isNew, blueprint } = value as { id: string; isNew: boolean; blueprint: Blueprint }
    expect([id, isNew]).toEqual(['own-mine-1', true])
    expect(blueprint).toEqual(JSON.parse(await readFile(out, 'utf8')))
    await other.remove()
  })

  it('says what is wrong with edits, with a file, and with where to write', async () => {
    const wrong = await line.file('wrong.json', [{ kind: 'part-absent', part: 'cutout' }])
    const refused = await line.json('blueprint', 'adapt', upright.id, '--edits', wrong, '--name', 'x')
    expect(refused.code).toBe(1)
    expect(problemsOf(refused.value)).toMatchObject([{ code: 'unknown-part', mend: 'Write “cut-out”' }])
    const form = await line.file('form.json', [{ kind: 'part-gone' }])
    const unread = await line.json('blueprint', 'adapt', upright.id, '--edits', form, '--name', 'x')
    expect(problemsOf(unread.value)[0]?.code).toBe('not-of-the-form')
    const broken = await line.file('broken.json', { ...upright, supply: { line: 'nowhere', neutral: 'plug.neutral' } })
    expect(problemsOf((await line.json('blueprint', 'import', broken)).value)[0]?.where).toBe('supply.line')
    const lost = await adapt('Mine', '--out', join(line.folder, 'no', 'such', 'folder.json'))
    expect(problemsOf(lost.value)[0]?.code).toBe('cannot-write')
  })
})

describe('a machine that is different', () => {
  const added = async (): Promise<string> => {
    const { value } = await line.json('add', '--name', 'Green', '--blueprint', upright.id)
    return (value as MachineDocument).state.id
  }

  it('is read by a variant made for it from then on', async () => {
    const machine = await added()
    const file = await line.file('edits.json', edits)
    const { code, value } = await line.json('different', machine, '--edits', file)
    expect(code).toBe(0)
    const { state, lines } = value as MachineDocument
    expect(state.blueprint).toBe('own-green-1')
    expect(lines.at(-1)?.text).toContain('read by “Green”: Thermal cut-out: not there; Handle cover: 2 ×')
    const gone = await line.json('read', machine, 'cut-out-through', 'open')
    expect(problemsOf(gone.value)[0]?.code).toBe('unknown-check')
    const back = await line.json('strike', machine, lines.at(-1)?.id ?? '')
    expect((back.value as MachineDocument).state.blueprint).toBe(upright.id)
  })

  it('is read by any blueprint that is named', async () => {
    const machine = await added()
    await adapt('Odd')
    const { value } = await line.json('described', machine, 'own-odd-1')
    expect((value as MachineDocument).state.blueprint).toBe('own-odd-1')
    const unknown = await line.json('described', machine, 'own-odd-9')
    expect(problemsOf(unknown.value)[0]?.code).toBe('unknown-blueprint')
  })
})
