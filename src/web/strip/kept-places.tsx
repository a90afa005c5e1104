import { Fold } from '../parts/fold.tsx'
import { useStripSheet } from './strip-sheet.ts'

/** Where the fixings of what is away are kept, place by place. */
export const KeptPlaces = () => {
  const { strip } = useStripSheet()
  if (strip.kept.length === 0) return null
  return (
    <Fold title={`Fixings kept: ${strip.balance.kept}`}>
      <dl className="account">
        {strip.kept.map(({ place, lots }) => (
          <div key={place}>
            <dt>{place === '' ? 'not said where' : place}</dt>
            <dd>
              {lots.map(({ count, kind, piece }, at) => (
                <p key={at}>
                  {count} × {kind} <span className="quiet">of {piece.name}</span>
                </p>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </Fold>
  )
}
