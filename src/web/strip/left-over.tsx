import { Button } from 'react-aria-components/Button'
import type { LeftOver as LeftOverOf } from '../../bench/stripping/strip-view.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { fixingList, stepNote } from './step-notes.ts'
import { useStripSheet } from './strip-sheet.ts'

/** What stands at the end: all back and nothing left over, or what is not back, and what nobody counted. */
export const LeftOver = () => {
  const { strip, document } = useStripSheet()
  if (strip.done.length === 0) return null
  const isWhole = strip.away.length === 0
  const left = strip.leftOver.length > 0
  if (!isWhole && !left && !strip.isClosed && strip.notCounted.length === 0) return null
  return (
    <section id="strip-left-over" className="panel" aria-label="Left over">
      <h2>{left ? 'Left over' : isWhole ? 'All back' : 'Not all back'}</h2>
      {isWhole && !left ? (
        <p className="strip-whole">
          Everything is back{strip.notCounted.length === 0 ? ', and nothing is left over' : ''}.
        </p>
      ) : null}
      {left || (strip.isClosed && !isWhole) ? (
        <div className="alert" role="status">
          {strip.warnings.map((text) => (
            <p key={text}>
              <strong>{text}</strong>
            </p>
          ))}
          {document.state.left === null && left ? <Found all={strip.leftOver} /> : null}
        </div>
      ) : null}
      {strip.notCounted.map((text) => (
        <p key={text} className="quiet">
          {text}
        </p>
      ))}
    </section>
  )
}

/** Where they came from; the step of its going back is noted anew when they went in after all. */
const Found = ({ all }: { readonly all: readonly LeftOverOf[] }) => {
  const { bench, document, stale } = useStripSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const goesIn = async ({ piece, closing, fixings }: LeftOverOf): Promise<void> => {
    if (closing === null) return
    const anew = stepNote(piece, 'back', { ...closing, fixings: [...(closing.fixings ?? []), ...fixings] })
    if (await write([{ kind: 'struck', note: closing.note, reason: 'all its fixings are back' }, anew]))
      say(`${piece.name}: all its fixings are back.`)
  }
  return (
    <ul className="strip-rows">
      {all.map((one) => (
        <li key={`${one.piece.kind} ${one.piece.id}`}>
          <p>
            {fixingList(one.fixings)} <span className="quiet">of {one.piece.name}</span>
          </p>
          {one.closing === null ? null : (
            <Button
              className="key"
              isDisabled={busy || stale}
              aria-label={`Went back in after all: ${one.piece.name}`}
              onPress={() => void goesIn(one)}
            >
              Went back in after all
            </Button>
          )}
        </li>
      ))}
      <Problems problems={problems} />
    </ul>
  )
}
