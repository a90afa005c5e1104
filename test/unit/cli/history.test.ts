import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { gradedCheckSchema } from '../../../src/blueprint/schema.ts'
import { wattsChecks } from '../../../src/blueprint/library/shared/watts-checks.ts'
import { wattsEntry } from '../../../src/cli/watts-entry.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
})
afterEach(() => line.remove())

/** Of the architectures the one whose moves are weighed quickest: every command answers with them. */
const upright = blueprintById('stick-upright')!
const add = ['add', '--name', 'Green', '--blueprint', upright.id, '--complaint', 'dead'] as const
const partOf = (at: number): string => upright.parts[at].id

const state = async (...args: readonly string[]): Promise<MachineDocument['state']> => {
  const { code, value } = await line.json(...args)
  expect(code, JSON.stringify(value)).toBe(0)
  return (value as MachineDocument).state
}

describe('age, use and date marks by command', () => {
  it('age and use with the machine, and later', async () => {
    expect(await state(...add, '--age', '12', '--wear', 'heavy')).toMatchObject({ ageYears: 12, wear: 'heavy' })
    expect(await state('history', 'Green', '--age', '9')).toMatchObject({ ageYears: 9, wear: 'heavy' })
    expect((await line.run('show', 'Green')).out).toMatch(/Known of it: about 9 years old, heavy use/)
  })

  it('refuses an age that is none and a use that is not known', async () => {
    await state(...add)
    expect((await line.run('history', 'Green', '--age', 'old')).code).not.toBe(0)
    expect((await line.run('history', 'Green', '--wear', 'brutal')).code).not.toBe(0)
    expect((await line.run('history', 'Green')).code).not.toBe(0)
  })

  it('marks, with the window and a replaced part told', async () => {
    await state(...add)
    await state('stamp', 'Green', partOf(0), 'three-rings', '17', '12', '2005')
    await state('stamp', 'Green', partOf(1), 'two-rings', '11', '2005')
    await state('stamp', 'Green', partOf(2), 'week', '2005', '50')
    const { marks } = await state('stamp', 'Green', partOf(3), 'written', '2014', '3')
    expect(marks).toHaveLength(4)
    const { out } = await line.run('show', 'Green')
    expect(out).toMatch(/Date marks: put together Dec 2005 to Jun 2006/)
    expect(out).toMatch(new RegExp(`${partOf(3)}: Later than the others: likely a replacement`))
  })

  it('a reading that climbs and goes to open is written as charging', async () => {
    await state(...add)
    const { value } = await line.json('read', 'Green', 'pins-on', 'charging')
    const last = (value as MachineDocument).notes.at(-1)?.content
    expect(last).toMatchObject({ kind: 'reading', result: { kind: 'charging' } })
    expect((value as MachineDocument).lines.at(-1)?.text).toMatch(/rises, then open/)
  })
})

describe('watts by command', () => {
  const [open] = (wattsChecks({ hose: true }).checks ?? []).map((check) => gradedCheckSchema.parse(check))
  const look = upright.checks.find(({ kind }) => kind === 'look')!

  it('become the outcome that they stand for on the plate', () => {
    expect(wattsEntry(open, 1200, undefined, '1.1 kW')).toEqual({
      kind: 'ok',
      value: { kind: 'grade', outcome: 'sound', watts: 1100 },
    })
    expect(wattsEntry(open, 1200, '600', undefined)).toMatchObject({ value: { outcome: 'low' } })
    expect(wattsEntry(open, 1200, 'sound', undefined)).toBeNull()
  })

  it('are refused with another unit, and on a check that is not read in watts', () => {
    expect(wattsEntry(open, 1200, undefined, '5 A')?.kind).toBe('refused')
    expect(wattsEntry(look, 1200, undefined, '1100')?.kind).toBe('refused')
  })
})
