import type { Source } from '../base/source.ts'

/**
 * DC resistance of a brushed mains motor's windings as a share of its running voltage over current.
 * Two textbook machines give 0.29, one measured vacuum motor 0.06; no published table of vacuum motors is known.
 */
export const windingShare = {
  low: 0.05,
  high: 0.3,
  source: {
    title: 'Two textbook universal motors and one measured vacuum motor',
    url: 'https://www.scribd.com/presentation/508167811/EEC302A-49-T',
    evidence: 'derived',
  } as Source,
}

/** Power factor of a series motor under way. */
export const runningPowerFactor = {
  value: 0.97,
  source: { title: 'Series motor at speed', evidence: 'common practice' } as Source,
}

/** Middle of the band on a logarithmic scale, and the standard deviation that makes low and high its 95 % limits. */
const middleShare = Math.sqrt(windingShare.low * windingShare.high)
export const windingSpread = Math.log(windingShare.high / windingShare.low) / (2 * 1.96)

/** Figures of a brushed motor that follow from its input power and voltage. Ohm, henry. */
export type MotorFigures = {
  readonly windingOhm: number
  readonly inductanceH: number
  /** Back-EMF over current at speed. */
  readonly backEmfOhm: number
  readonly runningA: number
}

/** A series motor by its phasor diagram: V² = (E + IR)² + (IX)², power factor = (E + IR)/V. */
export const motorFigures = (voltageV: number, frequencyHz: number, powerW: number): MotorFigures => {
  const factor = runningPowerFactor.value
  const runningA = powerW / (voltageV * factor)
  const impedanceOhm = voltageV / runningA
  const windingOhm = middleShare * impedanceOhm
  return {
    windingOhm,
    inductanceH: (impedanceOhm * Math.sqrt(1 - factor * factor)) / (2 * Math.PI * frequencyHz),
    backEmfOhm: impedanceOhm * factor - windingOhm,
    runningA,
  }
}

/** Current of a series motor that is held still, over its running current. */
export const standstillShare = {
  /** Two textbook machines: 1.98 and 2.23 times. */
  low: 2,
  /** Upper ratio of the rush when a machine starts: 12 A machines draw 30 to 50 A. */
  high: 4,
  source: {
    title: 'Two textbook universal motors at standstill; inrush of vacuum cleaners as the upper end',
    url: 'https://www.scribd.com/presentation/508167811/EEC302A-49-T',
    evidence: 'derived',
  } as Source,
  highSource: {
    title: 'Starting current of a 12 A vacuum cleaner',
    clause: '30 to 50 A for 8 to 12 ms',
    url: 'https://www.vacsew.com/horse-power-is-horse-hockey.html',
    evidence: 'retrieved',
  } as Source,
} as const
