import type { Repair } from '../../blueprint/schema.ts'
import { payoffs } from '../../machine/payoff.ts'
import type { ExitId } from '../../machine/view.ts'
import { between, toStep } from './draws.ts'
import { daysLater, faultsNow, jobNow, reach, turn, write, type Hand, type Piece } from './hand.ts'
import { fromShelf, type Useful } from './trade.ts'

/** What a blemish may take off the price before it is mended. */
const blemish = 0.95

/** The faults that must go before it is sold as working. */
const toMend = (hand: Hand): readonly number[] =>
  faultsNow(hand).filter((fault) => (hand.lot.blueprint.faults[fault]?.saleShareIfLeft ?? 0) < blemish)

/** How it leaves with most money, by the plan's own figures for each way out, once the fault is known. */
export const bestExit = (hand: Hand): ExitId => {
  const job = jobNow(hand)
  const now = payoffs(job, faultsNow(hand))
  const mended = payoffs(job, []).sellWorking - mendingMinor(hand)
  const ways: readonly (readonly [ExitId, number])[] = [
    ['sell-working', mended],
    ['sell-for-spares', now.sellForSpares],
    ['break-for-parts', now.breakForParts],
    ['scrap', now.scrap],
  ]
  return ways.toSorted(([, a], [, b]) => b - a)[0][0]
}

type Option = Repair['options'][number]

const mendingMinor = (hand: Hand): number => {
  const { hourMinor } = hand.document!.state
  return toMend(hand).reduce((sum, fault) => {
    const repair = repairOf(hand, fault)
    if (repair === null) return Infinity
    const option = optionOf(repair, null)
    return sum + middle(option) + (option.minutes / 60) * hourMinor
  }, 0)
}

const middle = ({ costMinor: { low, high } }: Option): number => (low + high) / 2

/** The cheapest of the repairs that take the fault away. */
const repairOf = ({ lot: { blueprint } }: Hand, fault: number): Repair | null => {
  const id = blueprint.faults[fault]?.id ?? ''
  const fitting = blueprint.repairs.filter(({ removes }) => removes.includes(id))
  return fitting.toSorted((a, b) => middle(optionOf(a, null)) - middle(optionOf(b, null)))[0] ?? null
}

/** What most surely helps; with a part of the shelf, fitting that. */
const optionOf = ({ options }: Repair, part: Useful | null): Option => {
  const wanted = part === null ? undefined : options.find(({ id }) => id === (part.isBought ? 'new' : 'salvaged'))
  return (
    wanted ?? options.filter(({ id }) => id !== 'salvaged').toSorted((a, b) => b.success - a.success)[0] ?? options[0]
  )
}

const mostTries = 2

/** Mends what must be mended; true when it is all gone. */
export function* mend(hand: Hand): Piece<boolean> {
  for (let tries = 0; tries < mostTries && toMend(hand).length > 0; tries++) {
    for (const fault of toMend(hand)) {
      const repair = repairOf(hand, fault)
      if (repair === null) return false
      // One repair may have taken another fault with it.
      if (toMend(hand).includes(fault)) yield* repairOnce(hand, repair)
    }
  }
  return toMend(hand).length === 0
}

function* repairOnce(hand: Hand, repair: Repair): Piece {
  const { lot, trade, random } = hand
  let part: Useful | null = null
  yield* turn(hand, async (deps) => {
    part = await fromShelf(trade, deps, lot.blueprint, repair.part)
    return hand.document
  })
  const option = optionOf(repair, part)
  const used = usable(option, part)
  const needsOrder = used === null && option.costMinor.low > 0
  if (needsOrder) daysLater(hand, between(random, 2, 6))
  if (needsOrder && lot.fate === 'waits-for-a-part') daysLater(hand, 60)
  yield* reach(hand, repair.coversOff)
  yield* write(hand, {
    kind: 'repaired',
    repair: repair.id,
    option: option.id,
    minutes: Math.round(option.minutes * between(random, 0.8, 1.4)),
    costMinor: used?.costMinor ?? toStep(between(random, option.costMinor.low, option.costMinor.high), 5),
    ...(used === null ? {} : { shelfPart: used.id }),
  })
}

/** The part goes in only where the repair is one of fitting such a part. */
const usable = (option: Option, part: Useful | null): Useful | null =>
  part !== null && option.id === (part.isBought ? 'new' : 'salvaged') ? part : null
