import type { Source } from '../base/source.ts'

/** Resistance of annealed copper against temperature: R(t) / R(20 °C) = (zeroC + t) / (zeroC + 20). */
export const copperTemperature = {
  exact: {
    zeroC: 234.5,
    source: {
      title: 'IEC 60228, Annex B, temperature correction of copper conductors',
      clause: 'kt = 254.5 / (234.5 + t)',
      url: 'https://ajdocs.ru/gsp/42736/21',
      evidence: 'retrieved',
    } as Source,
  },
  simplified: {
    zeroC: 230,
    source: {
      title: 'Simplified table of correction factors in cable makers’ tables',
      clause: 'kt = 250 / (230 + t)',
      url: 'https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html',
      evidence: 'retrieved',
    } as Source,
  },
} as const

/** What sound contacts of plug, terminals and reel add together, in ohm. */
export const contactOhm = {
  low: 0.02,
  high: 0.1,
  source: { title: 'Contacts in a lead, together', evidence: 'from memory' } as Source,
} as const

/** How well a bench knows a cable: length by tape measure or arm, as a share of it; temperature of the room. Half-widths. */
export const benchSpread = {
  lengthShare: 0.02,
  temperatureC: 3,
  source: { title: 'Length along a coiled cable, temperature of a room', evidence: 'judgement' } as Source,
} as const

/** Shares of the maximum resistance: sound copper reads between the first and the maximum; below the second something else is wrong. */
export const soundShare = {
  least: 0.9,
  suspicious: 0.8,
  source: {
    title: 'Genuine cords measure 0 to 10 % below the IEC 60228 maximum; a fifth below is most likely a wrong length',
    evidence: 'judgement',
  } as Source,
} as const
