import { useState } from 'react'
import { Fold } from '../parts/fold.tsx'
import { capital } from '../words.ts'
import { useProofSheet } from './proof-sheet.ts'
import { RulesForm } from './rules-form.tsx'

/** By which rules the machine is proved: region and edition, the lead it has, and what decides the checks. */
export const ProofRules = () => {
  const { document, proof, stale } = useProofSheet()
  const { rules, lead, machine } = proof
  // Once they are noted, the form is folded away: what holds stands above it.
  const [noted, setNoted] = useState(0)
  return (
    <section className="panel" aria-label="By which rules" aria-busy={stale}>
      <h2>By which rules</h2>
      <dl className="account proof-rules">
        <div>
          <dt>Region</dt>
          <dd>{capital(rules.regionName)}</dd>
        </div>
        <div>
          <dt>Edition</dt>
          <dd>
            {rules.name}, {rules.edition}
          </dd>
        </div>
        <div>
          <dt>Lead</dt>
          <dd>
            {lead === null ? 'not known yet' : lead.text}
            {lead === null || lead.isNoted ? null : (
              <span className="quiet">, as its blueprint has it: measure yours</span>
            )}
          </dd>
        </div>
      </dl>
      {machine.map((text) => (
        <p key={text} className="quiet">
          {text}
        </p>
      ))}
      {rules.isNoted ? null : (
        <p className="quiet">Taken from the settings. The first finding notes that it is judged by these.</p>
      )}
      {document.state.left === null ? (
        <Fold key={noted} title="Other rules, or another lead">
          <RulesForm onDone={() => setNoted((times) => times + 1)} />
        </Fold>
      ) : null}
    </section>
  )
}
