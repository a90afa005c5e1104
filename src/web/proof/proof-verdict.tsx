import type { ProofView } from '../../machine/proof/proof-view.ts'
import { useProofSheet } from './proof-sheet.ts'

/** Fit, not fit or not proven, large, with what is still to be proved and the instruments that could. */
export const ProofVerdict = () => {
  const { proof, stale } = useProofSheet()
  const { verdict } = proof
  return (
    <section className={`proof-verdict ${verdict.kind}`} aria-label="Verdict" aria-busy={stale}>
      <p className="proof-verdict-title">{verdict.title}</p>
      {verdict.kind === 'not-proven' ? <StillOpen proof={proof} /> : <p>{verdict.sentence}</p>}
    </section>
  )
}

/** The sentence of the verdict taken apart: one line for each check that is open. */
const StillOpen = ({ proof: { rules, verdict } }: { readonly proof: ProofView }) => (
  <>
    <p>
      Still open by {rules.name} ({rules.edition}):
    </p>
    <ul>
      {verdict.toProve.map(({ step, sentence, instruments }) => (
        <li key={step}>
          {sentence}
          {instruments.length === 0 ? null : (
            <span className="quiet proof-could">Could be proved with: {instruments.join('; ')}.</span>
          )}
        </li>
      ))}
    </ul>
    <p>Local rules and a competent person decide.</p>
  </>
)
