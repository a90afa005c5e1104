import { Fold } from '../parts/fold.tsx'
import { useProofSheet } from './proof-sheet.ts'

/** What the law of the region asks of who sells a used machine: its name, two sentences, and that local rules decide. */
export const SellingDuties = () => {
  const { regionName, law, sentences, sources } = useProofSheet().proof.duties
  return (
    <section className="panel" aria-label="Selling it second-hand">
      <h2>Selling it second-hand</h2>
      <Fold title={`What the law asks in ${regionName}`}>
        <p>
          <strong>{law}.</strong> {sentences.join(' ')}
        </p>
        <p className="quiet">Information, not advice.</p>
        <ul>
          {sources.map((source) => (
            <li key={source}>{source}</li>
          ))}
        </ul>
      </Fold>
    </section>
  )
}
