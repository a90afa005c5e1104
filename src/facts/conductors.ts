import type { Source } from '../base/source.ts'

const url = 'https://mycableengineering.com/knowledge-base/iec-60228-dc-resistance'
const iec60228: Source = {
  title: 'IEC 60228, maximum DC resistance at 20 °C, class 5 copper',
  clause: 'as reprinted in cable makers’ tables',
  url,
  evidence: 'retrieved',
}

/**
 * Largest resistance that a flexible copper conductor may have, in ohm per kilometre (the same as milliohm per metre):
 * plain copper, and with its wires tinned.
 */
export const flexibleConductors = [
  { areaMm2: 0.5, maximumOhmPerKm: 39.0, maximumTinnedOhmPerKm: 40.1, source: iec60228 },
  { areaMm2: 0.75, maximumOhmPerKm: 26.0, maximumTinnedOhmPerKm: 26.7, source: iec60228 },
  { areaMm2: 1.0, maximumOhmPerKm: 19.5, maximumTinnedOhmPerKm: 20.0, source: iec60228 },
  {
    areaMm2: 1.25,
    maximumOhmPerKm: 15.6,
    maximumTinnedOhmPerKm: 16.1,
    source: {
      title: '1.25 mm² is not in the IEC 60228 series; value in trade tables',
      evidence: 'from memory',
    } as Source,
  },
  { areaMm2: 1.5, maximumOhmPerKm: 13.3, maximumTinnedOhmPerKm: 13.7, source: iec60228 },
  { areaMm2: 2.5, maximumOhmPerKm: 7.98, maximumTinnedOhmPerKm: 8.21, source: iec60228 },
] as const

/** A genuine cord measures up to a tenth below the maximum; its middle is taken. */
export const typicalShareOfMaximum = {
  value: 0.95,
  source: { title: 'Genuine cords measure 0 to 10 % below the IEC 60228 maximum', evidence: 'judgement' } as Source,
}

/**
 * Typical resistance of one conductor of a flexible cord at 20 °C, in ohm.
 * Cross-sections between the table's rows go by area (resistance times area of the nearest row).
 */
export const conductorOhm = (lengthM: number, areaMm2: number): number => {
  const nearest = flexibleConductors.reduce((best, row) =>
    Math.abs(row.areaMm2 - areaMm2) < Math.abs(best.areaMm2 - areaMm2) ? row : best,
  )
  const perKm = (nearest.maximumOhmPerKm * nearest.areaMm2) / areaMm2
  return ((perKm * lengthM) / 1000) * typicalShareOfMaximum.value
}
