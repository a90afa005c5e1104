import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { MoneySum } from '../../../src/base/money-sum.ts'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

type Shown = MachineDocument & { readonly view: MachineView }

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
})
afterEach(() => line.remove())

const addOne = async (): Promise<void> => {
  await line.run('add', '--name', 'A', '--blueprint', 'bagged-upright-one-motor', '--complaint', 'dead', '--paid', '6')
}
const shown = async (): Promise<Shown> => (await line.json('show', 'A')).value as Shown

describe('thrum settings', () => {
  it('shows what holds, and changes what is named', async () => {
    expect(await line.json('settings')).toEqual({
      code: 0,
      value: {
        settings: {
          hourMinor: 800,
          currency: 'GBP',
          attitude: 'average',
          region: 'UK',
          checkedBy: '',
          keepOriginals: false,
          costs: {},
        },
      },
    })
    const changed = await line.json('settings', '--hour', '9.50', '--currency', 'EUR', '--risk', 'cautious')
    expect(changed.value).toMatchObject({ settings: { hourMinor: 950, currency: 'EUR', attitude: 'cautious' } })
    expect((await line.run('settings')).out).toMatch(
      /€9\.50[^]*At most one machine in five may lose money[^]*It costs you/,
    )
  })

  it.each([
    [['--hour', 'much'], '--hour: “much” is not an amount of money. Write such as 9.50.'],
    [['--risk', 'bold'], '--risk: “bold” is not an attitude here. Use one of average, cautious.'],
    [['--currency', 'XYZ'], '--currency: “XYZ” is not a currency here. Use one of GBP, EUR, USD, AUD, CAD, NZD.'],
  ])('refuses %j and changes nothing', async (options, words) => {
    expect(await line.run('settings', ...options)).toEqual({ code: 1, out: '', err: words })
    expect((await line.json('settings')).value).toMatchObject({ settings: { hourMinor: 800, attitude: 'average' } })
  })

  it('says what things cost, each with its source; sets them and puts them back', async () => {
    expect((await line.run('settings')).out).toMatch(/materials +£8\.00 +Bag, filters.*judgement/)
    const set = [
      'settings',
      '--cost',
      'postage=3.50',
      'part-fee=12.5',
      '--cost',
      'collect-minutes=5',
      '--per-mile',
      '0.40',
    ]
    const { value } = await line.json(...set)
    const { costs } = (value as { settings: { costs: Record<string, number> } }).settings
    // A mile is 1.609344 km (international yard and pound agreement, 1959).
    expect(costs).toEqual({ postageMinor: 350, partFeeShare: 0.125, collectMin: 5, perKmMinor: 40 / 1.609344 })
    expect((await line.run('settings')).out).toMatch(
      /per-km +£0\.25 \(£0\.40 a mile\) .*set by you[^]*part-fee +12\.5 %/,
    )
    const back = await line.json('settings', '--cost', 'postage=default', 'part-fee=default', '--per-mile', 'default')
    expect(back.value).toMatchObject({ settings: { costs: { collectMin: 5 } } })
  })

  it('costs tell in what a machine brings', async () => {
    await addOne()
    const before = await shown()
    await line.run('settings', '--cost', 'sale-fee=10')
    const after = await shown()
    expect(after.view.worth.repairedMinor).toBeLessThan(before.view.worth.repairedMinor)
    expect(after.view.worth.repairedSum.sources).toContain('Cost set by you')
  })

  it.each([
    [['--cost', 'tea=3'], /^--cost: “tea” is not a cost here\. Did you mean /],
    [
      ['--cost', 'postage=dear'],
      /^--cost postage: “dear” is not an amount of money\. Write an amount such as 0\.45, or default/,
    ],
    [['--cost', 'comebacks'], /^--cost comebacks: “” is not a percentage/],
    [['--per-mile', 'x'], /^--per-mile: “x” is not an amount of money/],
    [['--cost', 'sale-fee=101'], /^--cost sale-fee: “101” is not a percentage\. Write percent from 0 to 100/],
  ])('refuses %j', async (options, words) => {
    const refused = await line.run('settings', ...options)
    expect([refused.code, refused.out]).toEqual([1, ''])
    expect(refused.err).toMatch(words)
  })

  it('are taken over by a new machine', async () => {
    await line.run('settings', '--hour', '9.50', '--currency', 'EUR', '--risk', 'cautious')
    await addOne()
    const { state, view } = await shown()
    expect(state).toMatchObject({ hourMinor: 950, currency: 'EUR' })
    expect(view.worth).toMatchObject({ attitude: 'cautious', risk: { belowMinor: 600, atMost: 0.2 } })
  })

  it('but for the hour given with the machine', async () => {
    await line.run('add', '--name', 'A', '--blueprint', 'bagged-upright-one-motor', '--hour', '12')
    expect((await shown()).state.hourMinor).toBe(1200)
    const wrong = await line.run('add', '--name', 'B', '--blueprint', 'bagged-upright-one-motor', '--hour', 'x')
    expect(wrong.err).toBe('--hour: “x” is not an amount of money. Write such as 9.50.')
  })
})

describe('thrum value', () => {
  beforeEach(addOne)

  it('sets what is reckoned with; struck out, the old figure holds', async () => {
    const before = await shown()
    const { value } = await line.json('value', 'A', '--working', '300', '--hour', '6', '--part', 'hose=6.50')
    const after = value as Shown
    expect(after.state.prices.working?.minor).toBe(30_000)
    expect(after.state.prices.parts['hose']?.minor).toBe(650)
    expect(after.state.hourMinor).toBe(600)
    expect(after.view.worth.repairedMinor).toBeGreaterThan(before.view.worth.repairedMinor)
    await line.run('strike', 'A', after.notes.at(-1)?.id ?? '')
    expect((await shown()).view.worth).toEqual(before.view.worth)
  })

  it.each([
    [[], 'Neither a price nor the worth of an hour is given. Give at least one of them.'],
    [['--working', 'x'], '--working: “x” is not an amount of money. Write such as 9.50.'],
    [['--part', 'hose'], '--part hose: “” is not an amount of money. Write such as 9.50.'],
  ])('refuses %j', async (options, words) => {
    expect(await line.run('value', 'A', ...options)).toEqual({ code: 1, out: '', err: words })
  })
})

describe('thrum why', () => {
  beforeEach(addOne)

  it.each(['carry-on', 'as-it-stands', 'repaired', 'break-for-parts', 'scrap'])('lays %s out', async (figure) => {
    const { worth, exits } = (await shown()).view
    const exit = (id: string): number | undefined => exits.find((one) => one.id === id)?.expectedMinor
    const figures: Readonly<Record<string, number | undefined>> = {
      'carry-on': worth.carryOnMinor,
      'as-it-stands': worth.asItStandsMinor,
      repaired: worth.repairedMinor,
    }
    const sum = (await line.json('why', 'A', figure)).value as MoneySum
    expect(sum.minor).toBeCloseTo(figures[figure] ?? exit(figure) ?? NaN, 6)
    const { out } = await line.run('why', 'A', figure)
    expect(out.split('\n').filter((text) => /£\d/.test(text)).length).toBe(sum.lines.length + 1)
    expect(out).toContain('[1] ')
  })

  it('says why another move is worth less', async () => {
    const [other] = (await shown()).view.others
    const sum = (await line.json('why', 'A', other?.id ?? '')).value as MoneySum
    expect(sum.minor).toBeCloseTo(-(other?.lessMinor ?? NaN), 6)
  })

  it('refuses a figure that is not there', async () => {
    const { code, err } = await line.run('why', 'A', 'luck')
    expect([code, err]).toEqual([1, expect.stringMatching(/^figure: There is no figure “luck” of this machine now\./)])
  })
})
