import { useEffect, useRef } from 'react'
import { Link } from '../router.tsx'
import { nextStep } from './next-step.ts'
import { useProofSheet } from './proof-sheet.ts'
import { RecallCard } from './recall-card.tsx'
import { StepCard } from './step-card.tsx'

/** The checks after repair in the order of the trade; the next open one is unfolded. */
export const Steps = () => {
  const { proof, stale, document } = useProofSheet()
  const next = nextStep(proof)
  useFocusOnNext(next)
  return (
    <section className="panel" aria-label="The checks" aria-busy={stale}>
      <h2>The checks, in their order</h2>
      {document.state.off.length > 0 ? <CoversOff /> : null}
      {proof.steps.map((step) => (
        <StepCard key={step.id} step={step} isNext={step.id === next} />
      ))}
      <RecallCard />
    </section>
  )
}

/** The checks are made on the closed machine; nothing is entered until it is. */
const CoversOff = () => {
  const { bench, document, blueprint } = useProofSheet()
  const { id, off } = document.state
  const names = off.map((cover) => blueprint.covers.find((one) => one.id === cover)?.name ?? cover)
  return (
    <div className="caution" role="group" aria-label="Covers are off">
      <p>These checks are made on the closed machine. Covers to put back first: {names.join(', ')}.</p>
      <p>
        <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
          Note them on the machine’s page
        </Link>
      </p>
    </div>
  )
}

/** Entering a finding folds its check away; who was at its keys is then led to the next one. */
const useFocusOnNext = (next: string | null): void => {
  const before = useRef(next)
  useEffect(() => {
    if (before.current === next) return
    before.current = next
    if (document.activeElement !== document.body || next === null) return
    document.querySelector<HTMLElement>(`#step-${next} .fold-head`)?.focus()
  }, [next])
}
