import { moneyText } from '../../base/money.ts'
import type { MachineState } from '../contract.ts'

export type MoneyLine = { readonly name: string; readonly amount: string }

/** What a machine cost and brought, in words; what is nothing is left out, but not what is left at the end. */
export const storyMoney = (state: MachineState): readonly MoneyLine[] => {
  const { paidMinor, spentMinor, toShelfMinor, receivedMinor, feesMinor, currency, left, minutes } = state
  const line = (name: string, minor: number): readonly MoneyLine[] =>
    minor === 0 ? [] : [{ name, amount: moneyText(minor, currency) }]
  const soFarMinor = receivedMinor - feesMinor - paidMinor - spentMinor + toShelfMinor
  const keptMinor = left?.profitMinor ?? soFarMinor
  return [
    { name: 'Paid for it', amount: moneyText(paidMinor, currency) },
    ...line('Spent on fetching it, parts and materials', spentMinor),
    ...line('Went to the shelf with parts taken off', toShelfMinor),
    ...line('Received', receivedMinor),
    ...line('Fees and postage', feesMinor),
    { name: left === null ? 'Stands at so far' : 'Left over', amount: moneyText(keptMinor, currency) },
    ...(left === null || minutes === 0
      ? []
      : [{ name: 'That is by the hour of work', amount: moneyText((keptMinor * 60) / minutes, currency) }]),
  ]
}
