import { comebackMin, exitCosts } from '../../facts/trade.ts'
import { grades } from '../../facts/asking.ts'
import { usualDays } from '../../facts/sale-days.ts'
import { travelOf } from '../../machine/buying/index.ts'
import { partPriceOf } from '../../machine/prices.ts'
import { costsOf } from '../costs.ts'
import { defaultSettings } from '../settings.ts'
import { takeOff, takeOffSchema, type TakeOffInput } from '../shelf/take-off.ts'
import { between, nineInTen, oneOf, toStep, twoInThree } from './draws.ts'
import { daysLater, faultsNow, jobNow, reach, turn, write, type Hand, type Piece } from './hand.ts'
import type { Lot } from './lots.ts'
import { cameBackWords, scrapWords } from './sayings.ts'
import { sellsSomeDay } from './shelf-stories.ts'
import { settled } from './turns.ts'

const listingMinutes = exitCosts.sellWorking.photographMin + exitCosts.sellWorking.listMin

/** Stands for sale for as long as such machines do, then goes. */
export function* sellWorking(hand: Hand, safety: string): Piece<number> {
  const { random, lot } = hand
  const { low, high } = lot.blueprint.worth.workingMinor
  const receivedMinor = toStep(nineInTen(random, low, high), 500)
  // A buyer seldom pays all that is asked.
  const askedMinor = toStep(receivedMinor * between(random, 1, 1.15), 500)
  yield* write(hand, {
    kind: 'listed',
    priceMinor: askedMinor,
    where: 'Advert in the town',
    grade: oneOf(random, grades),
  })
  const days = usualDays.rows.find(({ upToMinor }) => receivedMinor <= upToMinor)!
  daysLater(hand, twoInThree(random, days.lowDays, days.highDays))
  const byPost = random.uniform() < 0.15
  yield* write(hand, {
    kind: 'left',
    exit: 'sell-working',
    receivedMinor,
    ...(byPost ? postal(receivedMinor) : {}),
    minutes: Math.round((listingMinutes + exitCosts.sellWorking.handOverMin) * between(random, 0.7, 1.4)),
    safety,
  })
  return receivedMinor
}

/** What a parcel of this weight costs to send: invented, as the whole of the year is. */
const parcelMinor = 1295

/** Sold through an advert that takes its fee, and posted. */
const postal = (receivedMinor: number) => ({
  feeMinor: Math.round(receivedMinor * exitCosts.breakForParts.feeShare),
  postageMinor: parcelMinor,
})

export function* sellForSpares(hand: Hand): Piece {
  const { random, lot } = hand
  const { listMin, handOverMin } = exitCosts.sellForSpares
  daysLater(hand, between(random, 1, 12))
  yield* write(hand, {
    kind: 'left',
    exit: 'sell-for-spares',
    receivedMinor: toStep(
      between(random, lot.blueprint.worth.sparesMinor.low, lot.blueprint.worth.sparesMinor.high),
      100,
    ),
    minutes: listMin + handOverMin,
  })
}

export function* scrap(hand: Hand): Piece {
  yield* write(hand, { kind: 'said', text: oneOf(hand.random, scrapWords) })
  yield* write(hand, { kind: 'left', exit: 'scrap', receivedMinor: 0, minutes: exitCosts.scrap.minutes })
}

/** The buyer has the money back, and the machine stands on the bench again. */
export function* comeBack(hand: Hand, refundMinor: number): Piece {
  daysLater(hand, between(hand.random, 6, 20))
  yield* write(hand, {
    kind: 'came-back',
    refundMinor,
    minutes: comebackMin.value,
    text: oneOf(hand.random, cameBackWords),
  })
}

const mostPartsTaken = 5

/** Takes off what sells on its own, lets the rest go, and has each part wait for its buyer. */
export function* breakForParts(hand: Hand): Piece {
  const { lot, random, trade } = hand
  const worth = partsWorthTaking(hand)
  yield* reach(hand, [...new Set(worth.flatMap(({ behind }) => (behind === undefined ? [] : [behind])))])
  const asked: TakeOffInput = {
    id: `${lot.id}.parts`,
    version: hand.document!.state.version,
    taken: worth.map(({ id, name }) => ({
      part: id,
      name: `${name}, ${lot.model}`,
      condition: random.uniform() < 0.6 ? 'tested' : 'looks-sound',
      place: `Box ${1 + Math.floor(random.uniform() * 6)}`,
      fetchesMinor: Math.round(
        partPriceOf(
          jobNow(hand),
          lot.blueprint.parts.find((part) => part.id === id)!,
        )!.minor,
      ),
      minutes: exitCosts.breakForParts.perPartStripMin + Math.floor(random.uniform() * 6),
    })),
    breaks: { receivedMinor: 0, minutes: exitCosts.scrap.minutes },
  }
  yield* turn(hand, async (deps) =>
    settled(`${lot.id}, broken`, await takeOff(deps, lot.id, takeOffSchema.parse(asked))),
  )
  worth.forEach(({ id }, i) => {
    const part = `${lot.id}.parts.${i + 1}`
    trade.kept.push({ id: part, blueprint: lot.blueprint.id, part: id, isBought: false })
    trade.begin(sellsSomeDay(part, lot.seed, hand.atMs))
  })
}

/** Sound parts that fetch something on their own, the dearest first. */
const partsWorthTaking = (hand: Hand) => {
  const { lot } = hand
  const job = jobNow(hand)
  const faulty = new Set(faultsNow(hand).map((fault) => lot.blueprint.faults[fault].part))
  return lot.blueprint.parts
    .flatMap((part) => {
      const price = partPriceOf(job, part)
      const isSound = !faulty.has(part.id) && ![...faulty].some((id) => withinOf(hand, id) === part.id)
      return price === null || !isSound || part.within !== undefined ? [] : [{ ...part, price }]
    })
    .toSorted((a, b) => b.price.minor - a.price.minor)
    .slice(0, mostPartsTaken)
}

const withinOf = ({ lot }: Hand, part: string): string | undefined =>
  lot.blueprint.parts.find(({ id }) => id === part)?.within

/** What fetching it by car costs and takes; what is given is brought. */
export const fetching = ({ distanceKm, source }: Lot): { readonly travelMinor: number; readonly travelMin: number } => {
  if (source === 'given') return { travelMinor: 0, travelMin: 0 }
  const { kmMinor, minutes } = travelOf(distanceKm, costsOf(defaultSettings), 0)
  return { travelMinor: Math.round(kmMinor), travelMin: Math.round(minutes) }
}
