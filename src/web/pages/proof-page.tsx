import { useEffect } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import { Loading } from '../parts/loading.tsx'
import { say } from '../parts/live.tsx'
import { ProofRules } from '../proof/proof-rules.tsx'
import { ProofSheetContext, useProofSheet } from '../proof/proof-sheet.ts'
import { ProofVerdict } from '../proof/proof-verdict.tsx'
import { ProofVoided } from '../proof/proof-voided.tsx'
import { ReplacementLead } from '../proof/replacement-lead.tsx'
import { SafetyRecord } from '../proof/safety-record.tsx'
import { SellingDuties } from '../proof/selling-duties.tsx'
import { Steps } from '../proof/steps.tsx'
import { NotReady } from '../strip/not-ready.tsx'
import { useProof } from '../proof/use-proof.ts'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import '../style/proof.css'

/** Is it safe to sell: the region's checks, what each reading proves, and the record to print. */
export const ProofPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const { proof, stale, error: proofError } = useProof(document, blueprint)
  if (document === undefined || blueprint === undefined || proof === null)
    return (
      <div className="sheet">
        <PageTitle windowTitle="Is it safe to sell?">Is it safe to sell?</PageTitle>
        <Loading what="its proof" error={error ?? blueprintError ?? proofError} />
      </div>
    )
  return (
    <ProofSheetContext value={{ bench, document, blueprint, proof, stale }}>
      <Sheet />
    </ProofSheetContext>
  )
}

const Sheet = () => {
  const { bench, document, blueprint } = useProofSheet()
  const { id, name } = document.state
  useSaidVerdict()
  return (
    <div className="sheet machine proof-sheet">
      <div className="machine-title">
        <PageTitle windowTitle={`${name}: is it safe to sell?`}>{name}: is it safe to sell?</PageTitle>
        <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
          Back to the machine
        </Link>
        <ProofVerdict />
        <NotReady bench={bench} document={document} blueprint={blueprint} />
        <ProofVoided />
      </div>
      <div className="machine-left">
        <ProofRules />
        <Steps />
      </div>
      <div className="machine-right">
        <ReplacementLead />
        <SellingDuties />
        <SafetyRecord />
      </div>
    </div>
  )
}

/** Says the verdict when it changes, for those who do not see it change. */
const useSaidVerdict = (): void => {
  const { proof, stale } = useProofSheet()
  const text = stale ? null : `${proof.verdict.title}.`
  useEffect(() => {
    if (text !== null) say(text)
  }, [text])
}
