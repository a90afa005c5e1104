import { Button } from 'react-aria-components/Button'
import type { Blueprint } from '../../blueprint/schema.ts'
import { complaintsOf } from '../../blueprint/entry.ts'
import { complaintIds, complaints, type Complaint } from '../../facts/complaints.ts'
import { claimIds, sellerClaims, type ClaimId } from '../../facts/seller-claims.ts'
import type { BuyingView } from '../../machine/buying/index.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { capital } from '../words.ts'
import type { BuyDraft } from './draft.ts'

type SaidProps = {
  readonly draft: BuyDraft
  readonly change: (part: Partial<BuyDraft>) => void
  readonly blueprint: Blueprint | undefined
  readonly understood: BuyingView['understood'] | null
}

/** The seller's words, and what was understood of them: each a button that takes it away, the rest one tap further. */
export const SaidFields = ({ draft, change, blueprint, understood }: SaidProps) => {
  const fitting = blueprint === undefined ? complaintIds : complaintsOf(blueprint)
  const said = draft.complaints ?? understood?.complaints ?? []
  const claimed = draft.claims ?? understood?.claims ?? []
  const overruled = draft.complaints !== null || draft.claims !== null
  const chosen: readonly Mark[] = [...said, ...claimed]
  const all = [
    ...fitting.map((id) => ({ id: id, name: complaints[id] })),
    ...claimIds.map((id) => ({ id: id, name: capital(sellerClaims[id].name) })),
  ]
  const take = (marks: readonly Mark[]): void =>
    change({ complaints: complaintIds.filter((id) => marks.includes(id)), claims: claimIds.filter((id) => marks.includes(id)) }) // prettier-ignore
  return (
    <>
      <Field
        label="What the seller says"
        value={draft.words}
        onChange={(words) => change({ words })}
        long
        {...(draft.words === ''
          ? { hint: 'As the advert has it: “just stopped”, “lost suction”, “spares or repair” …' }
          : {})}
      />
      {chosen.length === 0 ? null : (
        <Chips
          label="Understood. Tap what is wrong to take it out."
          options={all.filter(({ id }) => chosen.includes(id))}
          chosen={chosen}
          onChange={take}
        />
      )}
      {understood === null || understood.remark === null ? null : <p className="hint">{understood.remark}</p>}
      {overruled ? (
        <Button className="plain" onPress={() => change({ complaints: null, claims: null })}>
          Go by the words again
        </Button>
      ) : null}
      <Fold title="Say it by hand: what it does wrong, what is claimed">
        <Chips label="As many as hold" options={all} chosen={chosen} onChange={take} />
      </Fold>
    </>
  )
}

type Mark = Complaint | ClaimId
