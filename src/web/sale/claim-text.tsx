import type { ReactNode } from 'react'
import type { SectionView } from '../../bench/sale/sheet-view.ts'

type Claim = SectionView['claims'][number]

/** What stands in the text behind a claim: a sign with its words, so that no colour is needed to see it. */
const signs = {
  unsupported: 'no note',
  contradicted: 'notes say otherwise',
  'not-placed': 'of what? look at it',
  'own-words': 'your words',
} as const

/** A text with each claim that the notes do not bear out marked where it stands. */
export const ClaimText = ({ text, claims }: { readonly text: string; readonly claims: readonly Claim[] }) => {
  const pieces: ReactNode[] = []
  let at = 0
  for (const claim of claims) {
    if (claim.verdict === 'supported') continue
    pieces.push(text.slice(at, claim.from))
    pieces.push(
      <mark key={claim.from} className={`claim ${claim.verdict}`}>
        {text.slice(claim.from, claim.to)} <b>({signs[claim.verdict]})</b>
      </mark>,
    )
    at = claim.to
  }
  return (
    <p className="sale-text">
      {pieces}
      {text.slice(at)}
    </p>
  )
}

/** Why each claim is marked, or by which notes it stands. */
export const ClaimList = ({ claims }: { readonly claims: readonly Claim[] }) =>
  claims.length === 0 ? null : (
    <ul className="claims">
      {claims.map((claim) => (
        <li key={claim.from}>
          <b>“{claim.words}”</b>: {verdicts[claim.verdict]}. {claim.why}.
          {claim.notes.length === 0 ? null : (
            <span className="quiet"> {claim.notes.map(({ text }) => text).join(' · ')}</span>
          )}
        </li>
      ))}
    </ul>
  )

const verdicts = {
  supported: 'borne out',
  unsupported: 'no note bears it out',
  contradicted: 'the notes say otherwise',
  'not-placed': 'the check cannot tell what it is said of',
  'own-words': 'in your own words',
} as const
