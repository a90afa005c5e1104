import type { ProofStepView } from '../../machine/proof/proof-view.ts'
import { Fold } from '../parts/fold.tsx'
import { capital, sentence } from '../words.ts'
import { useProofSheet } from './proof-sheet.ts'

/** What must be shown, where that comes from, and what can prove it. */
export const StepLimits = ({ step }: { readonly step: ProofStepView }) => {
  const { limits, provenBy, sources } = step
  return (
    <>
      {limits.length === 0 ? null : (
        <dl className="expected proof-limits" aria-label="Limits">
          {limits.map(({ quantity, name, text, testVoltageV }) => (
            <div key={quantity}>
              <dt>{capital(name)}</dt>
              <dd>
                {text ?? 'say first what lead it has'}
                {text === null || testVoltageV === null ? null : `, tested at ${testVoltageV} V`}
              </dd>
            </div>
          ))}
        </dl>
      )}
      {limits.length === 0 ? null : <CanProve provenBy={provenBy} />}
      <Fold title={limits.length === 0 ? 'What this rests on' : 'Why this limit'}>
        {limits.map(({ quantity, because }) =>
          because === null ? null : <p key={quantity}>{sentence(capital(because))}</p>,
        )}
        <ul>
          {sources.map((source) => (
            <li key={source}>{source}</li>
          ))}
        </ul>
      </Fold>
    </>
  )
}

const CanProve = ({ provenBy }: { readonly provenBy: readonly string[] }) => {
  const { lead } = useProofSheet().proof
  if (provenBy.length > 0) return <p>Can be proved with: {provenBy.join('; ')}.</p>
  return lead === null ? null : (
    <p>No instrument listed here can prove it. One of your own may: give its specification.</p>
  )
}
