import { americanAirData, americanPlates } from '../../facts/air-power.ts'

/** Readings in the customary American units. */
export type AmericanReading = {
  readonly diameterIn: number
  readonly suctionInH2O: number
  readonly barometerInHg: number
  readonly dryBulbF: number
  readonly wetBulbF: number
}

export type AmericanAirPower = {
  readonly densityRatio: number
  readonly plateCoefficient: number
  readonly correctedSuctionInH2O: number
  readonly airflowCfm: number
  readonly airPowerW: number
  /** What input power is multiplied by to bring it to standard air. */
  readonly inputPowerFactor: number
}

/** Density of the room's air over that of standard air (0.075 lb/ft³). */
export const americanDensityRatio = (barometerInHg: number, dryBulbF: number, wetBulbF: number): number => {
  const { barometer, wetSquared, wet, depression, constant, zeroF } = americanAirData.densityRatio
  return (
    (barometer * barometerInHg +
      wetSquared * wetBulbF ** 2 +
      wet * wetBulbF +
      depression * barometerInHg * (dryBulbF - wetBulbF) +
      constant) /
    (dryBulbF + zeroF)
  )
}

/** Air power in W from airflow in cfm and suction in inches of water. */
export const americanWatts = (airflowCfm: number, suctionInH2O: number): number =>
  americanAirData.airPower * airflowCfm * suctionInH2O

/** Coefficient of a listed plate, the expansion of the air included; null for a plate that is not in the list. */
export const americanPlateCoefficient = (
  diameterIn: number,
  suctionInH2O: number,
  barometerInHg: number,
): number | null => {
  const plate = americanPlates.find((one) => Math.abs(one.diameterIn - diameterIn) < 1e-6)
  if (plate === undefined) return null
  const { psiPerInHg, psiPerInH2O } = americanAirData
  const barometerPsi = barometerInHg * psiPerInHg
  const r = (barometerPsi - suctionInH2O * psiPerInH2O) / barometerPsi
  const [a, b, c] = plate.abc
  return (a * r - b) / (r - c)
}

/** Air power by the American chain of constants, for one of its plates; null for another. Based on ASTM F558, from memory. */
export const americanAirPower = (reading: AmericanReading): AmericanAirPower | null => {
  const { diameterIn, suctionInH2O, barometerInHg, dryBulbF, wetBulbF } = reading
  const plateCoefficient = americanPlateCoefficient(diameterIn, suctionInH2O, barometerInHg)
  if (plateCoefficient === null) return null
  const { suctionExponent, powerExponent, flow } = americanAirData
  const densityRatio = americanDensityRatio(barometerInHg, dryBulbF, wetBulbF)
  const correctedSuctionInH2O = suctionInH2O * (1 + suctionExponent * (1 - densityRatio))
  const airflowCfm = flow * diameterIn ** 2 * plateCoefficient * Math.sqrt(correctedSuctionInH2O)
  return {
    densityRatio,
    plateCoefficient,
    correctedSuctionInH2O,
    airflowCfm,
    airPowerW: americanWatts(airflowCfm, correctedSuctionInH2O),
    inputPowerFactor: 1 + powerExponent * (1 - densityRatio),
  }
}
