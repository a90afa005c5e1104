import { colourWords } from '../../facts/colour-words.ts'
import { ofWords, sayingWords, wholeWords, wordsWithoutThing } from '../../facts/sale-whole-words.ts'
import type { Evidence } from './evidence.ts'
import { partsIn } from './part-claims.ts'

type Stretch = { readonly from: number; readonly to: number }
type Known = Pick<Evidence, 'blueprint' | 'state'>

/** What a claim is looked at by: where it stands, whether it is of looks, and the other claims of the text. */
export type ClaimPlace = Stretch & { readonly isOfLooks: boolean; readonly others: readonly Stretch[] }

const sentenceEnds = /[.;!?\n()]/
const ties = /[,:&+]|\b(?:and|but|with)\b/

/**
 * The word that a claim is made of where that is neither the machine as a whole nor a part of it that the bench knows; null where the
 * claim has its place. What stands before it in its clause is what it is of, and of looks what stands behind it too (`as new strap`);
 * where nothing stands there, what leads up to it by a colon (`Strap: as new`), and of looks a few words that open its sentence
 * (`Strap, as new`). Else it is of the whole. Words that name no thing are a closed class; nouns are not, and no list holds them all:
 * so a word that is not known is never taken for the machine.
 */
export const strangerOf = (text: string, claim: ClaimPlace, known: Known): string | null => {
  const sentence = text.slice(0, claim.from).split(sentenceEnds).at(-1) ?? ''
  const own = sentence.split(ties).at(-1) ?? ''
  if (headOf(own) !== null) return strangerIn(own, known)
  const behind = text.slice(claim.to).split(sentenceEnds)[0]?.split(ties)[0] ?? ''
  if (claim.isOfLooks && opensWithThing(behind)) return strangerIn(behind, known)
  const lead = sentence.slice(0, sentence.length - own.length)
  const ledBy = lead.slice(0, -1).split(ties).at(-1) ?? ''
  if (lead.endsWith(':')) return strangerIn(ledBy, known)
  const end = claim.from - own.length - 1
  const isOpener = lead.endsWith(',') && !ties.test(lead.slice(0, -1)) && wordsOf(ledBy).length <= fewWords
  const isClaim = claim.others.some(({ from, to }) => from < end && to > end - ledBy.length)
  return claim.isOfLooks && isOpener && !isClaim ? strangerIn(ledBy, known) : null
}

/** More words than this before a comma tell something of their own. Judgement. */
const fewWords = 3

const wordsOf = (piece: string): readonly string[] => piece.match(/\p{L}[\p{L}'’-]*/gu) ?? []

const mayBeThing = (word: string): boolean =>
  !wordsWithoutThing.has(word.toLowerCase()) && !sayingWords.has(word.toLowerCase()) && !/ly$/i.test(word)

/** The word that may name what the piece is of: the last before what is said to belong to it, as in `strap of the bag`. */
const headOf = (piece: string): string | null => {
  const words = wordsOf(piece)
  const first = words.findIndex(mayBeThing)
  if (first === -1) return null
  const end = words.findIndex((word, at) => at > first && ofWords.has(word.toLowerCase()))
  return words.slice(first, end === -1 ? undefined : end).findLast(mayBeThing) ?? null
}

/** Whether a thing follows at once, and not what leads on to something else, as in `as new in its box`. */
const opensWithThing = (piece: string): boolean => {
  const next = wordsOf(piece).find((word) => !sayingWords.has(word.toLowerCase()))
  return next !== undefined && mayBeThing(next)
}

const strangerIn = (piece: string, { blueprint, state }: Known): string | null => {
  const head = headOf(piece)
  if (head === null || wholeWords.has(head.toLowerCase()) || colourWords.test(head)) return null
  const names = wordsOf(`${state.model} ${state.name} ${blueprint.name}`).map((word) => word.toLowerCase())
  return names.includes(head.toLowerCase()) || partsIn(piece, blueprint).length > 0 ? null : head
}
