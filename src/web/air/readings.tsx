import { Button } from 'react-aria-components/Button'
import type { AirSetView, GaugeReadingView } from '../../machine/air/air-view.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { capital } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'
import { airflowIn, suctionIn, type GaugeUnits } from './gauge-units.ts'

/** In uncertainties. Farther off than this, a reading belongs to another machine, another hole, or was a slip. */
const farOff = 3

/** Every reading, the newest set first, with what was expected there. A slip is struck out in one tap. */
export const Readings = () => {
  const { air, stale, bench, document } = useAirSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  if (air.sets.length === 0) return null
  const strike = async ({ note, setUp, read }: GaugeReadingView): Promise<void> => {
    if (await write([{ kind: 'struck', note, reason: '' }])) say(`Struck out: ${setUp}, ${read}`)
  }
  return (
    <section className="panel" aria-label="Readings" aria-busy={stale}>
      <h2>Readings</h2>
      <Problems problems={problems} />
      {air.sets.toReversed().map((set) => (
        <ReadingSet key={set.name} set={set} busy={busy} onStrike={(reading) => void strike(reading)} />
      ))}
    </section>
  )
}

type ReadingSetProps = {
  readonly set: AirSetView
  readonly busy: boolean
  readonly onStrike: (reading: GaugeReadingView) => void
}

const ReadingSet = ({ set, busy, onStrike }: ReadingSetProps) => {
  const { document } = useAirSheet()
  return (
    <>
      <h3 className="set-name">{capital(set.name)}</h3>
      <ul className="log air-readings" aria-label={`Readings ${set.name}`}>
        {set.readings.map((reading) => (
          <li key={reading.note}>
            <span>
              {capital(reading.setUp)}: <Read reading={reading} />
              <Off reading={reading} />
            </span>
            {document.lines.some(({ id, canStrike }) => id === reading.note && canStrike) ? (
              <Button
                className="plain strike"
                isDisabled={busy}
                aria-label={`Strike out: ${reading.setUp}, ${reading.read}`}
                onPress={() => onStrike(reading)}
              >
                strike out
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
    </>
  )
}

const Read = ({ reading: { measure, read, value } }: { readonly reading: GaugeReadingView }) => {
  const { units } = useAirSheet()
  return <strong className="figure">{inUnits(measure, value, read, units)}</strong>
}

/** A value in the units of the gauge in hand; a pitch as the view words it. */
const inUnits = (measure: GaugeReadingView['measure'], value: number, text: string, units: GaugeUnits): string => {
  switch (measure) {
    case 'suction':
      return `${suctionIn(value, units.suction)} ${units.suction}`
    case 'airflow':
      return `${airflowIn(value, units.airflow)} ${units.airflow}`
    case 'tone':
      return text
  }
}

/** How far off it is from what the likeliest explanation would show there, counted in what such a reading is uncertain by. */
const Off = ({ reading: { measure, expected, expectedValue, sigma } }: { readonly reading: GaugeReadingView }) => {
  const { units } = useAirSheet()
  const size = Math.abs(sigma)
  const isFar = size >= farOff
  return (
    <span className={isFar ? 'off-by warning' : 'off-by quiet'}>
      {inUnits(measure, expectedValue, expected, units)} expected:{' '}
      {isFar ? `off by ${size.toFixed(0)} times its uncertainty` : 'it fits'}
    </span>
  )
}
