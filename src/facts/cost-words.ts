import { moneyFromText, moneyText, type Currency } from '../base/money.ts'
import { costNames, kmPerMile, type CostName } from './trade-costs.ts'

/** How a cost is written: an amount, minutes, or a share as percent. */
export type CostUnit = 'money' | 'minutes' | 'percent'

type CostWords = {
  /** As the command line names it. */
  readonly id: string
  readonly name: string
  readonly unit: CostUnit
}

/** Names of the costs for the page and the command line. */
export const costWords: Readonly<Record<CostName, CostWords>> = {
  perKmMinor: { id: 'per-km', name: 'Driving a kilometre', unit: 'money' },
  minutesPerKm: { id: 'minutes-per-km', name: 'Minutes a kilometre takes', unit: 'minutes' },
  collectMin: { id: 'collect-minutes', name: 'Fetching a machine, besides driving', unit: 'minutes' },
  materialsMinor: { id: 'materials', name: 'Bag, filters, cleaning of one sold working', unit: 'money' },
  saleFeeShare: { id: 'sale-fee', name: 'Fee of selling a machine', unit: 'percent' },
  partFeeShare: { id: 'part-fee', name: 'Fee of selling a part by post', unit: 'percent' },
  postageMinor: { id: 'postage', name: 'Postage of a part, where you pay it', unit: 'money' },
  comebackShare: { id: 'comebacks', name: 'Sound machines sold that come back', unit: 'percent' },
  comebackMin: { id: 'comeback-minutes', name: 'Your time for one that comes back', unit: 'minutes' },
}

/** The cost that the command line names so; undefined where none is. */
export const costById = (id: string): CostName | undefined => costNames.find((name) => costWords[name].id === id)

const percent = 100
const decimals = 2

/** A cost as it is typed: `0.28`, `1.55`, `10`. Never more than two decimals. */
export const costFieldText = (name: CostName, value: number): string => {
  switch (costWords[name].unit) {
    case 'money':
      return (value / 100).toFixed(decimals)
    case 'minutes':
      return String(Number(value.toFixed(decimals)))
    case 'percent':
      return String(Number((value * percent).toFixed(decimals)))
  }
}

/** What was typed as a cost: minor units, minutes, or a share 0 to 1; null where it is not a number of that kind. */
export const costFromText = (name: CostName, text: string): number | null => {
  const { unit } = costWords[name]
  if (unit === 'money') return moneyFromText(text)
  const match = /^\s*(\d{1,5}(?:[.,]\d{1,2})?)\s*(?:%|min)?\s*$/.exec(text)
  if (match === null) return null
  const number = Number(match[1].replace(',', '.'))
  if (unit === 'minutes') return number
  return number <= percent ? number / percent : null
}

/** A cost in words: `£0.28 (£0.45 a mile)`, `1.55 min`, `10 %`. */
export const costText = (name: CostName, value: number, currency: Currency): string => {
  const text = costFieldText(name, value)
  switch (costWords[name].unit) {
    case 'money':
      return name === 'perKmMinor'
        ? `${moneyText(value, currency)} (${moneyText(value * kmPerMile, currency)} a mile)`
        : moneyText(value, currency)
    case 'minutes':
      return `${text} min`
    case 'percent':
      return `${text} %`
  }
}

/** What to write in place of something that is not of the kind. */
export const costMend: Readonly<Record<CostUnit, string>> = {
  money: 'Write an amount such as 0.45',
  minutes: 'Write minutes such as 10',
  percent: 'Write percent from 0 to 100, such as 12.5',
}
