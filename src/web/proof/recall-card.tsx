import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { recallCheckId } from '../../facts/recall-check.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { useProofSheet } from './proof-sheet.ts'
import { useFinding } from './use-finding.ts'

/** Whether the plate was looked up in the recall list of the region: no check of the machine, and asked before it is sold. */
export const RecallCard = () => {
  const { document, proof } = useProofSheet()
  const { recall } = proof
  return (
    <section id="step-recall" className="proof-step" aria-label={recall.title}>
      <Fold
        title={
          <>
            <span className="proof-step-title">{recall.title}</span>{' '}
            <span className={`proof-step-state ${stateClass[recall.state]}`}>{recall.stateText}</span>
          </>
        }
      >
        <p>
          Before you sell it, look it up here: <strong>{recall.list}</strong>. Not done, it leaves the verdict as it is;
          in a list, it is not fit to sell.
        </p>
        <ol className="set-up" aria-label={`How: ${recall.title}`}>
          {recall.how.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ol>
        {document.state.left === null ? <LookUpEntry /> : null}
      </Fold>
      <LookedUp />
    </section>
  )
}

const stateClass = { 'not-done': 'not-done', 'in-no-list': 'passed', 'in-a-list': 'failed' } as const

const LookUpEntry = () => {
  const { recall } = useProofSheet().proof
  const { enter, busy, problems } = useFinding()
  const [where, setWhere] = useState(recall.list)
  const found = async (good: boolean): Promise<void> => {
    if (!(await enter({ kind: 'look', step: recallCheckId, good, text: where.trim() }))) return
    say(`${recall.title}: ${good ? 'in no list' : 'in a list'}, entered.`)
  }
  return (
    <div className="entry" role="group" aria-label={`What you found: ${recall.title}`}>
      <Field
        label="Where you looked"
        value={where}
        onChange={setWhere}
        long
        hint="It stands on the record."
        problems={problemsAt(problems, 'text')}
      />
      <div className="good-or-not">
        <Button className="key enter" isDisabled={busy} onPress={() => void found(true)}>
          In no list
        </Button>
        <Button className="key enter dangerous" isDisabled={busy} onPress={() => void found(false)}>
          In a list
        </Button>
      </div>
      <Problems problems={problemsElsewhere(problems, ['text'])} />
    </div>
  )
}

/** The look-up that counts, and one tap to strike it out. */
const LookedUp = () => {
  const { bench, document, proof } = useProofSheet()
  const { note, state, stateText, text } = proof.recall
  const { write, busy, problems } = useNotes(bench, document.state.id)
  if (note === null) return null
  const strike = async (): Promise<void> => {
    if (await write([{ kind: 'struck', note, reason: '' }])) say('Struck out: recall check')
  }
  return (
    <>
      <Problems problems={problems} />
      <ul className="log findings" aria-label="Found">
        <li className={state === 'in-a-list' ? 'fail' : 'pass'}>
          <span>
            <strong className="finding-kind">{stateText}</strong>
          </span>
          {document.lines.some((line) => line.id === note && line.canStrike) ? (
            <Button
              className="plain strike"
              isDisabled={busy}
              aria-label="Strike out: recall check"
              onPress={() => void strike()}
            >
              strike out
            </Button>
          ) : null}
          <span className="finding-more quiet">{text}</span>
        </li>
      </ul>
    </>
  )
}
