import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { WhatToAsk } from '../../../src/bench/prices/what-to-ask.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
  await line.run('add', '--name', 'A', '--blueprint', 'bagged-upright-one-motor', '--paid', '6')
})
afterEach(() => line.remove())

const seen = ['price-seen', '--blueprint', 'bagged-upright-one-motor', '--price'] as const
const asking = async (...options: readonly string[]): Promise<WhatToAsk> =>
  (await line.json('asking', 'A', ...options)).value as WhatToAsk

describe('thrum asking', () => {
  it('says the price, its band, the days, the floor and what each thing adds', { timeout: 30_000 }, async () => {
    await line.run(...seen, '52', '--day', '2026-01-10', '--place', 'market stall')
    const { code, out } = await line.run('asking', 'A')
    expect(code).toBe(0)
    expect(out).toMatch(/^Ask £\d+\.00 \(grade B: light marks\)\nNine sales in ten bring £/)
    expect(out).toMatch(/Not below £[\d.]+: Paid and spent so far, less what was taken out of it £6\.00/)
    expect(out).toMatch(/\[x\] New bag and filters: £[\d.]+ more, costs £6\.00 and 3 min/)
    expect(out).toContain('market stall: £52.00 on 2026-01-10, grade B, seen; counts')
  })

  it('goes by grade, ticks and days', { timeout: 30_000 }, async () => {
    const usual = await asking()
    const worse = await asking(
      '--grade',
      'D',
      '--without',
      'cleaned',
      '--with',
      'new-belt',
      '--days',
      '14',
      '--a-day',
      '0.20',
    )
    expect(worse.asking.choices).toMatchObject({
      grade: 'D',
      done: ['new-filters', 'new-belt'],
      dayMinor: 20,
      horizonDays: 14,
    })
    expect(worse.asking.askMinor).toBeLessThan(usual.asking.askMinor)
  })

  it.each([
    [['--grade', 'E'], /--grade: “E” is none of A, B, C, D\./],
    [['--with', 'paint'], /“paint” is not an? improvement/],
    [['--a-day', 'much'], /--a-day: “much” is not an amount of money/],
    [['--days', 'many'], /--days: “many” is not a number\. Write/],
    [['--found', 'hose'], /“hose” is not a missing part/],
  ])('refuses %j', async (options, words) => {
    const { code, err } = await line.run('asking', 'A', ...options)
    expect(code).toBe(1)
    expect(err).toMatch(words)
  })
})

describe('thrum price-seen and prices', () => {
  it('enters prices, lists them and strikes one out', async () => {
    const sold = await line.json(...seen, '45', '--day', '2026-03-01', '--grade', 'C', '--complete', '90')
    expect(sold.value).toMatchObject({ state: { priceMinor: 4500, sold: true, grade: 'C', completenessShare: 0.9 } })
    await line.run(...seen, '60', '--unsold', '--days', '30', '--day', '2026-03-01')
    const { out } = await line.run('prices')
    expect(out).toMatch(/£60\.00, unsold 2026-03-01 after 30 days, bagged-upright-one-motor, grade B\n.*£45\.00, sold/)
    const { id } = (sold.value as { state: { id: string } }).state
    expect((await line.run('prices', '--strike', id)).out).not.toContain('£45.00')
    expect((await line.run('prices', '--strike', id)).err).toContain('struck out already')
    expect((await line.run('prices', '--strike', 'none')).err).toContain('There is no price “none”')
  })

  it.each([
    [['price-seen', '--blueprint', 'none', '--price', '5'], /“none” is not a blueprint/],
    [[...seen, 'dear'], /“dear” is not an amount of money/],
    [[...seen, '5', '--grade', 'E'], /--grade: “E” is none of A, B, C, D\./],
    [[...seen, '5', '--day', 'today'], /a day is written as 2026-03-31/],
  ])('refuses %j', async (words, said) => {
    const { code, err } = await line.run(...words)
    expect(code).toBe(1)
    expect(err).toMatch(said)
    expect((await line.run('prices')).out).toBe('No prices entered')
  })
})

describe('thrum listed', () => {
  it('notes the price that a machine is offered at', { timeout: 30_000 }, async () => {
    const { value } = await line.json('listed', 'A', '--price', '55', '--where', 'shed door', '--grade', 'A')
    expect(value).toMatchObject({ state: { listed: [{ priceMinor: 5500, where: 'shed door', grade: 'A', to: null }] } })
    expect((await line.run('listed', 'A', '--price', 'dear')).err).toContain('“dear” is not an amount of money')
    expect((await asking()).asking.choices.grade).toBe('A')
  })
})
