import type { Source } from '../base/source.ts'

const judged = (clause: string): Source => ({
  title: 'How long machines stand for sale, UK street level 2024–26',
  clause,
  evidence: 'judgement',
})

/** Days within which two machines in three sell when asked at what they fetch, by what they fetch at most (minor units). */
export const usualDays = {
  rows: [
    { upToMinor: 6000, lowDays: 2, highDays: 10 },
    { upToMinor: 12_000, lowDays: 5, highDays: 20 },
    { upToMinor: Infinity, lowDays: 14, highDays: 42 },
  ],
  source: judged('local sale in a town, by price'),
} as const

/** How unsure these figures are. */
export const daysDoubt = {
  /** Standard deviation of the logarithm of the middle. */
  middle: 0.9,
  /** By what power the days grow with the price over what such machines fetch: mean and standard deviation. */
  pricePower: { mean: 4, sd: 2 },
  /** Standard deviation of the logarithm of the shape. */
  shape: 0.25,
  source: judged('ten per cent dearer stands about half as long again'),
} as const

/** How far an asked price lies from what the machine itself is worth, because somebody chose so: standard deviation of the logarithm. */
export const askedByChoice = {
  sd: 0.15,
  source: judged('most ask within fifteen per cent of what they take it to be worth'),
} as const
