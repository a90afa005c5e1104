import { describe, expect, it } from 'vitest'
import { sellerPhrases } from '../../../src/facts/seller-words.ts'
import { readSellerWords } from '../../../src/machine/buying/index.ts'

/** Invented adverts; what they mean is common trade practice. */
const adverts = [
  ['Dead, no lights', ['dead'], []],
  ["Won't turn on, selling for spares or repair.", ['dead'], ['opened']],
  ['Has lost all its suction, otherwise working', ['weak-suction'], []],
  ['No suction. No burning smell.', ['weak-suction'], []],
  ['Works fine, just upgrading', [], ['works']],
  ['Untested, been in the shed', [], ['untested', 'stored-damp']],
  ['Cuts out after ten minutes and smells of burning', ['cuts-out', 'smell'], []],
  ['Brush bar is not turning but it is not noisy', ['brush-not-turning'], []],
  ['Used for building work, now very loud', ['noise'], ['building-dust']],
  ['It isn’t dead!', [], []],
  ['Trips the electrics; there was a flash', ['trips-supply', 'sparks'], []],
  ['A lovely red one', [], []],
] as const

describe('a seller’s words', () => {
  it.each(adverts)('“%s”', (words, complaints, claims) => {
    const read = readSellerWords(words)
    expect(read.complaints.toSorted()).toEqual([...complaints].sort())
    expect(read.claims.toSorted()).toEqual([...claims].sort())
  })

  it('are given back as they stand, so that they can be put right', () => {
    const { phrases } = readSellerWords('It CUTS OUT, for parts')
    expect(phrases.map(({ text }) => text)).toEqual(['cuts out', 'for parts'])
    expect(phrases.map(({ means }) => means.id)).toEqual(['cuts-out', 'opened'])
  })

  it('are all understood as the table has them', () => {
    for (const { says, means } of sellerPhrases)
      for (const phrase of says) {
        const { phrases } = readSellerWords(phrase.replaceAll('…', 'the'))
        expect(
          phrases.map((one) => one.means.id),
          phrase,
        ).toContain(means.id)
      }
  })
})
