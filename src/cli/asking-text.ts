import { moneyText } from '../base/money.ts'
import type { KeptPrice } from '../bench/prices/comparables.ts'
import type { CountedPrice, WhatToAsk } from '../bench/prices/what-to-ask.ts'
import { gradeFacts } from '../facts/asking.ts'
import type { ImprovementView } from '../machine/asking.ts'

/** Every so many prices of the curve make a table that can be read. */
const everyPrice = 5

/** What to ask for a machine, as lines. */
export const askingLines = ({ asking, prices }: WhatToAsk): readonly string[] => {
  const money = (minor: number): string => moneyText(minor, asking.currency)
  const { sale, choices, best, floor } = asking
  return [
    `Ask ${money(asking.askMinor)} (grade ${choices.grade}: ${gradeFacts[choices.grade].name})`,
    `Nine sales in ten bring ${money(sale.lowMinor)} to ${money(sale.highMinor)}, half of them more than ${money(sale.medianMinor)}`,
    `At that price half have sold after ${daysText(best.medianDays)}; ${percent(best.sellsShare)} within ${choices.horizonDays} days`,
    `Not below ${money(floor.minor)}: ${floor.parts.map(({ name, minor }) => `${name} ${money(minor)}`).join(', ')}`,
    '',
    'Price, days until half have sold, sold in time, money on average:',
    ...asking.curve
      .filter((_, at) => at % everyPrice === 0)
      .map(
        (at) =>
          `  ${money(at.priceMinor)}  ${daysText(at.medianDays)}  ${percent(at.sellsShare)}  ${money(at.expectedMinor)}`,
      ),
    '',
    'What each thing adds:',
    ...asking.improvements.map((one) => improvementLine(one, money)),
    '',
    ...(prices.length === 0 ? [] : ['Prices it rests on:', ...prices.map(countedLine), '']),
    ...asking.restsOn.map((text) => `${text}.`),
    ...asking.sources.map((source) => `Source: ${source}`),
  ]
}

const daysText = (days: number): string => {
  const whole = Math.max(1, Math.round(days))
  return whole === 1 ? '1 day' : `${whole} days`
}
const percent = (share: number): string => `${Math.round(share * 100)} %`

const improvementLine = (one: ImprovementView, money: (minor: number) => string): string => {
  const { name, on, gainMinor, costMinor, minutes, perMinuteMinor } = one
  const each = perMinuteMinor === null ? '' : `, ${money(perMinuteMinor)} a minute`
  return `  [${on ? 'x' : ' '}] ${name}: ${money(gainMinor)} more, costs ${money(costMinor)} and ${minutes} min${each}`
}

const countedLine = ({ name, id, priceMinor, currency, day, grade, from, say }: CountedPrice): string => {
  const what = `${moneyText(priceMinor, currency)} on ${day}, grade ${grade}, ${from === 'own' ? 'your sale' : 'seen'}`
  const counts = say === null ? 'does not count' : `counts ${say.weight.toFixed(2)}${say.isOdd ? ', odd' : ''}`
  return `  ${name === '' ? id : name}: ${what}; ${counts}`
}

/** Prices that were entered, as lines. */
export const keptPriceLines = (prices: readonly KeptPrice[]): readonly string[] =>
  prices.length === 0
    ? ['No prices entered']
    : prices.map(({ id, blueprint, model, priceMinor, currency, day, sold, days, grade, place, text }) =>
        [
          `${id}  ${moneyText(priceMinor, currency)}`,
          `${sold ? 'sold' : 'unsold'} ${day}${days === undefined ? '' : ` after ${days} days`}`,
          `${blueprint}, grade ${grade}`,
          ...[model, place, text].filter((words) => words !== ''),
        ].join(', '),
      )
