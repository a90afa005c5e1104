import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { newId } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { Problems } from '../parts/problems.tsx'
import { goTo } from '../router.tsx'
import { keepNewAdvert, writeAdvert } from './api.ts'
import type { BuyDraft } from './draft.ts'
import { rememberKind } from './last-kinds.ts'
import { advertsKey } from './use-adverts.ts'
import type { WeighedAdvert } from '../engine-protocol.ts'

type KeepProps = {
  readonly draft: BuyDraft
  readonly change: (part: Partial<BuyDraft>) => void
  /** Null until the answer has settled. */
  readonly weighed: WeighedAdvert | null
  readonly kindName: string
  readonly clear: () => void
}

/** Keeps the advert with what was reckoned of it. Where the bench does not answer, that is said, and what is typed stays here. */
export const KeepAdvert = ({ draft, change, weighed, kindName, clear }: KeepProps) => {
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const client = useQueryClient()
  const keep = async (): Promise<void> => {
    if (weighed === null) return
    setBusy(true)
    const id = draft.kept?.id ?? (draft.id === '' ? newId('advert') : draft.id)
    if (draft.kept === null) change({ id })
    const name = draft.name.trim() === '' ? kindName : draft.name.trim()
    const content = { kind: 'weighed' as const, name, advert: weighed.advert, guess: weighed.guess }
    const answer = await (draft.kept === null
      ? keepNewAdvert(id, content)
      : writeAdvert(draft.kept.id, draft.kept.version, content))
    setBusy(false)
    if (answer.kind === 'refused') return setProblems(answer.problems)
    rememberKind(weighed.advert.blueprint)
    await client.invalidateQueries({ queryKey: advertsKey('own') })
    clear()
    goTo({ kind: 'advert', bench: 'own', id })
  }
  const isAway = problems.some(({ code }) => code === 'no-answer')
  return (
    <section aria-label="Keep it">
      <h2>Keep it, to buy it or to pass it by</h2>
      <Field
        label="Name"
        value={draft.name}
        onChange={(name) => change({ name })}
        hint={`Any words you will know it by. Left empty: ${kindName}.`}
      />
      {isAway ? (
        <div className="problems" role="alert">
          <p>
            Not kept yet: the bench did not answer. What you typed stays on this device; keep it when there is signal.
          </p>
        </div>
      ) : (
        <Problems problems={problems} />
      )}
      <Button className="key enter" isDisabled={busy || weighed === null} onPress={() => void keep()}>
        {weighed === null
          ? 'Keep this advert (still settling)'
          : draft.kept === null
            ? 'Keep this advert'
            : 'Keep it as weighed anew'}
      </Button>
    </section>
  )
}
