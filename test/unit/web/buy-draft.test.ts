import { describe, expect, it } from 'vitest'
import { advertSchema } from '../../../src/machine/buying/index.ts'
import { losesText, timesText } from '../../../src/web/buy/buy-words.ts'
import {
  advertFromDraft,
  buyDraftFromText,
  draftFromAdvert,
  emptyBuyDraft,
  withKind,
  type BuyDraft,
} from '../../../src/web/buy/draft.ts'

const typed: BuyDraft = { ...emptyBuyDraft, blueprint: 'tub-by-pass', words: 'lost suction', asking: '12.50', distance: '7,5' } // prettier-ignore

describe('what is typed of an advert', () => {
  it('is the advert: money in pence, empty fields as nothing known', () => {
    const made = advertFromDraft(typed, 'GBP')
    expect(made).toMatchObject({ kind: 'ok', value: { askingMinor: 1250, distanceKm: 7.5, wanted: { kind: 'profit', minor: 0 } } }) // prettier-ignore
    expect(made.kind === 'ok' && advertSchema.safeParse(made.value).success).toBe(true)
  })

  it('is refused field by field', () => {
    const made = advertFromDraft({ ...typed, asking: 'ten', age: 'old' }, 'GBP')
    expect(made.kind === 'refused' && made.problems.map(({ where }) => where)).toEqual(['askingMinor', 'ageYears'])
  })

  it('wants nothing until an amount is typed, whichever way it is wanted', () => {
    expect(advertFromDraft({ ...typed, wanted: 'an-hour' }, 'GBP')).toMatchObject({
      value: { wanted: { kind: 'profit' } },
    })
    expect(advertFromDraft({ ...typed, wanted: 'an-hour', wantedMoney: '9' }, 'GBP')).toMatchObject({
      value: { wanted: { kind: 'an-hour', minor: 900 } },
    })
  })

  it('comes back from storage and from a kept advert as it was', () => {
    expect(buyDraftFromText(JSON.stringify(typed))).toEqual(typed)
    expect(buyDraftFromText('{"no":1}')).toBeNull()
    expect(buyDraftFromText('no json')).toBeNull()
    const advert = advertSchema.parse((advertFromDraft(typed, 'GBP') as { readonly value: unknown }).value)
    const again = draftFromAdvert('Name', advert, { id: 'a', version: 1 })
    expect(advertFromDraft(again, 'GBP')).toEqual(advertFromDraft(typed, 'GBP'))
  })

  it('loses with another kind what only the other has', () => {
    const looked: BuyDraft = { ...typed, missing: ['hose'], looked: [{ check: 'pins-on', result: { kind: 'open' } }] }
    expect(withKind(looked, 'tub-by-pass')).toEqual(looked)
    expect(withKind(looked, 'stick-upright')).toMatchObject({ missing: [], looked: [], words: 'lost suction' })
  })
})

describe('a chance in plain words', () => {
  it.each([
    [0.004, 'Hardly ever loses money'],
    [0.25, 'Loses money 1 time in 4'],
    [0.5, 'Loses money 1 time in 2'],
    [0.72, 'Loses money 7 times in 10'],
    [0.985, 'Loses money 9 times in 10'],
    [0.996, 'Nearly always loses money'],
  ])('%d', (chance, words) => {
    expect(losesText(chance)).toBe(words)
    expect(timesText(chance)).not.toBe('')
  })
})
