import { motorTorqueExponent, standardAir } from '../../facts/air.ts'
import { metricAirData } from '../../facts/air-power.ts'

/** What a change of air and voltage does to a series motor and its fan, each as a ratio to before. */
export type MotorScaling = {
  readonly speed: number
  readonly suction: number
  readonly airflow: number
  readonly current: number
  readonly inputPower: number
  readonly airPower: number
}

/**
 * Fan on a series motor whose torque goes as current to the power a, with the back-EMF nearly the whole voltage and the fan's torque as
 * density times speed squared: speed = V^(a/(3a−2)) · density^(−(a−1)/(3a−2)). A model, not a standard.
 * @param torqueExponent from 1 (field saturated) to 2 (not saturated); 4/3 matches the customary density corrections
 */
export const motorScaling = (
  densityRatio: number,
  voltageRatio: number,
  torqueExponent: number = motorTorqueExponent.value,
): MotorScaling => {
  const steepness = 3 * torqueExponent - 2
  const speed = voltageRatio ** (torqueExponent / steepness) * densityRatio ** (-(torqueExponent - 1) / steepness)
  const suction = densityRatio * speed ** 2
  const current = suction ** (1 / torqueExponent)
  return {
    speed,
    suction,
    airflow: speed,
    current,
    inputPower: voltageRatio * current,
    airPower: suction * speed,
  }
}

/** Fan laws: what speed and density do to flow, pressure and power, as ratios. */
export const fanLaws = (speedRatio: number, densityRatio: number) => ({
  airflow: speedRatio,
  pressure: densityRatio * speedRatio ** 2,
  power: densityRatio * speedRatio ** 3,
})

/** Suction and input power as they would be in standard air, from air of another density. Based on the metric method, from memory. */
export const atStandardDensity = (suctionPa: number, inputW: number, densityKgPerM3: number) => {
  const ratio = densityKgPerM3 / standardAir.densityKgPerM3
  return {
    densityRatio: ratio,
    suctionPa: suctionPa * ratio ** -metricAirData.suctionExponent,
    inputW: inputW * ratio ** -metricAirData.powerExponent,
  }
}

/** Suction brought to standard air, and to nominal mains where the voltage over nominal is known. */
export const standardSuctionPa = (suctionPa: number, densityKgPerM3: number, mainsRatio: number | null): number =>
  atStandardDensity(suctionPa, 0, densityKgPerM3).suctionPa / motorScaling(1, mainsRatio ?? 1).suction
