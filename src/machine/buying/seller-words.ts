import { complaints, type Complaint } from '../../facts/complaints.ts'
import { sellerClaims, type ClaimId } from '../../facts/seller-claims.ts'
import { sellerPhrases, sellerSpellings, turnsRound, type Meaning } from '../../facts/seller-words.ts'

/** A turn of phrase that was read, as it stands in the words. */
export type ReadPhrase = { readonly text: string; readonly means: Meaning; readonly name: string }

/** What was understood of a seller's words, so that it can be put right. */
export type SellerWords = {
  readonly phrases: readonly ReadPhrase[]
  readonly complaints: readonly Complaint[]
  readonly claims: readonly ClaimId[]
}

/**
 * Reads complaints and claims from a seller's words. Longer turns of phrase are read first, and no word is read twice. “No
 * burning smell” is no complaint; “no suction” is one. A machine with a complaint is not taken to be said to work.
 */
export const readSellerWords = (words: string): SellerWords => {
  const phrases = phrasesIn(plain(words))
  const complaintsRead = [...new Set(phrases.flatMap(({ means }) => (means.kind === 'complaint' ? [means.id] : [])))]
  const claims = [...new Set(phrases.flatMap(({ means }) => (means.kind === 'claim' ? [means.id] : [])))]
  return {
    phrases,
    complaints: complaintsRead,
    claims: complaintsRead.length === 0 ? claims : claims.filter((id) => id !== 'works' && id !== 'untested'),
  }
}

/** Lower case, one spelling of each, punctuation as a mark that no phrase reaches over. */
const plain = (words: string): string => {
  const marked = ` ${words.toLowerCase().replaceAll('’', "'")} `
  const spelled = sellerSpellings.reduce((text, [from, to]) => text.replaceAll(` ${from} `, ` ${to} `), marked)
  return spelled.replaceAll(/[.,;:!?()"\n]+/g, ' | ').replaceAll(/\s+/g, ' ')
}

type Pattern = { readonly pattern: RegExp; readonly length: number; readonly means: Meaning }

const escaped = (text: string): string => text.replaceAll(/[/.*+?^${}()|[\]\\]/g, String.raw`\$&`)

const patterns: readonly Pattern[] = sellerPhrases
  .flatMap(({ says, means }) =>
    says.map((phrase) => ({
      pattern: new RegExp(` ${escaped(phrase).replaceAll(' …', '(?: [a-z-]+){0,2}')}(?= )`, 'g'),
      length: phrase.length,
      means,
    })),
  )
  .toSorted((a, b) => b.length - a.length)

const phrasesIn = (text: string): readonly ReadPhrase[] => {
  let left = text
  const found: { readonly at: number; readonly phrase: ReadPhrase }[] = []
  for (const { pattern, means } of patterns) {
    for (const match of left.matchAll(pattern)) {
      const isTurned = turnsRound.some((word) => turnedBy(left, match.index, word))
      if (!isTurned) found.push({ at: match.index, phrase: { text: match[0].trim(), means, name: nameOf(means) } })
      left = left.slice(0, match.index) + '_'.repeat(match[0].length) + left.slice(match.index + match[0].length)
    }
  }
  return found.toSorted((a, b) => a.at - b.at).map(({ phrase }) => phrase)
}

/** Whether a word that turns a phrase round stands right before it, or one word before: “no nasty smell”. */
const turnedBy = (text: string, at: number, word: string): boolean =>
  new RegExp(` ${word}(?: [a-z-]+)?$`).test(text.slice(0, at))

const nameOf = (means: Meaning): string =>
  means.kind === 'complaint' ? complaints[means.id] : sellerClaims[means.id].name
