import type { ProofStepView } from '../../machine/proof/proof-view.ts'
import { useProofSheet } from './proof-sheet.ts'

/** How a check is made, and what to look out for: never folded away from the place to enter it. */
export const StepHow = ({ step }: { readonly step: ProofStepView }) => (
  <>
    <div className="caution">
      <ul>
        {step.plugOut ? null : <NotYet step={step} />}
        {step.cautions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
    <ol className="set-up" aria-label={`How: ${step.title}`}>
      {step.plugOut ? <li className="plug-out">Plug out and in sight</li> : null}
      {step.how.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ol>
  </>
)

/** The machine is switched on for this one: the checks with the plug out come first. */
const NotYet = ({ step }: { readonly step: ProofStepView }) => {
  const { steps } = useProofSheet().proof
  const before = steps.slice(0, steps.indexOf(step)).filter(({ plugOut }) => plugOut)
  const failed = before.filter(({ state }) => state === 'failed')
  const open = before.filter(({ asked, state }) => asked === 'required' && state !== 'passed' && state !== 'failed')
  const names = (of: readonly ProofStepView[]): string => of.map(({ title }) => title.toLowerCase()).join(', ')
  return (
    <>
      {failed.length === 0 ? null : (
        <li>
          <strong>Do not switch it on. Failed: {names(failed)}.</strong>
        </li>
      )}
      {open.length === 0 ? null : <li>Not passed yet, and to be done before it is switched on: {names(open)}.</li>}
    </>
  )
}
