import type { AirRig } from '../../machine/air/air-rig.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { capital } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'
import { FlowHead } from './flow-head.tsx'
import { airflowIn, suctionIn, threeFigures } from './gauge-units.ts'
import { holesFromText, widthMm } from './place.ts'

/** The rig: the holes one has, and how to make one for this machine. */
export const Rig = () => {
  const { rig } = useAirSheet()
  return (
    <section className="panel" aria-label="The rig">
      <h2>The rig</h2>
      <OwnHoles />
      {rig === null ? null : (
        <Fold title="How to make one for this machine" className="rig-making">
          <Making rig={rig} />
        </Fold>
      )}
    </section>
  )
}

/** A bench that has a rig says which holes it has; the readings offered are then those it can make. */
const OwnHoles = () => {
  const { ownHoles, setOwnHoles } = useAirSheet()
  const holes = holesFromText(ownHoles)
  const read =
    holes.length === 0
      ? 'Left empty, those of the usual rig are taken.'
      : `Read as ${holes.map(widthMm).join(', ')} mm.`
  return (
    <Field
      label="Holes your rig has"
      value={ownHoles}
      onChange={setOwnHoles}
      unit="mm"
      inputMode="decimal"
      hint={`Such as 13, 19, 25.4. Kept on this device. ${read}`}
    />
  )
}

const Making = ({ rig }: { readonly rig: AirRig }) => {
  const { blueprint } = useAirSheet()
  return (
    <div className="rig">
      <p>
        For: {rig.suctionClass.name}. {rig.suctionClass.decided.join(' ')}
      </p>
      <p>
        <a
          className="on-its-own"
          href={`/api/blueprints/${encodeURIComponent(blueprint.id)}/rig/template.svg`}
          target="_blank"
          rel="noreferrer"
        >
          Drilling template to print
        </a>
      </p>
      <Holes rig={rig} />
      <Sizes rig={rig} />
      <h3>Gauges</h3>
      <ul>
        {rig.gauge.gauges.map(({ id, name, text }) => (
          <li key={id}>
            {name}: {text}
          </li>
        ))}
      </ul>
      <h3>Making it</h3>
      <ol>
        {rig.making.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ol>
      <h3>Cautions</h3>
      <ul>
        {rig.cautions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <Fold title="What the figures rest on">
        <ul>
          {rig.sources.map(({ figure, source }) => (
            <li key={figure}>
              {capital(figure)}: {source}
            </li>
          ))}
        </ul>
      </Fold>
    </div>
  )
}

const Holes = ({ rig }: { readonly rig: AirRig }) => {
  const { units } = useAirSheet()
  return (
    <table className="air-table">
      <caption>Holes, and what a sound machine of the kind shows at each</caption>
      <FlowHead units={units} />
      <tbody>
        <tr>
          <th scope="row">sealed</th>
          <td>{suctionIn(rig.sealed.suctionPa, units.suction)}</td>
          <td>0</td>
          <td>0</td>
        </tr>
        {rig.holes.map((hole) => (
          <tr key={hole.diameterMm}>
            <th scope="row">
              {hole.diameterMm}
              <span className="limits">{hole.drill}</span>
            </th>
            <td>{suctionIn(hole.suctionPa, units.suction)}</td>
            <td>{airflowIn(hole.airflowM3PerS, units.airflow)}</td>
            <td>{threeFigures(hole.airPowerW)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

const Sizes = ({ rig: { plate, chamber, gauge, peakHoleMm } }: { readonly rig: AirRig }) => {
  const { units } = useAirSheet()
  return (
    <dl className="account wide">
      <div>
        <dt>Plates</dt>
        <dd>
          {plate.sideMm} mm square, {plate.thicknessMm} mm thick or less
        </dd>
      </div>
      <div>
        <dt>Chamber</dt>
        <dd>
          {chamber.pipe}, bore {chamber.boreMm} mm, {chamber.lengthMm} mm long
        </dd>
      </div>
      <div>
        <dt>Tap</dt>
        <dd>in its wall, {chamber.tapMm} mm behind the plate</dd>
      </div>
      <div>
        <dt>Gauge</dt>
        <dd>
          to {suctionIn(gauge.rangePa, units.suction)} {units.suction}
        </dd>
      </div>
      {peakHoleMm === null ? null : (
        <div>
          <dt>Most air power</dt>
          <dd>at about {Math.round(peakHoleMm)} mm</dd>
        </div>
      )}
    </dl>
  )
}
