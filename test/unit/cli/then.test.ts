import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { blueprintById } from '../../../src/blueprint/library.ts'
import type { Leaf } from '../../../src/machine/branches.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
  const { id } = blueprintById('bagged-upright-one-motor')!
  await line.run('add', '--name', 'Green', '--blueprint', id, '--complaint', 'dead')
})
afterEach(() => line.remove())

const viewOf = async (...args: readonly string[]): Promise<MachineView> =>
  ((await line.json(...args)).value as { view: MachineView }).view

describe('thrum then', () => {
  it('tells the next move that is shown once a result is entered', async () => {
    const { next } = await viewOf('show', 'Green')
    const { code, value } = await line.json('then', 'Green')
    const { name, results, lessLikely, stopRules } = value as {
      readonly name: string
      readonly results: readonly Leaf[]
      readonly lessLikely: number
      readonly stopRules: readonly string[]
    }
    expect([code, name]).toEqual([0, next.name])
    expect(results.reduce((sum, { result }) => sum + result.probability, lessLikely)).toBeCloseTo(1, 12)
    expect(stopRules.length).toBeGreaterThan(0)
    const open = results.find(({ result }) => result.result?.kind === 'open')!
    for (const { id } of next.open) await line.run('off', 'Green', id)
    const after = await viewOf('read', 'Green', next.id, 'open')
    expect(open.onward?.expectedMinor).toBe(after.next.expectedMinor)
    expect(open.onward?.name.startsWith(after.next.name)).toBe(true)
  })

  it('prints a line for each branch, and says why it cannot', async () => {
    const { next } = await viewOf('show', 'Green')
    const { out } = await line.run('then', 'Green', next.id)
    expect(out.split('\n')[0]).toBe(next.name)
    expect(out.split('\n')[1]).toMatch(/^ +\d+\.\d % {2}\S.* → \S.*, £\d+\.\d\d$/)
    expect((await line.run('then', 'Green', 'nothing')).err).toContain('“nothing” cannot be done now')
    expect((await line.run('then', 'Green', 'scrap')).err).toContain('is an exit')
  })
})
