import { heatRatio } from '../../facts/air.ts'
import { expansibility1989, expansibility2003, freeHole, roundedHole, thickHole } from '../../facts/orifice.ts'

/**
 * Expansibility of an orifice: how much less mass passes because the air expands. `pressureRatio` is downstream over upstream,
 * absolute; `beta` hole over pipe diameter, 0 for a hole in a large wall. ISO 5167-2:2003, fitted for ratios of 0.80 and above.
 */
export const expansibility = (pressureRatio: number, beta = 0, kappa: number = heatRatio.value): number => {
  const { a, b, c } = expansibility2003
  return 1 - (a + b * beta ** 4 + c * beta ** 8) * (1 - pressureRatio ** (1 / kappa))
}

/** The same by the formula of 1989. */
export const olderExpansibility = (pressureRatio: number, beta = 0, kappa: number = heatRatio.value): number =>
  1 - ((expansibility1989.a + expansibility1989.b * beta ** 4) * (1 - pressureRatio)) / kappa

/** Discharge coefficient of a square-edged hole by thickness over diameter, up to 1.4; constant beyond. Free discharge. */
export const thickDischarge = (thicknessOverDiameter: number): number => {
  const { constant, full, short, reattachment, half, powers, upTo } = thickHole
  const x = Math.min(thicknessOverDiameter, upTo) / reattachment
  const apart = Math.max(0, 1 - half * x ** powers[0] - half * x ** powers[1]) ** powers[2]
  return 1 / Math.sqrt(constant + apart * full ** 2 + (1 - apart) * (short + 1))
}

/** Discharge coefficient of a thin hole by radius of its inlet edge over diameter: from the sharp one's to 0.97. */
export const roundedDischarge = (radiusOverDiameter: number): number => {
  const { limit, loss, decay } = roundedHole
  const sharp = (limit / freeHole.discharge - 1) / Math.sqrt(loss)
  return limit / (1 + sharp * Math.sqrt(loss * 10 ** (-decay * radiusOverDiameter)))
}

/**
 * Discharge coefficient of a hole in a large wall, from its thickness and the radius of its inlet edge, in the units of the diameter.
 * A thick hole and a round edge both let the jet fill the hole, so the larger of the two counts.
 */
export const freeDischarge = (diameter: number, thickness: number, edgeRadius: number): number => {
  const thick = (freeHole.discharge * thickDischarge(thickness / diameter)) / thickDischarge(0)
  return Math.max(thick, roundedDischarge(edgeRadius / diameter))
}
