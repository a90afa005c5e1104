import { Button } from 'react-aria-components/Button'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { Link } from '../router.tsx'
import { momentText } from '../words.ts'
import { markRefused, takeOut, useHeld, type WaitingNote } from './outbox.ts'
import { useSending } from './use-sending.ts'

/** What was made on this device and is not yet on the bench; nothing where nothing waits. */
export const OutboxStrip = () => {
  const { waiting, sending, sendNow } = useSending()
  const held = useHeld()
  const refused = waiting.filter((note) => note.refused !== null)
  const count = waiting.length - refused.length
  const photographs = waiting.filter(({ file, refused: why }) => file !== undefined && why === null).length
  if (waiting.length === 0) return null
  return (
    <aside className="outbox" aria-label="Not sent yet">
      {count === 0 ? null : (
        <p role="status">
          <strong>{count === 1 ? 'One note is not sent yet.' : `${count} notes are not sent yet.`}</strong>{' '}
          {photographs === 0
            ? null
            : photographs === 1
              ? 'One has a photograph. '
              : `${photographs} have photographs. `}
          {held.length === 0 ? 'The bench does not answer; ' : 'The bench cannot take more now; '}
          {count === 1
            ? 'it is kept on this device and sent by itself.'
            : 'they are kept on this device and sent by themselves.'}{' '}
          <Button className="plain" isDisabled={sending} onPress={sendNow}>
            {sending ? 'Trying …' : 'Try now'}
          </Button>
        </p>
      )}
      <Problems problems={held} />
      {refused.length === 0 ? null : (
        <Fold
          title={
            refused.length === 1 ? 'The bench did not take one note' : `The bench did not take ${refused.length} notes`
          }
        >
          <ul className="ledger">
            {refused.map((note) => (
              <RefusedNote key={note.id} note={note} />
            ))}
          </ul>
        </Fold>
      )}
    </aside>
  )
}

const RefusedNote = ({ note }: { readonly note: WaitingNote }) => (
  <li>
    <Link to={{ kind: 'machine', bench: note.bench, id: note.machine }}>
      Made {momentText(note.madeAt)}: {note.content.kind}
    </Link>
    <Problems problems={note.refused ?? []} />
    <Button className="key" onPress={() => markRefused(note.id, null)}>
      Send it again
    </Button>{' '}
    <Button className="plain" onPress={() => takeOut(note.id)}>
      Leave it out
    </Button>
  </li>
)
