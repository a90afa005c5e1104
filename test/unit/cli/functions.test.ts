import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { FunctionsView } from '../../../src/machine/index.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

describe('thrum functions and thrum tried', () => {
  let line: CommandLine
  beforeAll(async () => {
    line = await makeCommandLine()
    await line.run('add', '--name', 'A', '--blueprint', 'tub-by-pass')
  })
  afterAll(() => line.remove())

  const refusal = async (...args: readonly string[]): Promise<string> => (await line.run(...args)).err

  it('lists what to try, how, and what good looks like; what runs waits for the gates', async () => {
    const { out } = await line.run('functions', 'A')
    expect(out).toMatch(/^A: 0 of \d+ tried\n\nPlug out, opened\n/)
    expect(out).toMatch(/ {2}drum-clamps {2}Drum clamps: to do\n {6}Shut both clamps[^\n]+\n {6}Good: both pull/)
    expect(out).toMatch(/ {2}switch {2}Mains switch: to do\n[^]*?Not yet: [^\n]*First run/)
  })

  it('takes what was found, as a trial or as a reading of the check that it is', async () => {
    await line.run('tried', 'A', 'drum-clamps', 'good')
    await line.run('tried', 'A', 'tools', 'not-there')
    await line.run('tried', 'A', 'wheels', 'bad', '--text', 'flat on one side')
    await line.run('tried', 'A', 'floor-head', 'worn')
    const view = (await line.json('functions', 'A')).value as FunctionsView
    expect(view).toMatchObject({ tried: 4, bad: 2, notThere: 1 })
    const { out } = await line.run('show', 'A')
    expect(out).toMatch(/Wheels on the bench: One jammed, split or missing/)
    expect(out).toMatch(/flat on one side/)
    expect(out).toMatch(/Tried: drum clamps, good/)
  })

  it('refuses in words', async () => {
    expect(await refusal('tried', 'A', 'drumclamp', 'good')).toMatch(
      /“drumclamp” is not a function here\. Did you mean drum-clamps/,
    )
    expect(await refusal('tried', 'A', 'floor-head', 'bad')).toMatch(
      /bad in several ways, and which of them is not said\. Give one of stuck \(Stuck or half way\), worn \(Worn down\)/,
    )
    expect(await refusal('tried', 'A', 'wheels', 'so-so')).toMatch(
      /“so-so” is not a result here\. Use one of good, bad, roll, stuck, not-there, cannot-tell/,
    )
    expect(await refusal('tried', 'A', 'switch', 'good')).toMatch(/it must not be run yet/)
  })
})
