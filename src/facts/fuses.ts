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

const timeCurrent: Source = {
  title: 'BS 1362, limits of time against current for 3 A and 13 A fuses',
  clause: 'as quoted in an encyclopaedia; taken as typical',
  url: 'http://www.liquisearch.com/bs_1363/fuses',
  evidence: 'retrieved',
}

/** For how long a fuse must carry its non-fusing current, and within what time its fusing current must melt it. */
export const conventionalTimeS = { value: 30 * 60, source: fuseFactors.source } as const

/**
 * Between what times a BS 1362 fuse melts at a current. No shortest time (null): only "less than" is given.
 * From the smallest current up.
 */
export const fuseTimes = [
  {
    ratingA: 3,
    points: [
      { currentA: 9, shortestS: 0.02, longestS: 80 },
      { currentA: 20, shortestS: null, longestS: 0.1 },
      { currentA: 30, shortestS: null, longestS: 0.03 },
    ],
    source: timeCurrent,
  },
  {
    ratingA: 13,
    points: [
      { currentA: 30, shortestS: 1, longestS: 400 },
      { currentA: 50, shortestS: 0.1, longestS: 20 },
      { currentA: 100, shortestS: 0.01, longestS: 0.2 },
    ],
    source: timeCurrent,
  },
] as const

/** Which fuse a plug gets, by the plate's power; colours of the cartridge. */
export const plugFuses = {
  small: { ratingA: 3, colour: 'red', upToW: 700 },
  large: { ratingA: 13, colour: 'brown' },
  source: {
    title: 'Fuse of a 13 A plug: 3 A up to 700 W, 13 A above',
    url: 'https://pat-testing-course.com/blog/news/all-about-fuses',
    evidence: 'retrieved',
  } as Source,
} as const

/** Smallest flexible conductor behind a plug fuse when the length is not restricted. */
export const flexBehindFuse = [
  { fuseA: 3, areaMm2: 0.5 },
  { fuseA: 13, areaMm2: 1.25 },
] as const
export const flexBehindFuseSource: Source = {
  title: 'Smallest flex behind a plug fuse, any length; smaller is allowed where the length is restricted',
  url: 'http://www.pat-testing.info/flex.htm',
  evidence: 'retrieved',
}

/** Watts around the boundary of the two fuses where a hard start may blow the small one. */
export const hardStart = {
  fromW: 600,
  toW: 900,
  source: {
    title: 'Vacuum cleaners of 600 to 900 W may blow a 3 A fuse at starting',
    evidence: 'from memory',
  } as Source,
} as const
