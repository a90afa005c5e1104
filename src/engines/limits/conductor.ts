import { contactOhm, copperTemperature } from '../../facts/copper.ts'
import { kiloFeetPerKm } from '../../facts/awg.ts'
import type { ConductorSize } from './sizes.ts'

export type TemperatureFormula = keyof typeof copperTemperature

const referenceC = 20

/** Resistance of copper at a temperature over that at 20 °C (IEC 60228, Annex B, or the simplified table). */
export const copperRatio = (temperatureC: number, formula: TemperatureFormula = 'exact'): number => {
  const { zeroC } = copperTemperature[formula]
  return (zeroC + temperatureC) / (zeroC + referenceC)
}

/** The factor kt that brings a resistance measured at a temperature to 20 °C: one over `copperRatio`. */
export const copperFactor = (temperatureC: number, formula: TemperatureFormula = 'exact'): number =>
  1 / copperRatio(temperatureC, formula)

/** Ohm of so many conductors one after another: ohm per km × length, at the temperature of the figure. */
export const seriesOhm = (ohmPerKm: number, lengthM: number, conductors = 1): number =>
  (ohmPerKm * lengthM * conductors) / 1000

/** Ohm per 1000 ft as ohm per km. */
export const ohmPerKmFromKft = (ohmPerKft: number): number => ohmPerKft * kiloFeetPerKm

export type LeadResistance = {
  /** The most that sound copper of this size has, at that temperature. */
  readonly maximumOhm: number
  readonly usualOhm: number
  /** What a meter shows on a sound lead at most, contacts of plug and terminals with it, its own leads nulled. */
  readonly readingAtMostOhm: number
}

/**
 * Resistance of a lead's conductors one after another, from length, size and temperature. Ohm.
 * @param conductors 1 for one core from end to end, 2 for line and neutral joined at the far end
 */
export const leadResistance = (
  size: ConductorSize,
  lengthM: number,
  conductors: number,
  temperatureC: number,
  isTinned: boolean,
): LeadResistance => {
  const perKm = isTinned ? size.maximumTinnedOhmPerKm : size.maximumOhmPerKm
  const maximumOhm = seriesOhm(perKm, lengthM, conductors) * copperRatio(temperatureC)
  return {
    maximumOhm,
    usualOhm: maximumOhm * size.typicalShare,
    readingAtMostOhm: maximumOhm + contactOhm.high,
  }
}
