import { updateBelief, type BeliefEvent } from '../../engines/belief/index.ts'
import { sellerClaims, type ClaimId } from '../../facts/seller-claims.ts'
import { sellerQuestions } from '../../facts/seller-questions.ts'
import type { SellerQuestion } from '../../facts/seller-question.ts'
import type { MachineModel } from '../model.ts'
import { answerEvent, unsure } from './answer-chances.ts'
import type { SellerAnswer } from './advert.ts'
import { claimEvent } from './claims.ts'

/** What a seller claimed and answered. */
export type Told = { readonly claims?: readonly ClaimId[]; readonly answers?: readonly SellerAnswer[] }

/** A piece of evidence from the seller, with the words for it. */
export type ToldPiece = { readonly text: string; readonly event: BeliefEvent & { readonly kind: 'reading' } }

/**
 * What the seller claimed and then answered, as evidence after the complaint and before anything was seen on the machine.
 * Claims and answers that say nothing of this blueprint are left out. A claim is weighed on what is believed before it.
 */
export const toldPieces = (
  model: MachineModel,
  prior: readonly number[],
  { claims = [], answers = [] }: Told,
): readonly ToldPiece[] => {
  const believed = (pieces: readonly ToldPiece[]): ArrayLike<number> =>
    updateBelief({ format: 'thrum-belief-1', prior: [...prior], history: pieces.map(({ event }) => event) }).probability
  const claimed = claims.reduce<readonly ToldPiece[]>((pieces, claim) => {
    const event = claimEvent(model, believed(pieces), claim)
    return event?.kind === 'reading'
      ? [...pieces, { text: `The seller said: ${sellerClaims[claim].name}`, event }]
      : pieces
  }, [])
  const answered = answers.flatMap(({ question, answer }) => {
    const asked = sellerQuestions.find(({ id }) => id === question)
    if (asked === undefined || answer === unsure || asked.answers[answer] === undefined) return []
    const event = answerEvent(model, asked, answer)
    return event.kind === 'reading' ? [{ text: `${saidBy[asked.how]}: ${asked.answers[answer]}`, event }] : []
  })
  return [...claimed, ...answered]
}

const saidBy: Readonly<Record<SellerQuestion['how'], string>> = {
  ask: 'The seller said',
  photo: 'A photograph showed',
  look: 'Seen at the seller’s',
}
