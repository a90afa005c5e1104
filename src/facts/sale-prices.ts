import type { Source } from '../base/source.ts'

const judged = (clause: string): Source => ({
  title: 'Prices of machines sold cleaned and working, UK street level 2024–26',
  clause,
  evidence: 'judgement',
})

/** What nine machines in ten of a class fetch, cleaned and working, in pence. A start, for the bench's own sales to overrule. */
export const classPrices = {
  'budget-bagless-upright': { name: 'budget bagless upright', lowMinor: 1500, highMinor: 3000 },
  'multi-cyclone-upright': { name: 'bagless multi-cyclone upright', lowMinor: 4000, highMinor: 9000 },
  'belted-bagged-upright': { name: 'mid bagged upright, belt from the motor', lowMinor: 3000, highMinor: 6000 },
  'premium-bagged-upright': {
    name: 'premium bagged upright, separate brush motor',
    lowMinor: 7000,
    highMinor: 14000,
  },
  'commercial-upright': { name: 'commercial upright, separate brush motor', lowMinor: 8000, highMinor: 18000 },
  'budget-cylinder': { name: 'budget cylinder', lowMinor: 1200, highMinor: 2500 },
  'bagged-cylinder': { name: 'bagged cylinder with reel', lowMinor: 4000, highMinor: 10000 },
  'electric-head-cylinder': { name: 'cylinder with an electric head', lowMinor: 8000, highMinor: 16000 },
  tub: { name: 'tub', lowMinor: 4000, highMinor: 7500 },
  collectable: { name: 'collectable old machine', lowMinor: 3000, highMinor: 15000 },
} as const

export const classPricesSource = judged('sold cleaned and working, by class')

export type PriceClass = keyof typeof classPrices
export const priceClassIds = Object.keys(classPrices) as [PriceClass, ...PriceClass[]]

/** How much of the spread (variance of the logarithm) inside a class lies between its kinds, between the models of a kind, and between sales of one model. */
export const spreadShares = {
  kinds: 0.3,
  models: 0.3,
  sales: 0.4,
  source: judged('how far kinds, models and sales of one class differ'),
} as const

/** How unsure these figures are: standard deviations of logarithms. */
export const priceDoubt = {
  /** Of the middle of a class. */
  centre: 0.25,
  /** Of the spread between kinds and models, as a factor. */
  spread: 0.5,
  /** Of the spread between sales of one model, as a factor. */
  sales: 0.4,
  source: judged('how far the table may be out'),
} as const

/** Degrees of freedom of the noise of a sale: at 4 one silly price in ten has little say. */
export const saleDegrees = {
  value: 4,
  source: {
    title: 'Lange, Little and Taylor, Robust statistical modeling using the t distribution',
    edition: '1989',
    evidence: 'from memory',
  } satisfies Source,
}

/** Days after which a sale counts half. */
export const priceHalfLife = { days: 365, source: judged('how fast second-hand prices date') }

/** What a price counts for that was seen and entered, beside a sale of one's own. */
export const enteredWeight = { value: 0.7, source: judged('condition and completeness of a machine never seen') }
