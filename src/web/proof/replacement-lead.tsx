import { useState } from 'react'
import { quantityFromText } from '../../base/units.ts'
import type { ListedCable } from '../../engines/limits/index.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { CableList } from './cable-list.tsx'
import { CopperCheck } from './copper-check.tsx'
import { storedCables, storeCables } from './cables.ts'
import { LeadAnswer } from './lead-answer.tsx'
import { useProofSheet } from './proof-sheet.ts'
import { useLead } from './use-lead.ts'

/** Length in, out comes the lead that the machine needs, and whether a cable at hand would do. */
export const ReplacementLead = () => (
  <section className="panel" aria-label="Lead, plug and fuse">
    <h2>Lead, plug and fuse</h2>
    <Fold title="Replacement lead" className="proof-lead">
      <LeadBody />
    </Fold>
    <Seized />
  </section>
)

const LeadBody = () => {
  const { proof } = useProofSheet()
  const [length, setLength] = useState(proof.lead === null ? '' : String(proof.lead.lengthM))
  const [cables, setCables] = useState(storedCables)
  const typed = quantityFromText(length, 'lengthM', 'lengthM')
  const { lead, stale } = useLead(typed.kind === 'ok' ? typed.value : null, cables)
  const list = (next: readonly ListedCable[]): void => {
    storeCables(next)
    setCables(next)
  }
  const problems = typed.kind === 'refused' ? typed.problems : lead?.kind === 'refused' ? lead.problems : []
  const choice = lead?.kind === 'ok' ? lead.value : null
  return (
    <div aria-busy={stale}>
      <Field
        label="Length of the new lead"
        value={length}
        onChange={setLength}
        unit="m"
        inputMode="decimal"
        hint="From plug to machine."
        problems={length.trim() === '' ? [] : problemsAt(problems, 'lengthM')}
      />
      <Problems problems={problemsElsewhere(problems, ['lengthM'])} />
      {choice === null ? null : <LeadAnswer lead={choice} />}
      <CableList cables={cables} onCables={list} fits={choice?.cables ?? []} />
      <Fold title="Is a cable’s copper what it claims?">
        <CopperCheck />
      </Fold>
    </div>
  )
}

/** A motor that cannot turn, and a fuse that may let it burn. */
const Seized = () => {
  const { seized } = useProofSheet().proof
  if (seized === null) return null
  return (
    <div className="caution" role="group" aria-label="A motor that cannot turn">
      <p>
        <strong>A motor that cannot turn.</strong> {seized} If it hums and does not turn, unplug it at once.
      </p>
    </div>
  )
}
