import type { BeforeAfterView } from '../../machine/air/air-view.ts'
import { capital } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'

/** Standard uncertainties on either side that hold 95 of 100 cases, as in the sentence of the view. */
const coverage = 2

/** What the repairs did to the air, hole by hole. */
export const BeforeAfter = () => {
  const { air, stale } = useAirSheet()
  const found = air.beforeAfter
  if (found === null) return null
  return (
    <section className="panel" aria-label="Before and after" aria-busy={stale}>
      <h2>Before and after</h2>
      <p className="before-after-text">{found.text}</p>
      {found.peak === null ? null : (
        <p>
          Most air power: <strong className="figure">{found.peak.ratio.toFixed(2)} times</strong> what it was, within{' '}
          {found.peak.low.toFixed(2)} to {found.peak.high.toFixed(2)} in 95 of 100 cases.
        </p>
      )}
      <Plates found={found} />
    </section>
  )
}

type Ratio = BeforeAfterView['plates'][number]['suction']

const Plates = ({ found }: { readonly found: BeforeAfterView }) => (
  <table className="air-table">
    <caption>
      {capital(found.after)} over {found.before}
    </caption>
    <thead>
      <tr>
        <th scope="col">Through</th>
        <th scope="col">Suction</th>
        <th scope="col">Air power</th>
      </tr>
    </thead>
    <tbody>
      {found.plates.map(({ name, suction, airPower }) => (
        <tr key={name}>
          <th scope="row">{name}</th>
          <td>
            <Times ratio={suction} />
          </td>
          <td>{airPower === null ? 'none flows' : <Times ratio={airPower} />}</td>
        </tr>
      ))}
    </tbody>
  </table>
)

const Times = ({ ratio: { ratio, uncertainty } }: { readonly ratio: Ratio }) => (
  <>
    {ratio.toFixed(2)} ×<span className="limits">± {(coverage * ratio * uncertainty).toFixed(2)}</span>
  </>
)
