import { inAirUnit } from '../../base/air-units.ts'
import type { AirCurveView, AirFlowPoint, AirView } from '../../machine/air/air-view.ts'
import type { AirflowUnit, SuctionUnit } from './gauge-units.ts'

/** A curve of the picture: which machine it is of, and how it is drawn. */
export type CurveLine = {
  readonly look: 'now' | 'before' | 'sound'
  readonly name: string
  readonly curve: AirCurveView
}

/** What the picture shows: the newest readings, the first ones where there are two sets, and a sound machine of the kind. */
export const curveLines = ({ sets, sound, kind }: AirView): readonly CurveLine[] => {
  const now = sets.at(-1)
  const before = sets.length > 1 ? sets[0] : undefined
  const soundLine = { look: 'sound', name: `a sound machine of the kind (${kind.name})`, curve: sound } as const
  if (now === undefined) return [soundLine]
  return [
    // Curves of different ways in cannot be laid over each other.
    ...(sound.way === now.curve.way ? [soundLine] : []),
    ...(before !== undefined && before.curve.way === now.curve.way
      ? [{ look: 'before', name: before.name, curve: before.curve } as const]
      : []),
    { look: 'now', name: now.name, curve: now.curve },
  ]
}

export type XY = { readonly x: number; readonly y: number }
export type Figure = 'suction' | 'air-power'

export type ShownUnits = { readonly suction: SuctionUnit; readonly airflow: AirflowUnit }

/** A point as it is drawn, in the chosen units; air power in W. */
export const toXY = ({ airflowM3PerS, suctionPa, airPowerW }: AirFlowPoint, figure: Figure, units: ShownUnits): XY => ({
  x: inAirUnit(airflowM3PerS, 'airflowM3PerS', units.airflow),
  y: figure === 'suction' ? inAirUnit(suctionPa, 'pressurePa', units.suction) : airPowerW,
})

/** The band as one closed way round: along its lower limits and back along its upper ones. */
export const bandOutline = ({ band }: AirCurveView, figure: Figure, units: ShownUnits): readonly XY[] => [
  ...band.map(({ low }) => toXY(low, figure, units)),
  ...band.toReversed().map(({ high }) => toXY(high, figure, units)),
]
