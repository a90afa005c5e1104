import { Fold } from '../parts/fold.tsx'
import { capital, sentence } from '../words.ts'
import { kindWords } from './finding-list.tsx'
import { useProofSheet } from './proof-sheet.ts'

/** A proof that was made void: what did it, and what no longer counts. Once it is proved again, one fold of history. */
export const ProofVoided = () => {
  const { document, proof } = useProofSheet()
  const { voided, steps } = proof
  if (voided === null) return null
  const by = document.lines.find(({ id }) => id === voided.note)?.text ?? 'a later note'
  // The alarm stands until each check that lost a finding has been made again.
  const again = steps.filter(({ id }) => voided.findings.some(({ step }) => step === id))
  if (again.every(({ findings, asked }) => findings.length > 0 || asked === 'not-applicable'))
    return (
      <Fold title="Found earlier, and counts no longer">
        <p>Made void by: {sentence(by)} What stands at the checks below was found since.</p>
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
    {useProofSheet().proof.voided?.findings.map(({ note, where, read, kind }, at) => (
      <li key={note ?? at}>
        {capital(where)}: {read}, {kindWords[kind]}
      </li>
    ))}
  </ul>
)
