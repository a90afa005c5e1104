import { ukCords } from '../../facts/cords.ts'
import { copperRatio, seriesOhm } from './conductor.ts'
import type { ConductorSize } from './sizes.ts'

/** Volts lost in a lead, out and return, and the heat in it. */
export type VoltageDrop = {
  /** From the conductor's resistance at that temperature. */
  readonly dropV: number
  readonly shareOfMains: number
  readonly lostW: number
  /** By the table of mV per ampere and metre (BS 7671 4F3B, 60 °C); null for a size that is not in it. */
  readonly tableV: number | null
}

/** mV per ampere and metre × current × length, in volt. */
export const tableDropV = (dropMvPerAm: number, currentA: number, lengthM: number): number =>
  (dropMvPerAm * currentA * lengthM) / 1000

/** Twice the conductor at its temperature × current: out and return, in volt. */
export const physicalDropV = (ohmPerKm: number, temperatureC: number, currentA: number, lengthM: number): number =>
  seriesOhm(ohmPerKm, lengthM, 2) * copperRatio(temperatureC) * currentA

/** Voltage drop of a lead at a current, with its conductors at the highest resistance they may have. */
export const voltageDrop = (
  size: ConductorSize,
  lengthM: number,
  currentA: number,
  mainsV: number,
  temperatureC: number,
): VoltageDrop => {
  const dropV = physicalDropV(size.maximumOhmPerKm, temperatureC, currentA, lengthM)
  const row = size.awg === null ? ukCords.find(({ areaMm2 }) => areaMm2 === size.areaMm2) : undefined
  return {
    dropV,
    shareOfMains: dropV / mainsV,
    lostW: dropV * currentA,
    tableV: row === undefined ? null : tableDropV(row.dropMvPerAm, currentA, lengthM),
  }
}
