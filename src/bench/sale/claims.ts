import { saleClaims, takenBack, type SaleClaim } from '../../facts/sale-claims.ts'
import type { Evidence } from './evidence.ts'
import { judgeClaim } from './judge-claim.ts'
import type { Judged } from './judged.ts'

/** A claim found in a text: where, in which words, and what the notes say to it. */
export type ClaimMark = Judged & {
  readonly claim: string
  readonly name: string
  /** Places in the text, the end not counted in. */
  readonly from: number
  readonly to: number
  readonly words: string
}

/** Claims that a text makes, in its order; of two that lie over each other the one that comes first in the table stands. */
export const claimsIn = (text: string, evidence: Evidence): readonly ClaimMark[] => {
  const marks: ClaimMark[] = []
  for (const claim of saleClaims) {
    for (const match of text.matchAll(new RegExp(claim.pattern.source, withAll(claim.pattern.flags)))) {
      const from = match.index
      const to = from + match[0].length
      if (marks.some((mark) => mark.from < to && from < mark.to) || isTakenBack(claim, text, from)) continue
      marks.push({
        claim: claim.id,
        name: claim.name,
        from,
        to,
        words: match[0],
        ...judgeClaim(evidence, claim, match),
      })
    }
  }
  return marks.sort((a, b) => a.from - b.from)
}

const withAll = (flags: string): string => (flags.includes('g') ? flags : `${flags}g`)

/** Claims of figures and of the plate stand whatever goes before them. */
const figures: readonly string[] = ['power', 'voltage', 'suction-figure', 'class-two', 'earthed']

/** `not tested`, `untested`, `no warranty`: a claim that is taken back is none. */
const isTakenBack = ({ id }: SaleClaim, text: string, from: number): boolean =>
  !figures.includes(id) && takenBack.test(text.slice(0, from))
