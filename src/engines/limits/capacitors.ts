import { pulledPlug } from '../../facts/capacitors.ts'

/** Current through a capacitor on the mains, in ampere: 2π f C V. Through the capacitors to the frame it is leakage. */
export const capacitorCurrentA = (capacitanceF: number, voltageV: number, frequencyHz: number): number =>
  2 * Math.PI * frequencyHz * capacitanceF * voltageV

/**
 * The largest bleed resistance, in ohm, that takes a capacitor from the crest of the mains to a voltage in a time:
 * t / (C ln(√2 V / v)). By default to 34 V in 1 s (IEC 60335-1, 22.5). Infinite where the crest is no higher than that.
 */
export const largestBleedOhm = (
  capacitanceF: number,
  voltageV: number,
  toV: number = pulledPlug.voltageV,
  withinS: number = pulledPlug.afterS,
): number => {
  const decades = Math.log((Math.SQRT2 * voltageV) / toV)
  return decades > 0 ? withinS / (capacitanceF * decades) : Infinity
}
