import { americanCords, applianceCordAreas, ukCords } from '../../facts/cords.ts'
import type { Region } from '../../facts/regions.ts'
import { conductorSizes, type ConductorSize } from './sizes.ts'

/** The smallest conductor for a rated current and a length in a region: mm² by IEC 60335-1 and the region's table, or AWG. */
export const smallestConductor = (region: Region, currentA: number, lengthM: number): ConductorSize | undefined =>
  isAmerican(region) ? smallestGauge(currentA) : smallestArea(region, currentA, lengthM)

/** Whether the region goes by wire gauge. */
export const isAmerican = (region: Region): boolean => region === 'US' || region === 'CA'

/** Smallest area by IEC 60335-1, Table 11, in mm²; undefined above 25 A. */
export const applianceCordArea = (currentA: number, lengthM: number): number | undefined =>
  applianceCordAreas.find(({ upToA, longestM }) => currentA <= upToA && (longestM === null || lengthM <= longestM))
    ?.areaMm2

const smallestArea = (region: Region, currentA: number, lengthM: number): ConductorSize | undefined => {
  const standardMm2 = applianceCordArea(currentA, lengthM)
  const capacityMm2 = region === 'UK' ? ukCords.find(({ capacityA }) => currentA <= capacityA)?.areaMm2 : standardMm2
  if (standardMm2 === undefined || capacityMm2 === undefined) return undefined
  const areaMm2 = Math.max(standardMm2, capacityMm2)
  return conductorSizes.find((size) => size.awg === null && size.areaMm2 === areaMm2)
}

const smallestGauge = (currentA: number): ConductorSize | undefined => {
  const gauge = americanCords.find(({ capacityA }) => currentA <= capacityA)?.awg
  return conductorSizes.find((size) => size.awg !== null && size.awg === gauge)
}
