import { problemText } from '../../base/problem.ts'
import { buyAdvert } from '../adverts/buy-advert.ts'
import { between } from './draws.ts'
import { findOut } from './find-out.ts'
import { closeAll, daysLater, handOn, turn, write, type Hand, type Piece } from './hand.ts'
import { breakForParts, comeBack, fetching, scrap, sellForSpares, sellWorking } from './leave.ts'
import type { ExitId } from '../../machine/view.ts'
import type { Lot } from './lots.ts'
import { bestExit, mend } from './mend.ts'
import { clean, proveSafe, showWorking, type Shown } from './prove.ts'
import type { Trade } from './trade.ts'
import type { Story } from './turns.ts'

/** The whole story of a machine of the year, as far as it gets. */
export function* machineStory(lot: Lot, trade: Trade): Story {
  const hand = handOn(lot, trade)
  yield* comesIn(hand)
  daysLater(hand, between(hand.random, 0.5, 6))
  yield* findOut(hand)
  const exit = exitOf(hand)
  if (exit === 'break-for-parts') return yield* breakForParts(hand)
  if (exit === 'scrap') return yield* scrap(hand)
  const isMended = exit === 'sell-working' && (yield* mend(hand))
  const shown = isMended ? yield* showWorking(hand) : 'not'
  if (shown === 'not') {
    yield* closeAll(hand)
    return yield* sellForSpares(hand)
  }
  yield* goesOut(hand, shown)
}

/** What the story has in mind, or what pays. */
const exitOf = (hand: Hand): ExitId => {
  switch (hand.lot.fate) {
    case 'broken':
      return 'break-for-parts'
    case 'scrapped':
      return 'scrap'
    case 'comes-back':
    case 'waits-for-a-part':
      return 'sell-working'
    case 'as-it-pays':
      return bestExit(hand)
  }
}

function* comesIn(hand: Hand): Piece {
  const { lot } = hand
  if (lot.advert === null) yield* isAdded(hand)
  else yield* isBought(hand, lot.advert)
  yield* write(hand, { kind: 'said', text: 'Invented for the demonstration: no such machine, seller or sale.' })
}

function* isBought(hand: Hand, advert: string): Piece {
  const { id, paidMinor, name, model, source } = hand.lot
  yield* turn(hand, async (deps) => {
    const outcome = await buyAdvert(deps, advert, { id, version: 1, paidMinor, name, model, source })
    if (outcome.kind === 'done') return outcome.machine
    throw new Error(`demonstration, ${id} bought: ${outcome.problems.map(problemText).join(' ')}`)
  })
}

function* isAdded(hand: Hand): Piece {
  const { lot } = hand
  yield* write(hand, {
    kind: 'added',
    name: lot.name,
    model: lot.model,
    blueprint: lot.blueprint.id,
    plate: lot.blueprint.plate,
    currency: 'GBP',
    paidMinor: lot.paidMinor,
    complaints: [...lot.complaints],
    claim: lot.claim,
    source: lot.source,
    ...fetching(lot),
  })
}

/** Some have no proof of their own and say who made one. */
const sharesProof = 0.25

function* goesOut(hand: Hand, shown: Shown): Piece {
  yield* clean(hand)
  // A run that failed stays in the proof, so a machine that needed two runs is not proved by this bench alone.
  const proves = shown === 'at-once' && hand.random.uniform() >= sharesProof
  if (proves) yield* proveSafe(hand)
  const safety = proves ? '' : 'Tested by a friend with the instrument for it; the sheet went with the machine'
  const receivedMinor = yield* sellWorking(hand, safety)
  if (hand.lot.fate !== 'comes-back') return
  yield* comeBack(hand, receivedMinor)
  daysLater(hand, 2)
  if ((yield* showWorking(hand)) !== 'not') yield* sellWorking(hand, 'As before; opened nowhere since')
  else yield* sellForSpares(hand)
}
