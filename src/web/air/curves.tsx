import { lazy, Suspense } from 'react'
import { Fold } from '../parts/fold.tsx'
import { capital } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'
import { CurveTable } from './curve-table.tsx'
import { curveLines, type CurveLine, type Figure, type ShownUnits } from './curve-lines.ts'
import { peakText } from './peak-text.ts'

const CurvePicture = lazy(async () => ({ default: (await import('./curve-picture.tsx')).CurvePicture }))

/** How it breathes: suction against airflow, and the air power that comes of it. */
export const Curves = () => {
  const { air, units, stale } = useAirSheet()
  const lines = curveLines(air)
  const main = lines.at(-1)
  if (main === undefined) return null
  const way = air.ways.find(({ id }) => id === main.curve.way)?.name ?? main.curve.way
  return (
    <section className="panel curves" aria-label="How it breathes" aria-busy={stale}>
      <h2>How it breathes</h2>
      <p className="air-peak">
        Air power {main.look === 'sound' ? 'of a sound machine of the kind' : main.name}:{' '}
        <strong>{peakText(main.curve, units)}</strong>
      </p>
      <Key lines={lines} />
      <Suspense fallback={<p className="quiet">Drawing …</p>}>
        <Picture figure="suction" lines={lines} units={units} />
        <Picture figure="air-power" lines={lines} units={units} />
      </Suspense>
      <p className="hint">
        At: {way}. In standard air, at nominal mains where the voltage was read; bands hold 95 of 100 cases.
      </p>
      <Fold title="The same in figures">
        {lines.toReversed().map((line) => (
          <CurveTable key={line.look} line={line} units={units} />
        ))}
      </Fold>
    </section>
  )
}

type PictureProps = { readonly figure: Figure; readonly lines: readonly CurveLine[]; readonly units: ShownUnits }

const Picture = ({ figure, lines, units }: PictureProps) => (
  <figure className="curve">
    <figcaption>
      {figure === 'suction' ? `Suction, ${units.suction}` : 'Air power, W'}{' '}
      <span className="quiet">against airflow, {units.airflow}</span>
    </figcaption>
    <CurvePicture figure={figure} lines={lines} units={units} description={described(figure, lines, units)} />
  </figure>
)

const described = (figure: Figure, lines: readonly CurveLine[], units: ShownUnits): string =>
  [
    figure === 'suction' ? 'Suction against airflow.' : 'Air power against airflow.',
    ...lines.toReversed().map(({ name, curve }) => `${capital(name)}: air power is ${peakText(curve, units)}.`),
  ].join(' ')

const Key = ({ lines }: { readonly lines: readonly CurveLine[] }) => (
  <ul className="curve-key">
    {lines.toReversed().map(({ look, name }) => (
      <li key={look}>
        <svg width="36" height="16" aria-hidden="true" className={`curve-swatch ${look}`}>
          <rect x="0" y="2" width="36" height="12" />
          <line x1="0" y1="8" x2="36" y2="8" />
          {look === 'sound' ? null : <circle cx="18" cy="8" r="4" />}
        </svg>
        {capital(name)}
      </li>
    ))}
  </ul>
)
