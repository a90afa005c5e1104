import { expansibility2003, holeMakes, holeUncertainty, thickHole, weakHole } from '../../facts/orifice.ts'
import type { RoomAir } from './density.ts'
import { expansibility, freeDischarge } from './discharge.ts'

/** A hole through which the machine is let breathe: in a plate, a cap, a board over the end of the hose. */
export type Plate = {
  readonly id: string
  readonly diameterM: number
  readonly thicknessM: number
  /** Radius of the edge on the room's side; 0 for a sharp one. */
  readonly edgeRadiusM: number
  readonly make: keyof typeof holeMakes
  /** Standard uncertainty of the diameter. */
  readonly diameterUncertaintyM: number
}

/** A sharp hole in thin sheet, measured by calliper: what is left out of a plate is filled in from this. */
export const plainPlate = (
  id: string,
  diameterM: number,
  given: Partial<Omit<Plate, 'id' | 'diameterM'>> = {},
): Plate => ({
  id,
  diameterM,
  thicknessM: 0,
  edgeRadiusM: 0,
  make: 'drilled-sheet',
  diameterUncertaintyM: holeUncertainty.diameterM,
  ...given,
})

export type PlateFlow = {
  /** Flow as air of the room: mass flow over the room's density. */
  readonly airflowM3PerS: number
  readonly massKgPerS: number
  /** Suction times airflow. */
  readonly airPowerW: number
  readonly discharge: number
  readonly expansibility: number
  readonly throatReynolds: number
  /** Relative standard uncertainties from hole and suction together. */
  readonly airflowUncertainty: number
  readonly airPowerUncertainty: number
  /** What makes this hole or this suction weak evidence, as sentences. */
  readonly remarks: readonly string[]
}

/** Discharge coefficient of a plate. */
export const plateDischarge = ({ diameterM, thicknessM, edgeRadiusM }: Plate): number =>
  freeDischarge(diameterM, thicknessM, edgeRadiusM)

/** Area of a plate's hole in m². */
export const plateAreaM2 = ({ diameterM }: Plate): number => (Math.PI / 4) * diameterM ** 2

/** Relative standard uncertainty of the flow through a plate at a known suction: diameter twice, and the coefficient. */
export const plateUncertainty = ({ diameterM, diameterUncertaintyM, make }: Plate): number =>
  Math.hypot((2 * diameterUncertaintyM) / diameterM, holeMakes[make].uncertainty)

/**
 * Flow through a hole from the room, from the suction behind it: m = C ε A √(2 ρ Δp) with the approach velocity zero. Based on the
 * formulas of ISO 5167-2; a hole in a cap has no pipe before it and is outside that standard.
 * @param suctionPa static suction behind the hole, 0 up to the barometer
 * @param suctionUncertainty relative standard uncertainty of the suction
 */
export const plateFlow = (plate: Plate, suctionPa: number, air: RoomAir, suctionUncertainty = 0): PlateFlow => {
  const discharge = plateDischarge(plate)
  const ratio = Math.max(0, air.pressurePa - suctionPa) / air.pressurePa
  const epsilon = expansibility(ratio)
  const massKgPerS = discharge * epsilon * plateAreaM2(plate) * Math.sqrt(2 * air.densityKgPerM3 * suctionPa)
  const airflowM3PerS = massKgPerS / air.densityKgPerM3
  const ofHole = plateUncertainty(plate)
  return {
    airflowM3PerS,
    massKgPerS,
    airPowerW: airflowM3PerS * suctionPa,
    discharge,
    expansibility: epsilon,
    throatReynolds: (4 * massKgPerS) / (Math.PI * plate.diameterM * air.viscosityPaS),
    airflowUncertainty: Math.hypot(ofHole, suctionUncertainty / 2),
    airPowerUncertainty: Math.hypot(ofHole, 1.5 * suctionUncertainty),
    remarks: plateRemarks(plate, suctionPa, ratio),
  }
}

const plateRemarks = (plate: Plate, suctionPa: number, pressureRatio: number): readonly string[] => {
  const { diameterM, thicknessM, edgeRadiusM } = plate
  const remarks: string[] = []
  if (diameterM < weakHole.belowM) remarks.push('So small a hole is weak evidence; holes of 13 to 30 mm tell more')
  if (suctionPa < weakHole.belowPa) remarks.push('So low a suction is weak evidence; a smaller hole tells more')
  if (pressureRatio < expansibility2003.lowestRatio) {
    remarks.push(
      'The suction is beyond the range of the formula for expanding air, which goes to a fifth of the barometer',
    )
  }
  if (thicknessM / diameterM > thickHole.thinUpTo) {
    remarks.push('The hole is thick for its width, and the flow more than a sharp one’s; the correction is rough')
  }
  if (edgeRadiusM > 0)
    remarks.push('The edge is rounded, and the flow more than a sharp one’s; the correction is rough')
  return remarks
}
