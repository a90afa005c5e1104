import { Button } from 'react-aria-components/Button'
import { inSentence } from '../../base/in-sentence.ts'
import type { Moved } from '../../bench/stripping/pieces.ts'
import type { LeftOver as LeftOverOf, StripView } from '../../bench/stripping/strip-view.ts'
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
  const unsettled = [...strip.leftOver, ...strip.notClosed]
  const left = unsettled.length > 0
  if (!isWhole && !left && !strip.isClosed && strip.notCounted.length === 0) return null
  return (
    <section id="strip-left-over" className="panel" aria-label="Left over">
      <h2>{left ? titleOf(strip) : isWhole ? 'All back' : 'Not all back'}</h2>
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
          {document.state.left === null && left ? (
            <ul className="strip-rows">
              {strip.leftOver.map((one) => (
                <Unsettled key={`over ${one.piece.kind} ${one.piece.id}`} one={one} now="Went back in after all" />
              ))}
              {strip.notClosed.map((one) => (
                <Unsettled key={`open ${one.piece.kind} ${one.piece.id}`} one={one} now="Closed now" />
              ))}
            </ul>
          ) : null}
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

const titleOf = ({ leftOver, notClosed }: StripView): string =>
  leftOver.length === 0 ? 'Not closed' : notClosed.length === 0 ? 'Left over' : 'Left over, and not closed'

type UnsettledProps = { readonly one: LeftOverOf; readonly now: 'Went back in after all' | 'Closed now' }

/** Where they came from; the step of its going back is noted anew when they went in after all, or are closed now. */
const Unsettled = ({ one: { piece, closing, fixings }, now }: UnsettledProps) => {
  const { bench, document, stale } = useStripSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const settle = async (before: Moved): Promise<void> => {
    const all =
      before.fixings === null
        ? { leftOverIn: [...before.leftOverIn, ...fixings] }
        : { fixings: [...before.fixings, ...fixings] }
    const reason = now === 'Closed now' ? 'all that holds it is closed' : 'all its fixings are back'
    if (await write([{ kind: 'struck', note: before.note, reason }, stepNote(piece, 'back', { ...before, ...all })]))
      say(`${piece.name}: ${reason}.`)
  }
  return (
    <li>
      <p>
        {fixingList(fixings)} <span className="quiet">of the {inSentence(piece.name)}</span>
      </p>
      {closing === null ? (
        <p className="quiet">Off or out again. Tick what goes in as it goes back.</p>
      ) : (
        <Button
          className="key"
          isDisabled={busy || stale}
          aria-label={`${now}: ${piece.name}`}
          onPress={() => void settle(closing)}
        >
          {now}
        </Button>
      )}
      <Problems problems={problems} />
    </li>
  )
}
