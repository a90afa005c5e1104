import type { ReactNode } from 'react'
import type { ProofView } from '../../machine/proof/proof-view.ts'
import type { ExitMove } from '../../machine/view.ts'
import { useProof } from '../proof/use-proof.ts'
import { Link } from '../router.tsx'
import { useSheet } from './sheet.ts'

/** Whether the checks after repair prove it fit to sell, with the verdict as it is shown; nothing for other exits. */
export const useSafeToSell = (move: ExitMove): { readonly isFit: boolean; readonly verdict: ReactNode } => {
  const { bench, document, blueprint } = useSheet()
  const asked = move.exit === 'sell-working'
  const { proof, stale, error } = useProof(asked ? document : undefined, blueprint)
  if (!asked) return { isFit: false, verdict: null }
  const link = (
    <Link to={{ kind: 'proof', bench, id: document.state.id }} className="on-its-own">
      Is it safe to sell?
    </Link>
  )
  if (proof === null) {
    const said = error === null ? 'Working out whether it is safe to sell …' : `Its proof failed: ${error.message}`
    return { isFit: false, verdict: <p className="quiet">{said}</p> }
  }
  const { kind, title, sentence } = proof.verdict
  const isFit = kind === 'fit' && proof.rules.isNoted
  return {
    isFit: isFit && !stale,
    verdict: (
      <div className={isFit ? 'safe-to-sell' : 'caution'} role="group" aria-label="Is it safe to sell?">
        <p>
          <strong>{title}.</strong> {kind === 'not-proven' ? openText(proof) : sentence}
        </p>
        <p>{link}</p>
      </div>
    ),
  }
}

/** The checks that are open, in one line: the page of the proof says what each wants. */
const openText = ({ steps, verdict }: ProofView): string => {
  const open = steps.filter(({ id }) => verdict.toProve.some(({ step }) => step === id))
  return `Still open: ${open.map(({ title }) => title.toLowerCase()).join(', ')}.`
}
