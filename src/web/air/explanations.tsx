import type { AirExplanationView, AirSetView } from '../../machine/air/air-view.ts'
import { Fold } from '../parts/fold.tsx'
import { capital, percentText } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'

/** The rest is one tap away, so that the next reading is not buried. */
const firstShown = 3

/** What may be behind the newest readings, how likely, and how much of it; then what the readings leave open. */
export const Explanations = () => {
  const { air, stale } = useAirSheet()
  const set = air.sets.at(-1)
  if (set === undefined) return null
  const more = set.explanations.slice(firstShown)
  return (
    <section className="panel air-explanations" aria-label="What the readings say" aria-busy={stale}>
      <h2>What the readings say, {set.name}</h2>
      <Contradictions set={set} />
      <List explanations={set.explanations.slice(0, firstShown)} />
      {more.length === 0 ? null : (
        <Fold title={`${more.length} less likely`}>
          <List explanations={more} />
        </Fold>
      )}
      {set.open.length === 0 ? null : (
        <Fold title="What they leave open">
          <ul>
            {set.open.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Fold>
      )}
    </section>
  )
}

const Contradictions = ({ set }: { readonly set: AirSetView }) =>
  set.contradictions.length === 0 ? null : (
    <div className="alert air-contradictions" role="group" aria-label="Readings that contradict each other">
      {set.contradictions.map((text) => (
        <p key={text}>{capital(text)}</p>
      ))}
      <p>Take it again; strike it out below if it was a slip.</p>
    </div>
  )

const List = ({ explanations }: { readonly explanations: readonly AirExplanationView[] }) => (
  <ul className="explanations">
    {explanations.map(({ id, name, probability, figure }) => (
      <li key={id}>
        <span className="explanation-name">{capital(name)}</span>{' '}
        <span className="figure">{percentText(probability)}</span>
        <span className="bar" aria-hidden="true">
          <span style={{ width: `${probability * 100}%` }} />
        </span>
        {figure === null ? null : <span className="explanation-figure">{figure}</span>}
      </li>
    ))}
  </ul>
)
