import { Button } from 'react-aria-components/Button'
import type { CheckMove } from '../../machine/view.ts'
import { Problems } from '../parts/problems.tsx'
import { percentText } from '../words.ts'
import { CoversNoted } from './covers-noted.tsx'
import { TakeReading } from './take-reading.tsx'
import { useReading } from './use-reading.ts'

/** What was seen, heard or felt: one large button for each grade. */
export const GradeEntry = ({ move, onDone }: { readonly move: CheckMove; readonly onDone: () => void }) => {
  const { enter, busy, problems } = useReading(move, onDone)
  return (
    <div className="entry" role="group" aria-label="Enter what you found">
      <TakeReading move={move} enter={enter} busy={busy} />
      <CoversNoted move={move} />
      <div className="grades">
        {move.choices.map((choice) => (
          <Button
            key={choice.id}
            className={choice.danger ? 'key grade dangerous' : 'key grade'}
            isDisabled={busy}
            onPress={() => void enter({ kind: 'grade', outcome: choice.id })}
          >
            <span>{choice.name}</span>
            <span className="grade-odds">
              {choice.danger ? 'danger ' : null}
              {choice.probability > 0 ? percentText(choice.probability) : null}
            </span>
          </Button>
        ))}
        <Button className="key grade" isDisabled={busy} onPress={() => void enter({ kind: 'cannot-tell' })}>
          could not tell
        </Button>
      </div>
      <Problems problems={problems} />
    </div>
  )
}
