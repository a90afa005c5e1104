import type { BuyingView } from '../../machine/buying/index.ts'
import type { Guess } from './advert-note.ts'

/** What is kept of a buying view, so that it can be held against what came of it. Whole minor units. */
export const guessOf = ({ ceiling, atAsking, faults }: BuyingView): Guess => ({
  ceilingMinor: Math.floor(ceiling.exactMinor),
  expectedMinor: Math.round(atAsking.profitMinor),
  spreadMinor: Math.round(atAsking.spreadMinor),
  expectedMin: Math.round(atAsking.minutes),
  lossChance: atAsking.lossChance,
  likely: faults.map(({ id, probability }) => ({ fault: id, probability: Math.min(1, probability) })),
})
