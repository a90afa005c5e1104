import type { Source } from '../base/source.ts'

const cipm: Source = {
  title:
    'Picard, Davis, Gläser and Fujii, Revised formula for the density of moist air (CIPM-2007), Metrologia 45, 149',
  edition: '2008',
  clause: 'coefficients as given in the documentation of a public metrology package',
  url: 'https://rdrr.io/cran/masscor/man/airDensity.html',
  evidence: 'retrieved',
}

/** Formula of CIPM-2007 for the density of moist air: coefficients in SI units, t in °C, T in K, p in Pa. */
export const moistAir = {
  saturation: { a: 1.2378847e-5, b: -1.9121316e-2, c: 33.93711047, d: -6343.1645 },
  enhancement: { alpha: 1.00062, beta: 3.14e-8, gamma: 5.6e-7 },
  compressibility: {
    a0: 1.58123e-6,
    a1: -2.9331e-8,
    a2: 1.1043e-10,
    b0: 5.707e-6,
    b1: -2.051e-8,
    c0: 1.9898e-4,
    c1: -2.376e-6,
    d: 1.83e-11,
    e: -0.765e-8,
  },
  /** kg/mol at 400 parts per million of carbon dioxide. */
  dryMolarMass: 28.96546e-3,
  waterMolarMass: 18.01528e-3,
  gasConstant: 8.314472,
  source: cipm,
} as const

/** Where CIPM-2007 was fitted. Outside, it still holds to a few parts in ten thousand, which is far less than a gauge can tell. */
export const moistAirRange = {
  lowPa: 60_000,
  highPa: 110_000,
  lowC: 15,
  highC: 27,
  source: {
    title: 'Documentation of a public package for the density of air, citing CIPM-2007',
    url: 'https://rdrr.io/github/sergmonic/uLPAQ/man/densidad_aire.html',
    evidence: 'retrieved',
  } as Source,
} as const

/** Standard air, to which air data are customarily corrected. */
export const standardAir = {
  temperatureC: 20,
  pressurePa: 101_325,
  densityKgPerM3: 1.2,
  source: {
    title: 'Standard air of air-data methods for vacuum cleaners: 20 °C, 101.3 kPa, 1.20 kg/m³',
    evidence: 'from memory',
  } as Source,
} as const

/** Ratio of specific heats of air. */
export const heatRatio = {
  value: 1.4,
  source: { title: 'Ratio of specific heats of air', evidence: 'from memory' } as Source,
} as const

/** Viscosity of air by Sutherland's law: µ = µ0 (T/T0)^1.5 (T0 + S)/(T + S). Pa·s, K. */
export const sutherland = {
  viscosityPaS: 1.716e-5,
  temperatureK: 273.15,
  constantK: 110.4,
  source: { title: "Sutherland's law for air", evidence: 'from memory' } as Source,
} as const

/**
 * Torque of a series motor goes as current to this power. 4/3 gives at once the two density exponents in use for air data, 0.667 for
 * suction and 0.5 for power; between 1.5 and 1 (field hardly saturated to saturated) suction goes as voltage to the 1.2 to 2.
 */
export const motorTorqueExponent = {
  value: 4 / 3,
  source: {
    title: 'Series motor on a fan: torque as current to the 4/3, matching customary density corrections',
    evidence: 'derived',
  } as Source,
} as const
