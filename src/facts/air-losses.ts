import type { Source } from '../base/source.ts'

/** Darcy friction factors of vacuum hoses: low, usual, high. */
export const hoseFriction = {
  stretch: { low: 0.03, usual: 0.05, high: 0.1 },
  smoothLined: { low: 0.022, usual: 0.026, high: 0.03 },
  source: { title: 'Friction factors of stretch and of smooth-lined wire hoses', evidence: 'from memory' } as Source,
} as const

/** Media are quoted as litres per second and square metre at this pressure. */
export const mediumQuotedAt = {
  pressurePa: 200,
  source: { title: 'EN ISO 9237, permeability of fabrics to air', evidence: 'from memory' } as Source,
} as const

/** Approximation of Swamee and Jain: f = 0.25/log10(ε/3.7D + 5.74/Re^0.9)². */
export const swameeJain = {
  factor: 0.25,
  roughness: 3.7,
  reynolds: 5.74,
  power: 0.9,
  source: {
    title: 'Swamee–Jain friction factor, as in a public package',
    url: 'https://libraries.io/pypi/colebrook/0.0.3',
    evidence: 'retrieved',
  } as Source,
} as const
