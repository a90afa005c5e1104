import { inSentence } from '../../base/in-sentence.ts'
import { listText } from '../words.ts'
import type { Ledger, Lot } from './fixing-ledger.ts'
import { fixingsWords, leftOverText } from './fixing-words.ts'
import { pieceKey, type Piece } from './pieces.ts'

/** What is kept in one place, and whose it is. */
export type KeptInPlace = { readonly place: string; readonly lots: readonly Lot[] }

/** The fixings by the place they are kept in, in the order in which the places were first used; nowhere named is the empty place. */
export const keptByPlace = (lots: readonly Lot[]): readonly KeptInPlace[] =>
  [...new Set(lots.map(({ place }) => place))].map((place) => ({
    place,
    lots: lots.filter((lot) => lot.place === place),
  }))

type Away = { readonly piece: Piece }

/** What is to be seen to as a machine is closed up or sold: parts that are out, and fixings left over. */
export const stripWarnings = ({ leftOver }: Ledger, away: readonly Away[]): readonly string[] => {
  const out = away.filter(({ piece }) => piece.kind === 'part').map(({ piece }) => inSentence(piece.name))
  return [
    ...(out.length === 0
      ? []
      : [`The ${listText(out)} ${out.length === 1 ? 'is' : 'are'} out of the machine and not back.`]),
    ...(leftOver.length === 0 ? [] : [`${leftOverText(leftOver)}.`]),
  ]
}

/** Covers that are off, in a sentence; empty where all are on. */
export const coversOffText = (away: readonly Away[]): string => {
  const off = away.filter(({ piece }) => piece.kind === 'cover').map(({ piece }) => inSentence(piece.name))
  return off.length === 0 ? '' : `Not closed up: ${listText(off)}.`
}

/** What the count does not cover: pieces that came away uncounted, and fixings of pieces that went back so. */
export const notCounted = (unknown: readonly Lot[], uncounted: readonly Piece[]): readonly string[] => {
  const pieces = [...new Map(unknown.map((lot) => [pieceKey(lot.piece), lot.piece])).values()]
  const names = uncounted.map(({ name }) => inSentence(name))
  return [
    ...(names.length === 0 ? [] : [`Nobody counted what held the ${listText(names)}.`]),
    ...pieces.map((piece) => {
      const lots = unknown.filter((lot) => pieceKey(lot.piece) === pieceKey(piece))
      return `The ${inSentence(piece.name)} went back without a count: ${fixingsWords(lots)} may be in it or not.`
    }),
  ]
}
