import { problem, type Problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'
import type { MachineEvent } from './events.ts'
import { amountProblems, moved, saleLines, type Posting } from './posting.ts'

/** Where a machine stands. `stockMinor`: what it cost so far; of a sold one, what the sale took as cost. */
type Standing =
  | { readonly kind: 'not-yet' }
  | { readonly kind: 'in-hand'; readonly stockMinor: number }
  | { readonly kind: 'sold'; readonly stockMinor: number; readonly receivedMinor: number }
  | { readonly kind: 'written-off' }

type Step = { readonly after: Standing; readonly lines: readonly Posting[] }

/**
 * The lines of one machine's log, in order; those of each event add up to nothing. Double entry at cost: what is paid for a
 * machine stays in stock until it is sold or written off.
 * @param events in the order they happened
 * @returns refused, naming the note, where the history is impossible: sold twice, more cost taken off than there is, an
 * amount that is not whole
 */
export const postMachine = (events: readonly MachineEvent[]): Result<readonly Posting[]> => {
  let standing: Standing = { kind: 'not-yet' }
  const lines: Posting[] = []
  for (const event of events) {
    const step = next(standing, event)
    if (step.kind === 'refused') return step
    standing = step.value.after
    lines.push(...step.value.lines)
  }
  return ok(lines)
}

const next = (standing: Standing, event: MachineEvent): Result<Step> => {
  const wrong = amountProblems(event)
  if (wrong.length > 0) return refused(...wrong)
  switch (standing.kind) {
    case 'not-yet':
      return event.kind === 'bought'
        ? step({ kind: 'in-hand', stockMinor: event.minor }, moved(event, 'cash', 'machines', event.minor))
        : refused(notBought(event))
    case 'in-hand':
      return inHand(standing.stockMinor, event)
    case 'sold':
      return event.kind === 'came-back' ? cameBack(standing, event) : refused(hasLeft(event, 'sold'))
    case 'written-off':
      return refused(hasLeft(event, 'written off'))
  }
}

const step = (after: Standing, lines: readonly Posting[]): Result<Step> => ok({ after, lines })

const inHand = (stockMinor: number, event: MachineEvent): Result<Step> => {
  const stays = (changeMinor: number): Standing => ({ kind: 'in-hand', stockMinor: stockMinor + changeMinor })
  switch (event.kind) {
    case 'bought':
      return refused(boughtTwice(event))
    case 'spent':
      return step(stays(event.minor), moved(event, 'cash', 'machines', event.minor))
    case 'part-fitted':
      return step(stays(event.minor), moved(event, 'shelf', 'machines', event.minor, event.part))
    case 'part-taken':
      if (event.minor > stockMinor) return refused(tooMuchTaken(event, event.minor, stockMinor))
      return step(stays(-event.minor), moved(event, 'machines', 'shelf', event.minor, event.part))
    case 'sold':
      return step(
        { kind: 'sold', stockMinor, receivedMinor: event.receivedMinor },
        saleLines(event, 'machines', stockMinor),
      )
    case 'written-off':
      return step({ kind: 'written-off' }, moved(event, 'machines', 'written-off', stockMinor))
    case 'came-back':
      return refused(notSold(event))
  }
}

const cameBack = (
  { stockMinor, receivedMinor }: Extract<Standing, { kind: 'sold' }>,
  event: Extract<MachineEvent, { kind: 'came-back' }>,
): Result<Step> => {
  if (event.refundMinor > receivedMinor) return refused(refundTooHigh(event, receivedMinor))
  return step({ kind: 'in-hand', stockMinor }, [
    ...moved(event, 'cash', 'sales', event.refundMinor),
    ...moved(event, 'cost-of-sales', 'machines', stockMinor),
  ])
}

type Noted = { readonly note: string }

const notBought = ({ note }: Noted): Problem =>
  problem('not-bought', note, 'This machine has not come in yet', 'Let its log begin with what was paid, 0 if nothing')
const boughtTwice = ({ note }: Noted): Problem =>
  problem('bought-twice', note, 'This machine was bought already', 'Enter what else was paid for it as spent')
const hasLeft = ({ note }: Noted, how: string): Problem =>
  problem('has-left', note, `This machine was ${how} before that`, 'Strike out the note of its leaving first')
const notSold = ({ note }: Noted): Problem =>
  problem('not-sold', note, 'This machine was not sold, so it cannot come back', 'Enter its sale first')
const refundTooHigh = ({ note }: Noted, receivedMinor: number): Problem =>
  problem(
    'refund-too-high',
    note,
    `More is given back than the ${receivedMinor} minor units received`,
    'Give what the buyer got',
  )

/** More cost is taken off than is there. */
export const tooMuchTaken = ({ note }: Noted, takenMinor: number, thereMinor: number): Problem =>
  problem(
    'too-much-taken',
    note,
    `${takenMinor} minor units of cost are taken off, and only ${thereMinor} are there`,
    `Take at most ${thereMinor}`,
  )
