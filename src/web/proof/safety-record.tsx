import { useSettings } from '../queries.ts'
import { Link } from '../router.tsx'
import { useProofSheet } from './proof-sheet.ts'

/** The record and the label, to print: they say what is proved and what is not. */
export const SafetyRecord = () => {
  const { bench, document, proof } = useProofSheet()
  const { data: settings } = useSettings()
  const address = `/api/bench/${bench}/machines/${encodeURIComponent(document.state.id)}`
  return (
    <section className="panel" aria-label="Safety record to print">
      <h2>Safety record to print</h2>
      <p>
        Machine, rules, instruments, readings with their limits and uncertainty, and the verdict as it stands now:{' '}
        <strong>{proof.verdict.title.toLowerCase()}</strong>.
      </p>
      {settings === undefined || settings.checkedBy !== '' ? null : (
        <p>
          It has no name on it yet.{' '}
          <Link to={{ kind: 'settings' }} className="on-its-own">
            Write yours in the settings
          </Link>
        </p>
      )}
      {proof.verdict.kind !== 'not-proven' || document.state.left !== null ? null : (
        <p>
          To sell it working all the same, give your reason where the sale is noted, on{' '}
          <Link to={{ kind: 'machine', bench, id: document.state.id }}>the machine’s page</Link>: it is printed here.
        </p>
      )}
      <p className="proof-print">
        <a className="on-its-own" href={`${address}/record.pdf`}>
          Safety record (PDF)
        </a>
        <a className="on-its-own" href={`${address}/label.pdf`}>
          Label for the machine (PDF)
        </a>
      </p>
    </section>
  )
}
