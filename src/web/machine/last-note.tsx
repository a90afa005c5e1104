import { Button } from 'react-aria-components/Button'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { useSheet } from './sheet.ts'

/** What was entered last, with one tap to strike it out: so that nobody wonders whether it was kept, or hunts for a slip. */
export const LastNote = () => {
  const { bench, document } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const last = [...document.lines]
    .sort((a, b) => b.seq - a.seq)
    .find(({ kind }) => kind === 'reading' || kind === 'repaired')
  if (last === undefined || last.struck) return null
  return (
    <div className="last-note">
      <p>
        <span className="quiet">Last:</span> <strong>{last.text}</strong>
      </p>
      <Button
        className="plain strike"
        isDisabled={busy}
        aria-label={`Strike out the last: ${last.text}`}
        onPress={() => void write([{ kind: 'struck', note: last.id, reason: '' }])}
      >
        strike out
      </Button>
      <Problems problems={problems} />
    </div>
  )
}
