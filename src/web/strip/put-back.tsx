import { screwsIntoPlastic, whilePuttingBack } from '../../facts/strip-cautions.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import type { AwayPiece } from '../../bench/stripping/strip-view.ts'
import { BackRow } from './back-row.tsx'
import { fixingList, stepNote, type StepSaid } from './step-notes.ts'
import { StepPhotos } from './step-photos.tsx'
import { useStripSheet } from './strip-sheet.ts'

/** What is off and out, the last that came away first: each goes back with its fixings ticked. */
export const PutBack = () => {
  const { bench, document, strip, stale, noted } = useStripSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [first, ...others] = strip.away
  const note = async (away: AwayPiece, said: StepSaid): Promise<void> => {
    if (!(await write([stepNote(away.piece, 'back', said)]))) return
    say(`${away.piece.name}: back.`)
    noted('back')
  }
  if (first === undefined) return null
  return (
    <>
      <p className="caution">{whilePuttingBack}</p>
      <Problems problems={problems} />
      <section className="panel" aria-label="Goes back next">
        <h2>Goes back next</h2>
        {first.piece.kind === 'cover' ? <p className="hint">{screwsIntoPlastic.text}</p> : null}
        <BackRow key={first.note} away={first} busy={busy || stale} onSaid={(said) => void note(first, said)} />
      </section>
      {others.length === 0 ? null : (
        <section className="panel" aria-label="Then">
          <h2>Then</h2>
          <ol className="strip-rows">
            {others.map((away) => (
              <li key={away.note}>
                <p className="strip-name">
                  <strong>{away.piece.name}</strong>
                </p>
                <p className="strip-held">{keptText(away)}</p>
                <StepPhotos step={away} />
              </li>
            ))}
          </ol>
        </section>
      )}
    </>
  )
}

const keptText = ({ kept, isCounted }: AwayPiece): string => {
  if (!isCounted) return 'Nobody counted what held it'
  if (kept.length === 0) return 'Nothing held it'
  const places = [...new Set(kept.map(({ place }) => place).filter((place) => place !== ''))]
  return `${fixingList(kept)}${places.length === 0 ? '' : `, from ${places.join(' and ')}`}`
}
