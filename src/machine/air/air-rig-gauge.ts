import { gaugeMargin } from '../../facts/air-rig.ts'
import { gauges, type GaugeSpec } from '../../facts/gauges.ts'
import { plainPlate, plateUncertainty } from '../../engines/airflow/index.ts'
import type { RigPoint } from './air-rig-points.ts'

/** How a common gauge does on this rig. `coarseAtMm`: holes at which its step costs more than the hole itself does. */
export type RigGauge = {
  readonly id: string
  readonly name: string
  readonly verdict: 'saturates' | 'short' | 'coarse' | 'fits'
  readonly text: string
  readonly coarseAtMm: readonly number[]
}

/** The range a gauge should have for machines whose sealed suction goes up to this, Pa. */
export const wantedRangePa = (strongestPa: number): number => gaugeMargin.factor * strongestPa

/** The common gauges on a rig with these points; a machine of the kind sucks up to `strongestPa` sealed. */
export const rigGauges = (points: readonly RigPoint[], strongestPa: number): readonly RigGauge[] =>
  gauges.map((gauge) => {
    const coarse = points.filter((point) => isCoarse(gauge, point))
    const coarseAtMm = coarse.map(({ diameterMm }) => diameterMm)
    const verdict = verdictOn(gauge, strongestPa, coarse.length > points.length / 2)
    return {
      id: gauge.id,
      name: gauge.name,
      verdict,
      coarseAtMm,
      text: textOf(gauge, verdict, coarseAtMm, strongestPa),
    }
  })

/** Air power goes as suction to the 1.5: a step of the gauge counts one and a half times. */
const isCoarse = ({ stepPa }: GaugeSpec, { diameterMm, suctionPa }: RigPoint): boolean =>
  (1.5 * stepPa) / suctionPa > plateUncertainty(plainPlate('hole', diameterMm / 1000))

const verdictOn = ({ fullScalePa }: GaugeSpec, strongestPa: number, coarse: boolean): RigGauge['verdict'] => {
  if (fullScalePa < strongestPa) return 'saturates'
  if (coarse) return 'coarse'
  return fullScalePa < wantedRangePa(strongestPa) ? 'short' : 'fits'
}

const textOf = (
  { fullScalePa, stepPa }: GaugeSpec,
  verdict: RigGauge['verdict'],
  coarseAtMm: readonly number[],
  strongestPa: number,
): string => {
  const end = `it ends at ${kPa(fullScalePa)}`
  const step = coarseAtMm.length === 0 ? '' : `; its step of ${stepPa} Pa is coarse at ${coarseAtMm.join(', ')} mm`
  switch (verdict) {
    case 'saturates':
      return `saturates: ${end}, and such a machine sucks up to ${kPa(strongestPa)} sealed${step}`
    case 'short':
      return `just reaches: ${end}, without margin${step}`
    case 'coarse':
      return `too coarse: its step of ${stepPa} Pa costs more than the hole does at ${coarseAtMm.join(', ')} mm`
    case 'fits':
      return `fits: ${end}${step}`
  }
}

/** A pressure as text: `22.4 kPa`. */
export const kPa = (pressurePa: number): string => `${(pressurePa / 1000).toFixed(1)} kPa`
