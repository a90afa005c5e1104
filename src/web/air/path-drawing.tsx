import type { AirPathStep } from '../../machine/air/air-view.ts'
import { tintStrength } from '../drawing/tint.ts'
import { capital, percentText } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'
import { suctionIn } from './gauge-units.ts'

/** The way of the air from the mouth of the rig to the room: suction before each part, now and in a sound machine. */
export const PathDrawing = () => {
  const { air, units, stale } = useAirSheet()
  const set = air.sets.at(-1)
  if (set === undefined || set.path.steps.length === 0) return null
  const { opening, steps } = set.path
  const fullPa = Math.max(...steps.flatMap(({ suctionPa, soundPa }) => [suctionPa, soundPa]))
  const tints = Object.fromEntries(steps.map(({ part, suspected }) => [part, suspected]))
  return (
    <section className="panel air-path" aria-label="The way of the air" aria-busy={stale}>
      <h2>The way of the air</h2>
      <p className="quiet">
        Suction where the air comes to each part, {units.suction}, at the {opening} {set.name}. Shaded: where what is
        wrong may lie.
      </p>
      <table className="path-table">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Now</th>
            <th scope="col">Sound one</th>
          </tr>
        </thead>
        <tbody>
          <tr className="path-end">
            <th scope="row" colSpan={3}>
              Room, {opening}
            </th>
          </tr>
          {steps.map((step) => (
            <Step key={step.part} step={step} fullPa={fullPa} tint={tintStrength(tints, step.part)} />
          ))}
          <tr className="path-end">
            <th scope="row" colSpan={3}>
              Room again
            </th>
          </tr>
        </tbody>
      </table>
      {steps.some(({ suctionPa }) => suctionPa < 0) ? (
        <p className="hint">Behind the fan the air is pushed: below zero it is above the room’s pressure.</p>
      ) : null}
    </section>
  )
}

type StepProps = { readonly step: AirPathStep; readonly fullPa: number; readonly tint: number }

const Step = ({ step, fullPa, tint }: StepProps) => {
  const { units } = useAirSheet()
  return (
    <tr className={step.isFan ? 'path-fan' : undefined}>
      <th scope="row">
        <span className="path-tint" aria-hidden="true" style={{ opacity: 0.45 * tint }} />
        <span className="path-name">
          {step.isFan ? <FanMark /> : null}
          {capital(step.name)}
          {step.suspected >= 0.01 ? (
            <span className="figure path-suspected">
              {' '}
              <span className="unseen">suspected </span>
              {percentText(step.suspected)}
            </span>
          ) : null}
        </span>
        <Column nowPa={step.suctionPa} soundPa={step.soundPa} fullPa={fullPa} />
      </th>
      <td>{suctionIn(step.suctionPa, units.suction)}</td>
      <td className="quiet">{suctionIn(step.soundPa, units.suction)}</td>
    </tr>
  )
}

type ColumnProps = { readonly nowPa: number; readonly soundPa: number; readonly fullPa: number }

/** Both suctions drawn as lengths: the thick line is this machine, the mark a sound one. */
const Column = ({ nowPa, soundPa, fullPa }: ColumnProps) => {
  const percent = (pressurePa: number): number => (100 * Math.max(0, pressurePa)) / fullPa
  return (
    <svg className="path-column" width="100%" height="10" aria-hidden="true">
      <line x1="0" y1="5" x2="100%" y2="5" className="path-rule" />
      <line x1="0" y1="5" x2={`${percent(nowPa)}%`} y2="5" className="path-now" />
      <line x1={`${percent(soundPa)}%`} y1="0" x2={`${percent(soundPa)}%`} y2="10" className="path-sound" />
    </svg>
  )
}

/** A wheel with three blades. */
const FanMark = () => (
  <svg width="20" height="20" viewBox="-10 -10 20 20" className="fan-mark" role="img" aria-label="Fan:">
    <circle r="8.5" />
    <path d="M0 0C3 -3 3 -6 0 -8M0 0C4 0 6 3 6.9 4M0 0C-1 4 -4 5 -6.9 4" />
  </svg>
)
