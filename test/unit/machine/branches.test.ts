import { describe, expect, it } from 'vitest'
import type { Onward, Stop } from '../../../src/machine/unfold.ts'
import type { ReadingResult } from '../../../src/machine/result.ts'
import { branchesOf, resultsText, stopRules, type Leaf } from '../../../src/machine/branches.ts'

const to = (name: string, expectedMinor: number): Onward => ({
  name,
  move: { kind: 'check', id: name, open: [], close: [] },
  minutes: 2,
  expectedMinor,
  stop: null,
})

const stopping = (exit: Stop['exit'], moreMinor: number | null): Onward => ({
  name: exit,
  move: null,
  minutes: 0,
  expectedMinor: 1000,
  stop: { exit, moreMinor },
})

const leaf = (
  text: string,
  probability: number,
  onward: Onward | null,
  result: ReadingResult | null = { kind: 'open' },
): Leaf => ({ result: { id: text, text, probability, result }, onward, failure: null })

describe('branches', () => {
  it('put results together that lead to the same move, with the money over them', () => {
    const branches = branchesOf([
      leaf('reads 4 to 13 Ω', 0.45, to('Look at the switch', 2000)),
      leaf('reads open', 0.35, to('Fuse', 900)),
      leaf('jumps when moved', 0.15, to('Look at the switch', 1200)),
    ])
    expect(branches.map(({ text, name }) => [text, name])).toEqual([
      ['reads 4 to 13 Ω or jumps when moved', 'Look at the switch'],
      ['reads open', 'Fuse'],
    ])
    expect(branches[0].probability).toBeCloseTo(0.6)
    // (0.45 · 2000 + 0.15 · 1200) / 0.6
    expect(branches[0].expectedMinor).toBeCloseTo(1800)
  })

  it('keep results apart whose answers are not there yet', () => {
    const branches = branchesOf([leaf('reads open', 0.6, null), leaf('jumps when moved', 0.4, null)])
    expect(branches.map(({ name, expectedMinor }) => [name, expectedMinor])).toEqual([
      [null, null],
      [null, null],
    ])
  })

  it.each([
    [['reads open'], 'reads open'],
    [['jumps when moved', 'reads open', 'reads 4 to 13 Ω'], 'reads open or 4 to 13 Ω or jumps when moved'],
    [['Worn short', 'Long enough'], 'Worn short or Long enough'],
  ])('name results in one phrase: %j', (texts, phrase) => expect(resultsText(texts)).toBe(phrase))
})

describe('the rule to stop', () => {
  const rule = (leaves: readonly Leaf[], lessLikely = 0) => stopRules(leaves, lessLikely, 'GBP')
  const goOn = leaf('jumps when moved', 0.3, to('Fuse', 900))

  it('says what the exit is worth more than carrying on', () =>
    expect(rule([leaf('reads open', 0.7, stopping('break-for-parts', 1420)), goOn])).toEqual([
      'If it reads open: stop. Breaking it for parts is worth £14.20 more than carrying on.',
    ]))
  it('gives the least of several differences', () =>
    expect(
      rule([
        leaf('reads open', 0.4, stopping('break-for-parts', 1420)),
        leaf('reads under 0.5 Ω', 0.3, stopping('break-for-parts', 310)),
        goOn,
      ]),
    ).toEqual([
      'If it reads open or under 0.5 Ω: stop. Breaking it for parts is worth at least £3.10 more than carrying on.',
    ]))
  it('names a grade, and a machine that works is done', () =>
    expect(rule([leaf('Runs well', 0.9, stopping('sell-working', 0.2), { kind: 'grade', outcome: 'runs' })])).toEqual([
      'If it shows “Runs well”: it is done. Selling it working is worth as much as carrying on.',
    ]))
  it('says so when nothing else is left', () =>
    expect(rule([leaf('done', 1, stopping('scrap', null), null)])).toEqual([
      'Once it is done: stop. Scrapping it is all that is left.',
    ]))
  it('says that no result is a reason, once all are known', () => {
    expect(rule([goOn])).toEqual(['No result of this check is a reason to stop.'])
    expect(rule([goOn], 0.01)).toEqual(['None of these results is a reason to stop.'])
    expect(rule([goOn, leaf('reads open', 0.2, null)])).toEqual([])
    expect(rule([leaf('done', 1, to('Fuse', 1), null)])).toEqual([])
  })
})
