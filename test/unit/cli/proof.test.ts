import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { ProofView } from '../../../src/machine/proof/proof-view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'
import { passGates } from './pass-gates.ts'

describe('thrum proof and its kin', () => {
  let line: CommandLine
  beforeAll(async () => {
    line = await makeCommandLine()
    await line.run('add', '--name', 'A', '--blueprint', 'commercial-upright')
  })
  afterAll(() => line.remove())

  const prove = async (...args: readonly string[]): Promise<ProofView> =>
    (await line.json('prove', 'A', ...args)).value as ProofView
  const refusal = async (...args: readonly string[]): Promise<string> => (await line.run(...args)).err

  it('shows what is open before anything was done', async () => {
    const { out } = await line.run('proof', 'A')
    expect(out).toMatch(/^A: Not proven/)
    expect(out).toMatch(/could prove it: Insulation tester/)
    expect(out).toMatch(/not noted yet: thrum rules/)
    expect(out).toMatch(/Class II by its plate/)
    expect(out).toMatch(/Recall check: not done[^]*Product Recalls and Alerts/)
    expect(out).toMatch(/Selling it second-hand in the United Kingdom: General Product Safety Regulations 2005/)
    expect(out).toMatch(/^ {2}Local rules decide\.$/m)
  })

  it('refuses what is not right, in words', async () => {
    expect(await refusal('prove', 'A', 'visual', 'good')).toMatch(/It is not said yet by which rules/)
    expect(await refusal('rules', 'A', '--region', 'XX')).toBe(
      '--region: “XX” is not a region here. Use one of UK, EU, AU, NZ, US, CA.',
    )
    expect(await refusal('rules', 'A', '--edition', 'uk-cop-9')).toMatch(/no such edition of rules is known here/i)
    expect(await refusal('rules', 'A', '--lead', '8m')).toMatch(/A lead has a length and a size/)
    expect(await refusal('rules', 'A', '--lead', '300m', '--size', '0.75')).toMatch(/No appliance has a lead of 300 m/)
    expect(await refusal('prove', 'A', 'insulation', '5Mohm')).toMatch(/A reading proves something only with its/)
    expect(await refusal('prove', 'A', 'visual', 'fine')).toMatch(/“fine” is neither good nor bad/)
    expect(await refusal('lead', 'A', '0m')).toMatch(/No appliance has a lead of 0 m/)
  })

  it('goes step by step to fit, and writes record and label', { timeout: 120_000 }, async () => {
    await line.run('settings', '--name', 'A. Tester')
    expect(await refusal('prove', 'A', 'run', 'good')).toMatch(/must not be yet/)
    await passGates(
      line,
      'A',
      blueprints.find(({ id }) => id === 'commercial-upright')!,
    )
    await line.run('rules', 'A', '--region', 'UK', '--lead', '8m', '--size', '0.75mm2')
    expect((await prove('visual', 'good')).verdict.kind).toBe('not-proven')
    const options = ['--with', 'insulation-tester', '--volts', '500', '--checked', '2026-01-10'] as const
    const view = await prove('insulation', '>150Mohm', ...options)
    expect(view.steps.find(({ id }) => id === 'insulation')?.findings[0]?.read).toBe('more than 150 MΩ at 500 V')
    await prove('polarity', 'good')
    expect((await prove('run', 'good', 'two minutes, even')).verdict.kind).toBe('fit')
    expect((await prove('recall', 'good', 'GOV.UK')).recall).toMatchObject({ state: 'in-no-list', text: 'GOV.UK' })
    const [record, label] = ['record.pdf', 'label.pdf'].map((name) => join(line.folder, name))
    const { out } = await line.run('record', 'A', record, '--label', label)
    expect(out).toBe(`Fit to sell. Written: ${record}, ${label}`)
    for (const path of [record, label]) expect((await readFile(path)).subarray(0, 5).toString()).toBe('%PDF-')
    expect(await refusal('record', 'A', join(line.folder, 'nowhere', 'x.pdf'))).toMatch(/Name a file in a folder/)
  })

  it('tells whether a salvaged cable is the copper that it claims', async () => {
    // IEC 60228, class 5: 8 m of 0.75 mm² have 0.208 Ω at most at 20 °C.
    const thin = await line.run('cable', '0.42ohm', '--size', '0.75mm2', '--length', '8m', '--with', 'low-ohm-tester')
    expect(thin.out).toMatch(/0\.42 Ω.*0\.208 Ω/)
    const cheap = await line.json('cable', '0.2ohm', '--size', '0.75mm2', '--length', '8m')
    expect(cheap.value).toMatchObject({ kind: 'cannot-tell' })
    expect(await refusal('cable', '0.2ohm', '--size', '0.8', '--length', '8m')).toMatch(/no size of conductor known/)
    expect(await refusal('cable', '0.2ohm', '--size', '0.75', '--length', '300m')).toMatch(/No appliance has a lead/)
  })

  it('chooses a lead with the clause behind each part', async () => {
    const { out } = await line.run('lead', 'A', '8m')
    expect(out).toMatch(/Conductor: 0\.75 mm2, 2 cores, for 4\.9 A\n {2}.*IEC 60335-1/)
    expect(out).toMatch(/Fuse: 13 A, brown/)
    expect(out).toMatch(/line: brown, to L/)
  })
})
