import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { AirView } from '../../../src/machine/air/air-view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'
import { passGates } from './pass-gates.ts'

const blueprint = blueprints.find(({ id }) => id === 'bagged-cylinder')!

describe('thrum gauge and thrum air', () => {
  let line: CommandLine
  beforeAll(async () => {
    line = await makeCommandLine()
    await line.run('add', '--name', 'A', '--blueprint', blueprint.id, '--complaint', 'weak-suction')
  })
  afterAll(() => line.remove())

  const refusal = async (...args: readonly string[]): Promise<string> => (await line.run('gauge', 'A', ...args)).err
  const air = async (): Promise<AirView> => (await line.json('air', 'A')).value as AirView

  it('tells the ways in and the first reading before any was made', async () => {
    const { out } = await line.run('air', 'A')
    expect(out).toMatch(/^A: cylinder/)
    expect(out).toContain('No gauge reading yet. Three already answer: sealed, and at two holes.')
    expect(out).toMatch(/hose-end: End of the hose\. Wand and head off/)
    expect((await air()).next.length).toBeGreaterThan(0)
  })

  it('refuses readings in words', async () => {
    expect(await refusal('20kPa')).toMatch(/must not be run yet/)
    expect(await refusal('20')).toBe('reading: “20” has no unit. Write a number with its unit, such as 19.4 kPa.')
    expect(await refusal('20furlongs')).toMatch(/“furlongs” is not a unit known here for a pressure\. Use one of kPa/)
    expect(await refusal('7kPa', '--hole', 'wide')).toMatch(/--hole: “wide” is not a number/)
    expect(await refusal('610Hz')).toMatch(/--beside: A pitch says something only beside that of a sound machine/)
    expect(await refusal()).toMatch(/No reading was given\. Write what the gauge shows, such as 19\.4kPa/)
  })

  it('three readings in any unit answer, and say what to read next', { timeout: 120_000 }, async () => {
    await passGates(line, 'A', blueprint)
    await line.run('gauge', 'A', '88inH2O')
    await line.run('gauge', 'A', '65mbar', '--hole', '19mm', '--mains', '231V')
    const { value } = await line.json('gauge', 'A', '1.45kPa', '--hole', '1.25in', '--watts', '1010W')
    const { sets, next } = value as AirView
    expect(sets).toHaveLength(1)
    expect(sets[0]?.readings.map(({ setUp, read }) => `${setUp}: ${read}`)).toEqual([
      'sealed at the end of the hose: 21.9 kPa',
      '19 mm hole at the end of the hose: 6.50 kPa',
      '31.8 mm hole at the end of the hose: 1.45 kPa',
    ])
    expect(sets[0]?.explanations[0]?.kind).toBe('blockage')
    expect(next[0]?.expected).toHaveLength(2)
    const { out } = await line.run('air', 'A')
    expect(out).toMatch(/As it breathes as found:\n +\d+ % {2}.* blocked\. It loses [\d.]+ times what a clean one does/)
    expect(out).toMatch(/These readings do not tell apart: /)
  })

  it('takes its readings from the virtual gauge on a virtual machine', { timeout: 120_000 }, async () => {
    await line.run('add', '--name', 'V', '--blueprint', blueprint.id, '--practice', '11')
    await passGates(line, 'V', blueprint)
    const read = async (): Promise<AirView> => (await line.json('gauge', 'V', '--hole', '19mm')).value as AirView
    await read()
    const [set] = (await read()).sets
    expect(set?.readings).toHaveLength(2)
    expect(new Set(set?.readings.map(({ read: shown }) => shown)).size).toBe(1)
  })
})
