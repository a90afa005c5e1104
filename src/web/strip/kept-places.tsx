import { inSentence } from '../../base/in-sentence.ts'
import { Fold } from '../parts/fold.tsx'
import { fixingList } from './step-notes.ts'
import { useStripSheet } from './strip-sheet.ts'

/** Where the fixings of what is away are kept, place by place. */
export const KeptPlaces = () => {
  const { strip } = useStripSheet()
  if (strip.kept.length === 0) return null
  const kept = strip.kept.flatMap(({ lots }) => lots).reduce((sum, { count }) => sum + count, 0)
  return (
    <Fold title={`Fixings kept: ${kept}`}>
      <dl className="account">
        {strip.kept.map(({ place, lots }) => (
          <div key={place}>
            <dt>{place === '' ? 'not said where' : place}</dt>
            <dd>
              {lots.map(({ count, kind, piece }, at) => (
                <p key={at}>
                  {count} × {kind} <span className="quiet">of the {inSentence(piece.name)}</span>
                </p>
              ))}
            </dd>
          </div>
        ))}
      </dl>
      {strip.staying.length === 0 ? null : (
        <p className="quiet">Not counted, since they stay in place: {fixingList(strip.staying)}.</p>
      )}
    </Fold>
  )
}
