import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { BuyingView } from '../../../src/machine/buying/index.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeAll(async () => {
  line = await makeCommandLine()
})
afterAll(() => line.remove())

const stick = ['buy', '--quick', '--blueprint', 'stick-upright', '--words', 'lost suction', '--asking', '5'] as const

describe('thrum buy', () => {
  it('says from options and from a file the same', async () => {
    const file = await line.file('advert.json', {
      blueprint: 'stick-upright',
      words: 'lost suction',
      ageYears: 12,
      askingMinor: 500,
      distanceKm: 3,
      wanted: { kind: 'profit', minor: 200 },
    })
    const fromOptions = await line.json(...stick, '--age', '12', '--km', '3', '--want', '2')
    const { code, value } = await line.json('buy', '--quick', file)
    expect(code).toBe(0)
    expect(value).toEqual(fromOptions.value)
    expect((value as BuyingView).understood.complaints).toEqual(['weak-suction'])
  })

  it('reads well: the most to pay first, then the chances, what to ask and what to check', async () => {
    const { code, out } = await line.run(...stick, '--km', '1')
    expect(code).toBe(0)
    expect(out).toMatch(
      /^(Pay £\d+\.\d\d at most|Not even for nothing)[^]*It loses money, [^]*“lost suction”: Weak suction[^]*Likeliest faults[^]*Ask before going[^]*On the spot, plug out of the socket/,
    )
  })

  it('goes by the settings: hour, risk and costs', async () => {
    const before = (await line.json(...stick, '--km', '10')).value as BuyingView
    await line.run('settings', '--hour', '4')
    const after = (await line.json(...stick, '--km', '10')).value as BuyingView
    expect([before.hourMinor, after.hourMinor]).toEqual([800, 400])
    expect(after.travel.minor).toBeLessThan(before.travel.minor)
    expect(after.ceiling.exactMinor).toBeGreaterThan(before.ceiling.exactMinor)
  })

  it('takes answers and what was found on the spot', async () => {
    const { value } = await line.json(...stick, '--answer', 'opened=no', '--looked', 'pins-on=open')
    expect((value as BuyingView).questions.map(({ id }) => id)).not.toContain('opened')
  })

  it.each([
    [
      ['buy', '--blueprint', 'stick-uprigt', '--asking', '5'],
      /“stick-uprigt” is not a blueprint here\. Did you mean stick-upright/,
    ],
    [[...stick, '--asking', '-5'], /--asking: “-5” is below nothing\. Write such as 9\.50/],
    [[...stick, '--km', '5000'], /--km: 5000 is not right: nobody fetches a machine from further than 1000 km/],
    [[...stick, '--missing', 'wings'], /missing\[0\]: “wings” is not a part here/],
    [[...stick, '--complaint', 'cord-stuck'], /“The flex does not wind in, or does not stay out” fits no fault of/],
    [[...stick, '--answer', 'colour=red'], /“colour” is not a question here/],
    [[...stick, '--answer', 'opened=red'], /“red” is not an answer here\. Use one of no, yes, unsure/],
    [[...stick, '--looked', 'pins-on=red'], /“red” is no meter reading/],
    [[...stick, '--want', '1', '--want-an-hour', '2'], /Both a profit and a rate for the hour are wanted/],
    [['buy', 'no-such-file.json'], /cannot be read/],
  ])('refuses %j', async (args, words) => {
    const { code, out, err } = await line.run(...args)
    expect([code, out]).toEqual([1, ''])
    expect(err).toMatch(words)
  })
})

describe('a kept advert on the command line', () => {
  it('is kept, listed, bought, and its machine has what was answered; another is passed by', async () => {
    const kept = await line.json(...stick, '--km', '1', '--answer', 'opened=no', '--keep', 'Stick by the gate')
    const { id } = (kept.value as { readonly kept: { readonly id: string } }).kept
    await line.run(...stick, '--keep', 'The other')
    expect((await line.run('adverts')).out).toMatch(/Stick by the gate {2}asks £5\.00[^]*open/)
    const bought = await line.json('bought', 'Stick by the gate', '--paid', '4', '--source', 'boot-sale')
    expect(bought.value).toMatchObject({
      machine: {
        state: { paidMinor: 400, source: 'boot-sale', advert: id },
        notes: [{ content: { answers: [{ question: 'opened', answer: 'no' }] } }],
      },
      advert: { state: { decided: { kind: 'bought', paidMinor: 400 } } },
    })
    expect((await line.run('passed', 'The other', '--why', 'reeked of smoke')).out).toContain(
      'passed by: reeked of smoke',
    )
    expect((await line.run('adverts')).out).toContain('No open advert is kept')
    const again = await line.run('bought', id, '--paid', '4')
    expect([again.code, again.err]).toEqual([1, expect.stringContaining('was bought already')])
  })

  it.each([
    [['bought', 'nowhere', '--paid', '4'], 'There is no advert “nowhere”'],
    [['passed', 'nowhere'], 'There is no advert “nowhere”'],
  ])('%j is refused with what would be right', async (args, words) => {
    const { code, err } = await line.run(...args)
    expect(code).toBe(1)
    expect(err).toContain(words)
  })
})
