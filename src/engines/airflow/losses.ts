import { standardAir } from '../../facts/air.ts'
import { mediumQuotedAt, swameeJain } from '../../facts/air-losses.ts'

/**
 * Quadratic loss of a length of hose or duct in Pa/(m³/s)², in standard air: b = (f L/D + ΣK) (ρ/2)/A².
 * @param friction Darcy friction factor; facts/air-losses.ts has those of hoses
 * @param fittings sum of the loss coefficients of entrance, bends and exit
 */
export const hoseLoss = (diameterM: number, lengthM: number, friction: number, fittings = 0): number => {
  const areaM2 = (Math.PI / 4) * diameterM ** 2
  return (((friction * lengthM) / diameterM + fittings) * standardAir.densityKgPerM3) / (2 * areaM2 ** 2)
}

/** Linear loss of a filter or bag in Pa/(m³/s), from the permeability of its medium as quoted (m³/s per m² at 200 Pa) and its area. */
export const mediumLoss = (permeabilityMPerS: number, areaM2: number): number =>
  mediumQuotedAt.pressurePa / (permeabilityMPerS * areaM2)

/** Darcy friction factor of a pipe by the approximation of Swamee and Jain; Reynolds number from 5e3 to 1e8. */
export const pipeFriction = (reynolds: number, roughnessOverDiameter: number): number => {
  const { factor, roughness, reynolds: constant, power } = swameeJain
  return factor / Math.log10(roughnessOverDiameter / roughness + constant / reynolds ** power) ** 2
}
