import { partSayingNeeds } from '../../facts/sale-part-words.ts'
import { saleClaims, takenBack, type SaleClaim } from '../../facts/sale-claims.ts'
import { strangerOf } from './claim-subject.ts'
import type { Evidence } from './evidence.ts'
import { judgeClaim } from './judge-claim.ts'
import { judgePartClaim } from './judge-part-claim.ts'
import { notPlaced, type Judged } from './judged.ts'
import { partClaimsIn, type PartClaim } from './part-claims.ts'

/** A claim found in a text: where, in which words, and what the notes say to it. */
export type ClaimMark = Judged & {
  readonly claim: string
  readonly name: string
  /** Places in the text, the end not counted in. */
  readonly from: number
  readonly to: number
  readonly words: string
}

/** Claims that a text makes, in its order; of two that lie over each other the one that says more stands. */
export const claimsIn = (text: string, evidence: Evidence): readonly ClaimMark[] => {
  const first = phraseClaims(text, evidence, (id) => !ofAPart.includes(id), [])
  const parts = partMarks(text, evidence, first)
  const marks = [...first, ...parts]
  return [...marks, ...phraseClaims(text, evidence, (id) => ofAPart.includes(id), marks)].toSorted(
    (a, b) => a.from - b.from,
  )
}

/** What can be said of a part alone as well: the part that is named goes first. */
const ofAPart: readonly string[] = ['working', 'tested', 'serviced', 'cleaned', 'looks']

type Stretch = { readonly from: number; readonly to: number }
const isFree = (marks: readonly Stretch[], { from, to }: Stretch): boolean =>
  !marks.some((mark) => mark.from < to && from < mark.to)

const phraseClaims = (
  text: string,
  evidence: Evidence,
  isMeant: (claim: string) => boolean,
  taken: readonly ClaimMark[],
): readonly ClaimMark[] => {
  const marks: ClaimMark[] = []
  for (const claim of saleClaims.filter(({ id }) => isMeant(id))) {
    for (const match of text.matchAll(new RegExp(claim.pattern.source, withAll(claim.pattern.flags)))) {
      const [from, to] = [match.index, match.index + match[0].length]
      if (!isFree([...taken, ...marks], { from, to }) || isTakenBack(claim, text, from)) continue
      const place = { from, to, isOfLooks: claim.id === 'looks', others: taken }
      const stranger = ofAPart.includes(claim.id) ? strangerOf(text, place, evidence) : null
      const judged = stranger === null ? judgeClaim(evidence, claim, match) : notPlaced(whyNotPlaced(stranger))
      marks.push({ claim: claim.id, name: claim.name, from, to, words: match[0], ...judged })
    }
  }
  return marks
}

const whyNotPlaced = (word: string): string =>
  `“${word}” is no part that the bench knows, and not the machine: no note can be held against it. Look at it yourself, or say what is so of the machine or of a part by its name`

/** What is said of parts; where a mark stands already, the part alone or what is said of it is marked. */
const partMarks = (text: string, evidence: Evidence, taken: readonly ClaimMark[]): readonly ClaimMark[] => {
  const marks: ClaimMark[] = []
  const claims = partClaimsIn(text, evidence.blueprint, taken).toSorted((a, b) => a.to - a.from - (b.to - b.from))
  for (const one of claims) {
    const place = [one, one.part, one.at].find((each) => isFree([...taken, ...marks], each))
    if (place === undefined) continue
    const { from, to } = place
    const id = `${one.saying}-${one.part.word}`
    marks.push({
      claim: id,
      name: nameOf(one),
      from,
      to,
      words: text.slice(from, to),
      ...judgePartClaim(evidence, one),
    })
  }
  return marks
}

const nameOf = ({ part, saying }: PartClaim): string =>
  `${saying.replace('-', ' ')}: ${[...part.of, part.word].join(' ').replaceAll('-', ' ')}`

/** Whether a claim is of a part, by its id. */
export const isOfAPart = (claim: string): boolean =>
  Object.keys(partSayingNeeds).some((saying) => claim.startsWith(`${saying}-`)) || ofAPart.includes(claim)

const withAll = (flags: string): string => (flags.includes('g') ? flags : `${flags}g`)

/** Claims of figures and of the plate stand whatever goes before them. */
const figures: readonly string[] = ['power', 'voltage', 'suction-figure', 'class-two', 'earthed']

/** `not tested`, `untested`, `no warranty`: a claim that is taken back is none. */
const isTakenBack = ({ id }: SaleClaim, text: string, from: number): boolean =>
  !figures.includes(id) && takenBack.test(text.slice(0, from))
