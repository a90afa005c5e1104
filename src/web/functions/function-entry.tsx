import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { AnswerableRow, FunctionAnswer } from '../../bench/functions/functions-view.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Link } from '../router.tsx'
import { NotReady } from '../strip/not-ready.tsx'
import { useNotes } from '../use-notes.ts'
import { CoversFirst } from './covers-first.tsx'
import { useFunctionsSheet } from './functions-sheet.ts'
import { notesWithWord } from './with-word.ts'

type EntryProps = { readonly row: AnswerableRow; readonly onDone: () => void }

/** The answers to a function, one large key each; what must come first stands in the place of its outcomes until it is done. */
export const FunctionEntry = ({ row, onDone }: EntryProps) => {
  const { bench, document, blueprint, stale } = useFunctionsSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [word, setWord] = useState('')
  const enter = async (answer: FunctionAnswer): Promise<void> => {
    if (!(await write([...notesWithWord(answer.note, word)]))) return
    say(`Entered: ${row.name}, ${answer.name}.`)
    onDone()
  }
  const keys = (answers: readonly FunctionAnswer[]) =>
    answers.map((answer) => (
      <AnswerKey key={answer.id} answer={answer} isDisabled={busy || stale} onPress={() => void enter(answer)} />
    ))
  const outcomes = row.outcomes.length
  return (
    <div className="function-entry" role="group" aria-label={`What came of it: ${row.name}`}>
      <Field label="A word on it" value={word} onChange={setWord} />
      {row.runs ? <NotReady bench={bench} document={document} blueprint={blueprint} /> : null}
      {row.barred.length > 0 ? (
        <Barred row={row} />
      ) : (
        <CoversFirst row={row}>{keys(row.answers.slice(0, outcomes))}</CoversFirst>
      )}
      {keys(row.answers.slice(outcomes))}
      <Problems problems={problems} />
    </div>
  )
}

type KeyProps = { readonly answer: FunctionAnswer; readonly isDisabled: boolean; readonly onPress: () => void }

const AnswerKey = ({ answer: { id, name, danger }, isDisabled, onPress }: KeyProps) => (
  <Button className={`${keyClass(id)}${danger ? ' dangerous' : ''}`} isDisabled={isDisabled} onPress={onPress}>
    <span>{name}</span>
    {danger ? <span className="grade-odds">danger</span> : null}
  </Button>
)

const keyClass = (id: string): string => (id === 'cannot-tell' ? 'plain' : 'key grade')

const Barred = ({ row }: { readonly row: AnswerableRow }) => {
  const { bench, document } = useFunctionsSheet()
  return (
    <div className="barred">
      <p>{row.runs ? 'It must not be run yet. Not passed:' : 'Not yet:'}</p>
      <ul>
        {row.barred.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p>
        <Link to={{ kind: 'machine', bench, id: document.state.id }} className="on-its-own">
          To the machine’s page
        </Link>
      </p>
    </div>
  )
}
