import { useState } from 'react'
import type { ProofStepView } from '../../machine/proof/proof-view.ts'
import { Fold } from '../parts/fold.tsx'
import { Link } from '../router.tsx'
import { sentence } from '../words.ts'
import { FindingList } from './finding-list.tsx'
import { LookDrawings } from './look-drawings.tsx'
import { LookEntry } from './look-entry.tsx'
import { useProofSheet } from './proof-sheet.ts'
import { ReadingEntry } from './reading-entry.tsx'
import { firstDraft } from './reading-draft.ts'
import { StepHow } from './step-how.tsx'
import { StepLimits } from './step-limits.tsx'

/** Checks in which a look or a try is what counts; the others are measured. */
const lookedAt: readonly ProofStepView['id'][] = ['visual', 'polarity', 'run']

type StepProps = { readonly step: ProofStepView; readonly isNext: boolean }

/** One check as a job card: how it stands, what to do, what it must show, the place to enter it, and what was found. */
export const StepCard = ({ step, isNext }: StepProps) => {
  const { id, title, asked, why, findings } = step
  if (asked === 'not-applicable')
    return (
      <section id={`step-${id}`} className="proof-step not-applicable" aria-label={title}>
        <p className="proof-step-head">
          <StepTitle step={step} />
        </p>
        <p className="quiet">{why === null ? null : sentence(why)}</p>
      </section>
    )
  return (
    <section id={`step-${id}`} className={isNext ? 'proof-step next' : 'proof-step'} aria-label={title}>
      <FoldedStep
        // Other rules may ask for something else to be measured: what was set up for the old is then none of the new.
        key={step.limits.map(({ quantity, testVoltageV }) => `${quantity} ${testVoltageV}`).join()}
        step={step}
        isNext={isNext}
      />
      {step.state === 'failed' ? <WhatAfterFailing /> : null}
      <FindingList findings={findings} />
    </section>
  )
}

const StepTitle = ({ step: { title, state, stateText, asked } }: { readonly step: ProofStepView }) => (
  <>
    <span className="proof-step-title">{title}</span>{' '}
    <span className={`proof-step-state ${state}`}>
      {state === 'not-done' && asked === 'optional' ? 'not asked for' : stateText}
    </span>
  </>
)

/** What is being typed is kept here, above the fold, so that folding it away loses nothing. */
const FoldedStep = ({ step, isNext }: StepProps) => {
  const { document } = useProofSheet()
  const [words, setWords] = useState('')
  const [draft, setDraft] = useState(() => firstDraft(step))
  const mayEnter = document.state.left === null && document.state.off.length === 0
  const isLook = lookedAt.includes(step.id)
  return (
    <Fold key={String(isNext)} startOpen={isNext} title={<StepTitle step={step} />}>
      {step.why === null ? null : <p className="move-why">{sentence(step.why)}</p>}
      <StepHow step={step} />
      {step.id === 'visual' ? (
        <Fold title="Drawn: what to look for">
          <LookDrawings />
        </Fold>
      ) : null}
      <StepLimits step={step} />
      {mayEnter && isLook ? <LookEntry step={step} words={words} onWords={setWords} /> : null}
      {!isLook && step.limits.length === 0 ? (
        <p>The chosen rules have no limit for it, so no reading is judged.</p>
      ) : null}
      {mayEnter && step.limits.length > 0 ? <ReadingEntry step={step} draft={draft} onDraft={setDraft} /> : null}
    </Fold>
  )
}

/** A failed finding counts until a repair makes it void or it is struck out: a good one after it does not undo it. */
const WhatAfterFailing = () => {
  const { bench, document } = useProofSheet()
  return (
    <div className="warning">
      <p>
        Not to be switched on or sold so. Mend it and note the repair on the machine’s page: what was found before then
        counts no longer, and the checks are made again. If it was a slip, strike it out. A good finding alone does not
        undo it.
      </p>
      {document.state.left === null ? (
        <Link to={{ kind: 'machine', bench, id: document.state.id }} className="on-its-own">
          Note the repair
        </Link>
      ) : null}
    </div>
  )
}
