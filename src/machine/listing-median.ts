import { askedByChoice } from '../facts/sale-days.ts'
import type { Market } from './market.ts'

/** Nine in ten of a normal law lie within so many standard deviations of its middle. */
const ninetySds = 1.645

/**
 * What a listed machine was itself likely worth, minor units. An asked price differs from what its kind fetches for two reasons: the machine is
 * better or worse than its kind, or somebody chose to ask more or less. Only the second says how days go with the price; taken for the first,
 * dear machines that sold quickly would teach that asking twice as much costs no time. So the logarithm of the difference is shared
 * between the two by their variances: regression calibration (Carroll, Ruppert, Stefanski and Crainiceanu, Measurement Error in Nonlinear
 * Models, 2006, chapter 4; from memory).
 * @param kindMinor what a machine of its kind in its state fetches
 */
export const listingMedian = (
  priceMinor: number,
  kindMinor: number,
  { lowMinor, highMinor }: Pick<Market, 'lowMinor' | 'highMinor'>,
): number => {
  const betweenMachines = (Math.log(highMinor / lowMinor) / (2 * ninetySds)) ** 2
  const byChoice = askedByChoice.sd ** 2
  const chosenShare = byChoice / (byChoice + betweenMachines)
  return Math.max(1, Math.round(priceMinor / (priceMinor / Math.max(1, kindMinor)) ** chosenShare))
}
