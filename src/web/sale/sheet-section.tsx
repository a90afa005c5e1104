import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../../bench/contract.ts'
import type { SectionView } from '../../bench/sale/sheet-view.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { ClaimList, ClaimText } from './claim-text.tsx'

type SectionProps = {
  readonly bench: BenchId
  readonly machine: string
  readonly view: SectionView
  /** Own words that the bench has not looked at yet. */
  readonly onTheWay: string | null
  readonly canEdit: boolean
}

/** A section: its words with their claims, to be put in own words in place, and to be given back to the notes. */
export const SheetSectionPart = ({ bench, machine, view, onTheWay, canEdit }: SectionProps) => {
  const [draft, setDraft] = useState<string | null>(null)
  const { write, busy, problems } = useNotes(bench, machine)
  const edit = useFocusAfterEditing(draft !== null)
  const put = async (text: string): Promise<void> => {
    if (!(await write([{ kind: 'worded', section: view.section, text }]))) return
    setDraft(null)
    say(text === '' ? `${view.name}: as the notes say it` : `${view.name}: in your words`)
  }
  const wrong = view.claims.filter(({ verdict }) => verdict !== 'supported')
  const borneOut = view.claims.filter(({ verdict }) => verdict === 'supported')
  return (
    <section className="panel sale-section" aria-label={view.name}>
      <h2>{view.name}</h2>
      {draft !== null ? (
        <Editor
          name={view.name}
          draft={draft}
          busy={busy}
          onChange={setDraft}
          onPut={() => void put(draft.trim() === view.generated ? '' : draft.trim())}
          onLeave={() => setDraft(null)}
        />
      ) : (
        <>
          {onTheWay === null ? (
            <ClaimText text={view.text} claims={view.claims} />
          ) : (
            <>
              <p className="sale-text">{onTheWay}</p>
              <p className="hint">Its claims are held against the notes once the bench has it.</p>
            </>
          )}
          {onTheWay === null ? <ClaimList claims={wrong} /> : null}
          {onTheWay === null ? <Moved view={view} /> : null}
          <Problems problems={problems} />
          {onTheWay !== null || borneOut.length === 0 ? null : (
            <Fold title={borneOut.length === 1 ? 'One claim, borne out' : `${borneOut.length} claims, borne out`}>
              <ClaimList claims={borneOut} />
            </Fold>
          )}
          {canEdit ? (
            <div className="sale-keys">
              <Button
                ref={edit}
                className="key"
                isDisabled={busy}
                onPress={() => setDraft(onTheWay ?? view.text)}
                aria-label={`Edit: ${view.name}`}
              >
                Edit
              </Button>
              {view.own === null || onTheWay !== null ? null : (
                <Button
                  className="key"
                  isDisabled={busy}
                  onPress={() => void put('')}
                  aria-label={`As the notes say it: ${view.name}`}
                >
                  As the notes say it
                </Button>
              )}
            </div>
          ) : null}
        </>
      )}
    </section>
  )
}

/** Gives the key that opens the words; it has the focus again once they are put or left. */
const useFocusAfterEditing = (isEditing: boolean) => {
  const key = useRef<HTMLButtonElement>(null)
  const was = useRef(isEditing)
  useEffect(() => {
    if (was.current && !isEditing) key.current?.focus()
    was.current = isEditing
  }, [isEditing])
  return key
}

/** Own words stand over facts; where those moved meanwhile, both are shown. */
const Moved = ({ view: { own, generated } }: { readonly view: SectionView }) => {
  if (own === null) return null
  if (own.was === null)
    return (
      <Fold title={`In your words since ${own.on}; what the notes say`}>
        <p className="sale-text">{generated}</p>
      </Fold>
    )
  return (
    <div className="sale-moved">
      <p>
        <b>The notes say something else since you wrote this on {own.on}.</b> Look whether it still holds.
      </p>
      <h3>What they say now</h3>
      <p className="sale-text">{generated}</p>
      <h3>What they said then</h3>
      <p className="sale-text quiet">{own.was}</p>
    </div>
  )
}

type EditorProps = {
  readonly name: string
  readonly draft: string
  readonly busy: boolean
  readonly onChange: (text: string) => void
  readonly onPut: () => void
  readonly onLeave: () => void
}

const Editor = ({ name, draft, busy, onChange, onPut, onLeave }: EditorProps) => {
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => form.current?.querySelector('textarea')?.focus(), [])
  return (
    <form
      ref={form}
      onSubmit={(event) => {
        event.preventDefault()
        onPut()
      }}
    >
      <Field
        label={`${name}, in your words`}
        value={draft}
        onChange={onChange}
        long
        className="sale-words"
        hint="Empty: as the notes say it."
      />
      <div className="sale-keys">
        <Button type="submit" className="key main" isDisabled={busy}>
          Put it so
        </Button>
        <Button className="key" onPress={onLeave}>
          Leave it
        </Button>
      </div>
    </form>
  )
}
