import type { AirCurveView } from '../../machine/air/air-view.ts'
import type { ShownUnits } from './curve-lines.ts'
import { airflowIn, suctionIn, threeFigures } from './gauge-units.ts'

/** The most air power of a curve in words: `at most 155 W, at 13.8 L/s and 11.2 kPa`. */
export const peakText = ({ peak }: AirCurveView, units: ShownUnits): string =>
  peak.kind === 'peak'
    ? `at most ${threeFigures(peak.airPowerW)} W, at ${airflowIn(peak.airflowM3PerS, units.airflow)} ${units.airflow} and ${suctionIn(peak.suctionPa, units.suction)} ${units.suction}`
    : `no summit (${peak.reason})`
