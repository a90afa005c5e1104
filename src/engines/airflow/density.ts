import { moistAir, moistAirRange, sutherland } from '../../facts/air.ts'

/** The air a check was made in. Humidity as a fraction, 0 to 1. */
export type Room = {
  readonly barometerPa: number
  readonly temperatureC: number
  readonly relativeHumidity: number
}

/** Air of a room, as the formulas use it. `insideRange` is whether the density formula was fitted for such air. */
export type RoomAir = {
  readonly pressurePa: number
  readonly densityKgPerM3: number
  readonly viscosityPaS: number
  readonly insideRange: boolean
}

const zeroC = 273.15

/** Saturation pressure of water vapour in Pa (CIPM-2007). */
const saturationPa = (kelvin: number): number => {
  const { a, b, c, d } = moistAir.saturation
  return Math.exp(a * kelvin ** 2 + b * kelvin + c + d / kelvin)
}

/** Mole fraction of water vapour, 0 to 1 (CIPM-2007). */
const vapourFraction = ({ barometerPa, temperatureC, relativeHumidity }: Room): number => {
  const { alpha, beta, gamma } = moistAir.enhancement
  const enhancement = alpha + beta * barometerPa + gamma * temperatureC ** 2
  return (relativeHumidity * enhancement * saturationPa(temperatureC + zeroC)) / barometerPa
}

/** Density of moist air in kg/m³. Method: CIPM-2007 at 400 parts per million of carbon dioxide. */
export const airDensityKgPerM3 = (room: Room): number => {
  const { a0, a1, a2, b0, b1, c0, c1, d, e } = moistAir.compressibility
  const { barometerPa: p, temperatureC: t } = room
  const kelvin = t + zeroC
  const x = vapourFraction(room)
  const first = a0 + a1 * t + a2 * t * t + (b0 + b1 * t) * x + (c0 + c1 * t) * x * x
  const z = 1 - (p / kelvin) * first + (p / kelvin) ** 2 * (d + e * x * x)
  const { dryMolarMass, waterMolarMass, gasConstant } = moistAir
  return ((p * dryMolarMass) / (z * gasConstant * kelvin)) * (1 - x * (1 - waterMolarMass / dryMolarMass))
}

/** Dynamic viscosity of air in Pa·s by Sutherland's law; humidity is left out (below 1 % at room temperature). */
export const airViscosityPaS = (temperatureC: number): number => {
  const kelvin = temperatureC + zeroC
  const { viscosityPaS, temperatureK, constantK } = sutherland
  return (viscosityPaS * (kelvin / temperatureK) ** 1.5 * (temperatureK + constantK)) / (kelvin + constantK)
}

/** The air of a room: pressure, density, viscosity. */
export const airOfRoom = (room: Room): RoomAir => {
  const { lowPa, highPa, lowC, highC } = moistAirRange
  const { barometerPa, temperatureC } = room
  return {
    pressurePa: barometerPa,
    densityKgPerM3: airDensityKgPerM3(room),
    viscosityPaS: airViscosityPaS(temperatureC),
    insideRange: barometerPa >= lowPa && barometerPa <= highPa && temperatureC >= lowC && temperatureC <= highC,
  }
}
