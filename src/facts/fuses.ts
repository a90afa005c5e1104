import type { Source } from '../base/source.ts'

/** A BS 1362 cartridge fuse may lose this much power at its rated current, in watt. */
export const fusePowerLossW = {
  value: 1,
  source: {
    title: 'BS 1362, greatest power loss at rated current',
    url: 'https://connected-fidelity.com/news-from-connected-fidelity/why-a-british-standard-13a-rated-fuse-does-not-blow-at-13a',
    evidence: 'retrieved',
  } as Source,
}

/** Hot resistance that a cartridge fuse of this rating has at most, in ohm: power loss over current squared. */
export const fuseOhm = (ratingA: number): number => fusePowerLossW.value / (ratingA * ratingA)

/** Carries 1.6 times its rating for half an hour, melts within half an hour at 1.9 times. */
export const fuseFactors = {
  nonFusing: 1.6,
  fusing: 1.9,
  source: {
    title: 'BS 1362, non-fusing and fusing current',
    url: 'https://kilcullenscience.blogspot.com/2025/02/13-fuses-dont-blow-instantly-when.html',
    evidence: 'retrieved',
  } as Source,
}
