import { moneyText } from '../../base/money.ts'
import { classPrices } from '../../facts/sale-prices.ts'
import type { Level } from './price-places.ts'
import type { ComparableSay, PriceBand } from './price-answer.ts'
import type { PriceTask } from './request-schema.ts'

/** How wide nine in ten sales lie, as a factor up and down from the middle. 1: not wide at all. */
export const bandFactor = ({ ninety: [low, high] }: PriceBand): number => Math.sqrt(high / low)

const levelWords: Readonly<Record<Level, string>> = {
  model: 'of this very model',
  kind: 'of other models of its kind',
  class: 'of other kinds in its class',
}

/** What an estimate rests on, as sentences without their full stops. */
export const restsOn = (task: PriceTask, comparables: readonly ComparableSay[], sale: PriceBand): readonly string[] => [
  priorWords(task),
  ...(Object.keys(levelWords) as Level[]).flatMap((level) => levelSentence(level, comparables)),
  ...(comparables.length === 0 ? ['No sales to compare with: this is the prior alone'] : []),
  ...comparables.filter(({ isOdd }) => isOdd).map((one) => oddSentence(one, task)),
  `Nine sales in ten would bring between ${moneyText(sale.ninety[0], task.currency)} and ${moneyText(sale.ninety[1], task.currency)}, a factor of ${bandFactor(sale).toFixed(2)} either way`,
]

const priorWords = ({ prior, class: id, currency }: PriceTask): string => {
  const band = prior ?? (id === null ? null : classPrices[id])
  if (band === null) return 'No prior'
  const what =
    prior === null && id !== null ? `The table’s prices of a ${classPrices[id].name}` : 'Prices given beforehand'
  return `${what}, ${moneyText(band.lowMinor, currency)} to ${moneyText(band.highMinor, currency)}`
}

const levelSentence = (level: Level, comparables: readonly ComparableSay[]): readonly string[] => {
  const here = comparables.filter((one) => one.level === level)
  if (here.length === 0) return []
  const weight = here.reduce((sum, one) => sum + one.weight, 0)
  const newest = Math.min(...here.map(({ ageDays }) => ageDays))
  const count = here.length === 1 ? '1 sale' : `${here.length} sales`
  const age = here.length === 1 ? `${newest} days old` : `the newest ${newest} days old`
  return [`${count} ${levelWords[level]}, ${age}, counting for ${weight.toFixed(1)}`]
}

const oddSentence = ({ id, likeMinor, believedShare }: ComparableSay, { currency }: PriceTask): string =>
  `“${id}” at ${moneyText(likeMinor, currency)} is far from the rest and counts ${Math.round(believedShare * 100)} % of what it would`
