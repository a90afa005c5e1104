import { Fold } from '../parts/fold.tsx'
import { sentence } from '../words.ts'
import { useProofSheet } from './proof-sheet.ts'

/** A proof that was made void: what did it, and what no longer counts. Once it is proved again, one fold of history. */
export const ProofVoided = () => {
  const { document, proof } = useProofSheet()
  const { voided, verdict } = proof
  if (voided === null) return null
  const by = document.lines.find(({ id }) => id === voided.note)?.text ?? 'a later note'
  if (verdict.kind === 'fit')
    return (
      <Fold title="An earlier proof that was made void">
        <p>Made void by: {sentence(by)}</p>
        <VoidFindings />
      </Fold>
    )
  return (
    <div className="alert danger" role="group" aria-label="The proof was made void">
      <h2>The proof was made void</h2>
      <p>
        <strong>{sentence(by)}</strong>
      </p>
      <p>
        Nobody knows what was moved, so what was found before counts no longer. Close it up and make the checks again.
      </p>
      <Fold title={`${voided.findings.length} that count no longer`}>
        <VoidFindings />
      </Fold>
    </div>
  )
}

const VoidFindings = () => (
  <ul>
    {useProofSheet().proof.voided?.findings.map(({ note, where, read }, at) => (
      <li key={note ?? at}>
        {where}: {read}
      </li>
    ))}
  </ul>
)
