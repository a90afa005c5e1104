import type { AirBandPoint, AirFlowPoint } from '../../machine/air/air-view.ts'
import { capital } from '../words.ts'
import type { CurveLine, ShownUnits } from './curve-lines.ts'
import { FlowHead } from './flow-head.tsx'
import { airflowIn, suctionIn, threeFigures } from './gauge-units.ts'
import { peakText } from './peak-text.ts'
import { widthMm } from './place.ts'

type CurveTableProps = { readonly line: CurveLine; readonly units: ShownUnits }

/** The numbers of one curve: what the picture shows, to be read. */
export const CurveTable = ({ line: { name, curve, look }, units }: CurveTableProps) => (
  <table className="air-table">
    <caption>
      {capital(name)}: {peakText(curve, units)}
    </caption>
    <FlowHead units={units} />
    <tbody>
      {curve.band.map((point) => (
        <BandRow key={point.diameterM} point={point} units={units} />
      ))}
      {look === 'sound'
        ? null
        : curve.points.map((point) => (
            <ReadRow key={`read ${point.name}`} name={point.name} point={point} units={units} />
          ))}
    </tbody>
  </table>
)

const BandRow = ({
  point: { diameterM, low, middle, high },
  units,
}: {
  readonly point: AirBandPoint
  readonly units: ShownUnits
}) => {
  const withLimits = (figure: (at: AirFlowPoint) => string) => (
    <td>
      {figure(middle)}
      <span className="limits">
        {figure(low)}–{figure(high)}
      </span>
    </td>
  )
  return (
    <tr>
      <th scope="row">{diameterM === 0 ? 'sealed' : widthMm(diameterM)}</th>
      {withLimits(({ suctionPa }) => suctionIn(suctionPa, units.suction))}
      {withLimits(({ airflowM3PerS }) => airflowIn(airflowM3PerS, units.airflow))}
      {withLimits(({ airPowerW }) => threeFigures(airPowerW))}
    </tr>
  )
}

type ReadRowProps = { readonly name: string; readonly point: AirFlowPoint; readonly units: ShownUnits }

const ReadRow = ({ name, point, units }: ReadRowProps) => (
  <tr className="read">
    <th scope="row">read, {name.replace(/ mm hole$/, '')}</th>
    <td>{suctionIn(point.suctionPa, units.suction)}</td>
    <td>{airflowIn(point.airflowM3PerS, units.airflow)}</td>
    <td>{threeFigures(point.airPowerW)}</td>
  </tr>
)
