import { Button } from 'react-aria-components/Button'
import type { FunctionState } from '../../machine/functions/function-state.ts'
import { Problems } from '../parts/problems.tsx'
import { Link } from '../router.tsx'
import { useNotes } from '../use-notes.ts'
import { useFunctionsSheet } from './functions-sheet.ts'

/** What was found before, and the way to take it back. */
export const FunctionTold = ({ state }: { readonly state: FunctionState }) => {
  const { bench, document, stale } = useFunctionsSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  if (state.kind !== 'told') return null
  const { text, note, result } = state.told
  const content = document.notes.find(({ id }) => id === note)?.content
  const word = content?.kind === 'tried' ? content.text : ''
  return (
    <div className="function-told">
      <p>
        Found: <strong>{text}</strong>
        {word === '' ? null : `, “${word}”`}{' '}
        {note === null || document.state.left !== null ? null : (
          <Button
            className="plain strike"
            isDisabled={busy || stale}
            aria-label={`Strike out: ${text}`}
            onPress={() => void write([{ kind: 'struck', note, reason: '' }])}
          >
            strike out
          </Button>
        )}
      </p>
      {result === 'bad' ? (
        <p>
          <Link to={{ kind: 'machine', bench, id: document.state.id }} className="on-its-own">
            What may be wrong now
          </Link>
        </p>
      ) : null}
      <Problems problems={problems} />
    </div>
  )
}
