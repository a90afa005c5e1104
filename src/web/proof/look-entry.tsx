import { Button } from 'react-aria-components/Button'
import type { ProofStepView } from '../../machine/proof/proof-view.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useFinding } from './use-finding.ts'

type LookEntryProps = {
  readonly step: ProofStepView
  readonly words: string
  readonly onWords: (words: string) => void
}

/** What was seen: good or not good, with a word where there is one to say. */
export const LookEntry = ({ step, words, onWords }: LookEntryProps) => {
  const { enter, busy, problems } = useFinding()
  const found = async (good: boolean): Promise<void> => {
    if (!(await enter({ kind: 'look', step: step.id, good, text: words.trim() }))) return
    say(`${step.title}: ${good ? 'good' : 'not good'}, entered.`)
    onWords('')
  }
  return (
    <div className="entry" role="group" aria-label={`What you found: ${step.title}`}>
      <Field
        label="What you saw, in a word"
        value={words}
        onChange={onWords}
        hint="Not needed. It stands on the record."
        problems={problemsAt(problems, 'text')}
      />
      <div className="good-or-not">
        <Button className="key enter" isDisabled={busy} onPress={() => void found(true)}>
          Good
        </Button>
        <Button className="key enter dangerous" isDisabled={busy} onPress={() => void found(false)}>
          Not good
        </Button>
      </div>
      <Problems problems={problemsElsewhere(problems, ['text'])} />
    </div>
  )
}
