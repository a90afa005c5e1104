import { Button } from 'react-aria-components/Button'
import { inSentence } from '../../base/in-sentence.ts'
import type { ProofView } from '../../machine/proof/proof-view.ts'
import { nextStep } from './next-step.ts'
import { useProofSheet } from './proof-sheet.ts'

/** Fit, not fit or not proven, large, with what is still to be proved and the instruments that could. */
export const ProofVerdict = () => {
  const { proof, stale } = useProofSheet()
  const { verdict } = proof
  return (
    <section className={`proof-verdict ${verdict.kind}`} aria-label="Verdict" aria-busy={stale}>
      <p className="proof-verdict-title">{verdict.title}</p>
      {verdict.kind === 'not-proven' ? <StillOpen proof={proof} /> : <p>{verdict.sentence}</p>}
      {verdict.kind === 'not-proven' || proof.recall.state === 'in-a-list' ? null : <p>{proof.recall.sentence}</p>}
      <GoToNext />
    </section>
  )
}

/** On a phone the next check lies a screen or two below: one tap leads to it. */
const GoToNext = () => {
  const { document: machine, proof } = useProofSheet()
  const next = proof.steps.find(({ id }) => id === nextStep(proof))
  if (next === undefined || machine.state.left !== null || machine.state.off.length > 0) return null
  const go = (): void => {
    const head = document.querySelector<HTMLElement>(`#step-${next.id} .fold-head`)
    head?.scrollIntoView({ block: 'start' })
    head?.focus({ preventScroll: true })
  }
  return (
    <Button className="key" onPress={go}>
      Go to: {inSentence(next.title)}
    </Button>
  )
}

/** The sentence of the verdict taken apart: one line for each check that is open. */
const StillOpen = ({ proof: { rules, verdict, recall } }: { readonly proof: ProofView }) => (
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
      <li>{recall.sentence}</li>
    </ul>
    <p>Local rules and a competent person decide.</p>
  </>
)
