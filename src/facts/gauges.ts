import type { Source } from '../base/source.ts'

/** How well a suction gauge reads. */
export type GaugeSpec = {
  readonly id: string
  readonly name: string
  /** Above this it does not read. */
  readonly fullScalePa: number
  /** Relative standard uncertainty of its scale: the same sign and size in all its readings. */
  readonly gain: number
  /** Standard uncertainty of one reading that does not scale with it: zero, steps, needle. */
  readonly stepPa: number
  /** Relative standard deviation of a repeated reading: settling, heating, hose lie. */
  readonly repeatability: number
  readonly source: Source
}

const repeated = 0.01

/** Gauges a bench may hold. A 2 psi meter ends at 13.8 kPa, below many sealed suctions. */
export const gauges: readonly GaugeSpec[] = Object.freeze([
  {
    id: 'digital-manometer-5-psi',
    name: 'Digital manometer to 34.5 kPa',
    fullScalePa: 34_474,
    gain: 0.005,
    stepPa: 100,
    repeatability: repeated,
    source: { title: 'Cheap digital manometers: ±0.3 % of full scale', evidence: 'from memory' },
  },
  {
    id: 'digital-manometer-2-psi',
    name: 'Digital manometer to 13.8 kPa',
    fullScalePa: 13_790,
    gain: 0.005,
    stepPa: 41,
    repeatability: repeated,
    source: { title: 'Cheap digital manometers: ±0.3 % of full scale', evidence: 'from memory' },
  },
  {
    id: 'dial-gauge',
    name: 'Vacuum gauge with a needle',
    fullScalePa: 100_000,
    gain: 0.02,
    stepPa: 500,
    repeatability: repeated,
    source: { title: 'Needle gauges: ±1.6 to 2.5 % of full scale, read to half a division', evidence: 'judgement' },
  },
  {
    id: 'water-column',
    name: 'Water column',
    fullScalePa: 30_000,
    gain: 0.002,
    stepPa: 20,
    repeatability: repeated,
    source: { title: 'Tube with water and a tape measure: both levels to 2 mm', evidence: 'judgement' },
  },
])

/** A vane held to the end of a hose: about as wide as the hose, swirl, its own resistance. Relative standard uncertainty. */
export const vaneAtHose = {
  gain: 0.1,
  repeatability: 0.03,
  source: { title: 'Vane anemometer at a hose end: cross-check only', evidence: 'judgement' } as Source,
} as const

/** Motor speed by its tone or a strobe, as a ratio to the sound one's. */
export const toneSpeed = {
  gain: 0.02,
  repeatability: 0.005,
  source: { title: 'Speed from the motor tone', evidence: 'judgement' } as Source,
} as const

/** The gauge that a bench is taken to have until it says otherwise. */
export const usualGauge = 'digital-manometer-5-psi'

/** What an airflow and the pitch of a motor are read with. */
export const vaneGauge = 'vane-at-hose'
export const toneGauge = 'motor-tone'
