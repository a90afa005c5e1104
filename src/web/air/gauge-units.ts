import { useState } from 'react'
import { inAirUnit } from '../../base/air-units.ts'
import { readStored, writeStored } from '../stored.ts'

export const suctionUnits = ['kPa', 'mbar', 'inH2O', 'mmH2O', 'inHg'] as const
export const airflowUnits = ['L/s', 'cfm', 'm3/h'] as const
export type SuctionUnit = (typeof suctionUnits)[number]
export type AirflowUnit = (typeof airflowUnits)[number]

/** The units that gauges are read in on this device: those last used. */
export type GaugeUnits = {
  readonly suction: SuctionUnit
  readonly airflow: AirflowUnit
  readonly setSuction: (unit: SuctionUnit) => void
  readonly setAirflow: (unit: AirflowUnit) => void
}

const suctionKey = 'thrum.suction-unit'
const airflowKey = 'thrum.airflow-unit'

export const useGaugeUnits = (): GaugeUnits => {
  const [suction, setSuction] = useStoredUnit(suctionKey, suctionUnits)
  const [airflow, setAirflow] = useStoredUnit(airflowKey, airflowUnits)
  return { suction, airflow, setSuction, setAirflow }
}

const useStoredUnit = <Unit extends string>(name: string, units: readonly Unit[]) => {
  const [unit, setUnit] = useState<Unit>(() => {
    const stored = readStored('local', name)
    return units.find((one) => one === stored) ?? units[0]
  })
  const change = (chosen: Unit): void => {
    writeStored('local', name, chosen)
    setUnit(chosen)
  }
  return [unit, change] as const
}

/** Three figures that count: `21.8`, `7.34`, `1840`. */
export const threeFigures = (value: number): string => {
  const size = Math.abs(value)
  if (size < 0.005) return '0'
  const decimals = size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2
  return value.toFixed(decimals).replace('-', '−')
}

/** A suction without its unit, as a gauge in this unit shows it. */
export const suctionIn = (suctionPa: number, unit: SuctionUnit): string =>
  threeFigures(inAirUnit(suctionPa, 'pressurePa', unit))

/** An airflow without its unit. */
export const airflowIn = (airflowM3PerS: number, unit: AirflowUnit): string =>
  threeFigures(inAirUnit(airflowM3PerS, 'airflowM3PerS', unit))

/** A number and, where it is the lower end of a range, the number it goes up to. */
const inKilopascals = /(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? kPa/g
const inLitresPerSecond = /(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? L\/s/g

/**
 * A text of the view, which writes suctions in kPa and airflows in L/s, with them in the units of the gauge in hand:
 * `6.89 to 8.05 kPa` → `27.7 to 32.3 inH2O`.
 */
export const inGaugeUnits = (text: string, { suction, airflow }: Pick<GaugeUnits, 'suction' | 'airflow'>): string => {
  const withSuction =
    suction === 'kPa'
      ? text
      : text.replaceAll(
          inKilopascals,
          rangeIn(suction, (kPa) => suctionIn(kPa * 1000, suction)),
        )
  return airflow === 'L/s'
    ? withSuction
    : withSuction.replaceAll(
        inLitresPerSecond,
        rangeIn(airflow, (litres) => airflowIn(litres / 1000, airflow)),
      )
}

const rangeIn =
  (unit: string, shown: (value: number) => string) =>
  (_whole: string, low: string, high: string | undefined): string =>
    `${high === undefined ? shown(Number(low)) : `${shown(Number(low))} to ${shown(Number(high))}`} ${unit}`
