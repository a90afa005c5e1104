import type { Source } from '../base/source.ts'

/** A positive figure whose logarithm is normal: half of the time below `median`; `sigma` is the standard deviation of its logarithm. */
export type LogNormal = { readonly median: number; readonly sigma: number }

const judged = (title: string): Source => ({ title, evidence: 'judgement' })

/** What a sound machine's figures may be, relative to its blueprint. */
export const soundAir = {
  /** Motor speed against that of the reference at the same voltage and density. */
  speed: { median: 1, sigma: 0.025 },
  /** Pressure the fan gives at that speed. */
  fan: { median: 1, sigma: 0.03 },
  /** Loss of a section against its clean value. */
  loss: { median: 1, sigma: 0.25 },
  /** Leak at a joint, mm². */
  leakMm2: { median: 1, sigma: 0.8 },
  /** Mains voltage against nominal where it was not measured. */
  mains: { median: 1, sigma: 0.03 },
  source: judged('Spread of sound machines about their own reference'),
} as const

/** What the figures are when something is wrong. */
export const faultyAir = {
  leakMm2: { median: 50, sigma: 1 },
  /** A blocked section or loaded filter: published rows of loaded bags are 14 to 23 times clean. */
  loss: { median: 5, sigma: 0.8 },
  speed: { median: 0.85, sigma: 0.08 },
  fan: { median: 0.8, sigma: 0.15 },
  bleedMm2: { median: 80, sigma: 0.7 },
  mains: { median: 0.92, sigma: 0.03 },
  source: judged('Size of faults that make someone call a machine weak'),
  loadedSource: {
    title: 'Loaded filter bags, rows of a published table: 14 to 23 times the clean resistance',
    evidence: 'derived',
  } as Source,
} as const

/** What the figures may be where more than one thing is wrong at once: wide, so that only readings that contradict each other are left out. */
export const severalAir = {
  leakMm2: { median: 8, sigma: 1.5 },
  loss: { median: 2, sigma: 1 },
  speed: { median: 0.92, sigma: 0.12 },
  fan: { median: 0.9, sigma: 0.15 },
  source: judged('Spread of machines with several faults'),
} as const

/** Prior weights of the usual explanations where nothing better is passed in; those of a kind share theirs. */
export const airFaultWeights = {
  sound: 0.3,
  blockage: 0.35,
  leak: 0.17,
  'tired-motor': 0.07,
  'worn-fan': 0.03,
  'bleed-open': 0.03,
  'low-mains': 0.03,
  several: 0.02,
  source: judged('How often weak suction has which cause'),
} as const

/** Deviations beyond which a reading is said to fit no machine. */
export const contradictionSigma = { value: 3, source: judged('Three standard deviations') } as const

/** Evidence in favour of one explanation over another below which they are said not to be told apart. */
export const strongEvidence = {
  ratio: 10,
  source: {
    title: 'Jeffreys, Theory of Probability: grades of evidence, strong from ten to one',
    evidence: 'from memory',
  },
} as const satisfies { readonly ratio: number; readonly source: Source }
