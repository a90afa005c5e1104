import type { Source } from '../../base/source.ts'
import { awgConductors, awgSpread, kiloFeetPerKm } from '../../facts/awg.ts'
import { flexibleConductors, typicalShareOfMaximum } from '../../facts/conductors.ts'

/** A size of flexible conductor, copper at 20 °C. */
export type ConductorSize = {
  readonly id: string
  readonly areaMm2: number
  readonly awg: number | null
  /** The most that a sound one has, in ohm per kilometre; with its wires tinned, where the table has it. */
  readonly maximumOhmPerKm: number
  readonly maximumTinnedOhmPerKm: number
  /** The least and the usual share of the maximum that a sound one shows. */
  readonly typicalShare: number
  readonly source: Source
}

const metric: readonly ConductorSize[] = flexibleConductors.map((row) => ({
  id: `${row.areaMm2} mm2`,
  areaMm2: row.areaMm2,
  awg: null,
  maximumOhmPerKm: row.maximumOhmPerKm,
  maximumTinnedOhmPerKm: row.maximumTinnedOhmPerKm,
  typicalShare: typicalShareOfMaximum.value,
  source: row.source,
}))

const american: readonly ConductorSize[] = awgConductors.map((row) => {
  const maximumOhmPerKm = row.ohmPerKft * kiloFeetPerKm * (1 + awgSpread.share)
  return {
    id: `${row.awg} AWG`,
    areaMm2: row.areaMm2,
    awg: row.awg,
    maximumOhmPerKm,
    maximumTinnedOhmPerKm: maximumOhmPerKm,
    typicalShare: 1 / (1 + awgSpread.share),
    source: row.source,
  }
})

/** All sizes known, `0.75 mm2` and `18 AWG` alike, from the thinnest to the thickest of each kind. */
export const conductorSizes: readonly ConductorSize[] = [...metric, ...american]

/** The size of that name; undefined for one that is not known. `0.75`, `0.75mm²` and `1 mm2` are understood. */
export const sizeNamed = (name: string): ConductorSize | undefined => {
  const match = /^\s*(\d+(?:[.,]\d+)?)\s*(mm2|mm²|awg|)\s*$/i.exec(name)
  if (match === null) return undefined
  const figure = Number(match[1].replace(',', '.'))
  const isGauge = match[2].toLowerCase() === 'awg'
  return conductorSizes.find((size) => (isGauge ? size.awg === figure : size.awg === null && size.areaMm2 === figure))
}

/** Reads `0.75 mm2` as `0.75 mm²`. */
export const sizeText = (size: Pick<ConductorSize, 'id'>): string => size.id.replace('mm2', 'mm²')
