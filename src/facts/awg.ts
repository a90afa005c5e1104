import type { Source } from '../base/source.ts'

const strands: Source = {
  title: 'Wire table, seven-strand copper at 20 °C, ohm per 1000 ft',
  url: 'http://search-pdf-files.com/pdf/4619504-resistance-copper-table-wire-printed',
  evidence: 'retrieved',
}

/** Stranded copper by American wire gauge at 20 °C. Areas of the gauge from its definition. */
export const awgConductors = [
  { awg: 18, areaMm2: 0.823, ohmPerKft: 6.636, source: strands },
  {
    awg: 17,
    areaMm2: 1.04,
    ohmPerKft: 5.251,
    source: { title: '18 AWG, seven strands, by area', evidence: 'derived' } as Source,
  },
  { awg: 16, areaMm2: 1.309, ohmPerKft: 4.172, source: strands },
  { awg: 14, areaMm2: 2.081, ohmPerKft: 2.624, source: strands },
] as const

/** Feet in a kilometre over a thousand: ohm per 1000 ft times this is ohm per km. */
export const kiloFeetPerKm = 1 / 0.3048

/** How far public wire tables lie apart; the most a sound conductor can have is this much above the table. */
export const awgSpread = {
  share: 0.05,
  source: {
    title: 'Public tables of stranded copper differ by about 4 % (6.385 to 6.636 ohm per 1000 ft of 18 AWG)',
    url: 'http://www.electricianmath.com/neccalculations/conductorresistance.htm',
    evidence: 'derived',
  } as Source,
}
