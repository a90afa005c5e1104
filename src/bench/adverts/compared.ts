import type { Currency } from '../../base/money.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { MachineState } from '../contract.ts'
import type { AdvertState } from './advert-state.ts'

/** A bought advert's guess against what came of its machine once it has left. Money in minor units above own time. */
export type Compared = {
  readonly advert: string
  readonly machine: string
  readonly name: string
  readonly currency: Currency
  readonly paidMinor: number
  readonly ceilingMinor: number
  readonly belowCeiling: boolean
  /** As guessed, at the price that was paid. */
  readonly guessedMinor: number
  readonly gotMinor: number
  /** Standard deviation of the guess. */
  readonly spreadMinor: number
  readonly guessedMin: number
  readonly gotMin: number
  readonly lossChance: number
  readonly lost: boolean
  /** Faults that were confirmed, else those that the repairs took away; by id. */
  readonly found: readonly string[]
  /** Whether one of them was among the likely; null where none is known. */
  readonly foreseen: boolean | null
}

/**
 * How the guess of an advert compares with what came of it; null while it is undecided, was passed by, or its machine is in hand.
 * @param blueprint by which repairs tell of faults; undefined where it is not known here
 */
export const comparedWith = (
  { id, advert, guess, decided }: AdvertState,
  machine: MachineState,
  blueprint: Blueprint | undefined,
): Compared | null => {
  if (decided?.kind !== 'bought' || machine.left === null) return null
  const gotMinor = machine.left.profitMinor - (machine.minutes * machine.hourMinor) / 60
  const found = foundIn(machine, blueprint)
  const likely = new Set(guess.likely.map(({ fault }) => fault))
  return {
    advert: id,
    machine: machine.id,
    name: machine.name,
    currency: machine.currency,
    paidMinor: decided.paidMinor,
    ceilingMinor: guess.ceilingMinor,
    belowCeiling: decided.paidMinor <= guess.ceilingMinor,
    guessedMinor: guess.expectedMinor + advert.askingMinor - decided.paidMinor,
    gotMinor: Math.round(gotMinor),
    spreadMinor: guess.spreadMinor,
    guessedMin: guess.expectedMin,
    gotMin: machine.minutes,
    lossChance: guess.lossChance,
    lost: gotMinor < 0,
    found,
    foreseen: found.length === 0 ? null : found.some((fault) => likely.has(fault)),
  }
}

const foundIn = ({ confirmed, fixed }: MachineState, blueprint: Blueprint | undefined): readonly string[] => {
  if (confirmed.length > 0) return [...new Set(confirmed.map(({ fault }) => fault))]
  const removes = fixed.flatMap(({ repair }) => blueprint?.repairs.find(({ id }) => id === repair)?.removes ?? [])
  return [...new Set(removes)]
}

/** All that were bought and have left, in one currency: were the guesses right on average, and losses as often as foretold? */
export type Calibration = {
  readonly currency: Currency
  readonly count: number
  /** Means. */
  readonly guessedMinor: number
  readonly gotMinor: number
  /** Losses that the chances add up to, and that there were. */
  readonly lossesForetold: number
  readonly losses: number
  /** The same apart for deals with a low and a high chance of loss. */
  readonly byChance: readonly { readonly atMost: number; readonly count: number; readonly losses: number }[]
  readonly belowCeiling: number
  /** Of those whose fault is known. */
  readonly foreseen: number
  readonly faultKnown: number
}

/** Where a chance of loss begins to be high: one in four. Judgement. */
const highChance = 0.25

export const calibrationOf = (all: readonly Compared[]): readonly Calibration[] =>
  [...new Set(all.map(({ currency }) => currency))].map((currency) => {
    const some = all.filter((one) => one.currency === currency)
    const mean = (of: (one: Compared) => number): number => some.reduce((sum, one) => sum + of(one), 0) / some.length
    const known = some.filter(({ foreseen }) => foreseen !== null)
    return {
      currency,
      count: some.length,
      guessedMinor: mean(({ guessedMinor }) => guessedMinor),
      gotMinor: mean(({ gotMinor }) => gotMinor),
      lossesForetold: some.reduce((sum, { lossChance }) => sum + lossChance, 0),
      losses: lossesIn(some),
      byChance: [
        binOf(some.filter(({ lossChance }) => lossChance < highChance), highChance), // prettier-ignore
        binOf(some.filter(({ lossChance }) => lossChance >= highChance), 1), // prettier-ignore
      ],
      belowCeiling: some.filter(({ belowCeiling }) => belowCeiling).length,
      foreseen: known.filter(({ foreseen }) => foreseen === true).length,
      faultKnown: known.length,
    }
  })

const lossesIn = (some: readonly Compared[]): number => some.filter(({ lost }) => lost).length

const binOf = (some: readonly Compared[], atMost: number): Calibration['byChance'][number] => ({
  atMost,
  count: some.length,
  losses: lossesIn(some),
})
