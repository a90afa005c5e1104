import { inSentence } from '../../base/in-sentence.ts'
import { listText } from '../words.ts'
import type { Ledger, Lot } from './fixing-ledger.ts'
import { fixingsWords, leftOverText, notClosedText } from './fixing-words.ts'
import { pieceKey, type Piece } from './pieces.ts'
import type { StayingLedger } from './staying-ledger.ts'

/** What is kept in one place, and whose it is. */
export type KeptInPlace = { readonly place: string; readonly lots: readonly Lot[] }

/** The fixings by the place they are kept in, in the order in which the places were first used; nowhere named is the empty place. */
export const keptByPlace = (lots: readonly Lot[]): readonly KeptInPlace[] =>
  [...new Set(lots.map(({ place }) => place))].map((place) => ({
    place,
    lots: lots.filter((lot) => lot.place === place),
  }))

type Away = { readonly piece: Piece }

/** What is to be seen to as a machine is closed up or sold: parts that are out, fixings left over, catches that are not closed. */
export const stripWarnings = (
  { leftOver }: Ledger,
  { notClosed }: StayingLedger,
  away: readonly Away[],
): readonly string[] => {
  const out = away.filter(({ piece }) => piece.kind === 'part').map(({ piece }) => inSentence(piece.name))
  return [
    ...(out.length === 0
      ? []
      : [`The ${listText(out)} ${out.length === 1 ? 'is' : 'are'} out of the machine and not back.`]),
    ...(leftOver.length === 0 ? [] : [`${leftOverText(leftOver)}.`]),
    ...byPiece(notClosed).map(([piece, lots]) => `${notClosedText(lots, inSentence(piece.name))}.`),
  ]
}

/** Covers that are off, in a sentence; empty where all are on. */
export const coversOffText = (away: readonly Away[]): string => {
  const off = away.filter(({ piece }) => piece.kind === 'cover').map(({ piece }) => inSentence(piece.name))
  return off.length === 0 ? '' : `Not closed up: ${listText(off)}.`
}

/** What the count does not cover: pieces that came away uncounted, and fixings of pieces that went back so. */
export const notCounted = (
  { unknown }: Ledger,
  staying: StayingLedger,
  uncounted: readonly Piece[],
): readonly string[] => {
  const names = uncounted.map(({ name }) => inSentence(name))
  const back = ({ name }: Piece): string => `The ${inSentence(name)} went back without a count`
  return [
    ...(names.length === 0 ? [] : [`Nobody counted what held the ${listText(names)}.`]),
    ...byPiece(unknown).map(([piece, lots]) => `${back(piece)}: ${fixingsWords(lots)} may be in it or not.`),
    ...byPiece(staying.unknown).map(([piece, lots]) => `${back(piece)}: ${fixingsWords(lots)} may be closed or not.`),
  ]
}

/** Lots by their piece, in the order in which the pieces first come. */
const byPiece = (lots: readonly Lot[]): readonly (readonly [Piece, readonly Lot[]])[] =>
  [...new Map(lots.map((lot) => [pieceKey(lot.piece), lot.piece])).entries()].map(([key, piece]) => [
    piece,
    lots.filter((lot) => pieceKey(lot.piece) === key),
  ])
