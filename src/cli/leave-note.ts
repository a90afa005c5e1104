import { moneyFromText } from '../base/money.ts'
import { problem } from '../base/problem.ts'
import { ok, refused } from '../base/result.ts'
import { repairBarriers, type RepairBarrier } from '../facts/open-repair-data.ts'
import type { Maker, Noting } from './noting.ts'
import { textOf } from './option-text.ts'

/** `thrum leave`: how the machine left the bench. */
export const addLeaving = (noting: Noting): void => {
  noting(
    'leave <machine> <exit> <received>',
    'the machine leaves: sell-working, sell-for-spares, break-for-parts, scrap',
    leftNote,
  )
    .option('--safety <words>', 'who made the safety checks and with what, or why it is sold without', '')
    .option('--fee <money>', 'what selling it cost')
    .option('--postage <money>', 'postage that you paid')
    .option(
      '--barrier <words>',
      `broken up or scrapped, what stood in the way of mending it: ${repairBarriers.join(', ')}`,
    )
}

const leftNote: Maker = (_document, [exit = '', received = ''], options) => {
  const receivedMinor = moneyFromText(received)
  if (receivedMinor === null)
    return refused(problem('not-money', 'received', `“${received}” is not an amount of money`, 'Write such as 45.00'))
  const feeMinor = moneyFromText(textOf(options, 'fee') ?? '0')
  const postageMinor = moneyFromText(textOf(options, 'postage') ?? '0')
  const barrier = textOf(options, 'barrier')
  if (feeMinor === null || postageMinor === null)
    return refused(problem('not-money', '--fee, --postage', 'That is not an amount of money', 'Write such as 4.50'))
  return ok({
    kind: 'left',
    exit: exit as 'scrap',
    receivedMinor,
    ...(feeMinor === 0 ? {} : { feeMinor }),
    ...(postageMinor === 0 ? {} : { postageMinor }),
    safety: textOf(options, 'safety') ?? '',
    ...(barrier === undefined ? {} : { barrier: barrier as RepairBarrier }),
  })
}
