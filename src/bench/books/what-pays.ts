import type { Currency } from '../../base/money.ts'
import { credibleMeans, hourlyMinor } from '../../engines/money/index.ts'
import type { ResultLine } from '../ports.ts'

/** By what machines that left are told apart. */
export const paysBy = ['blueprint', 'complaint', 'source'] as const
export type PaysBy = (typeof paysBy)[number]

/** What machines of one kind brought. Money in minor units. */
export type PaysLine = {
  readonly key: string
  readonly name: string
  readonly machines: number
  /** So few that their mean says little. */
  readonly few: boolean
  readonly profitMinor: number
  readonly profitEachMinor: number
  /** What the next one is likely to bring: the mean, drawn towards that of the whole bench the more, the fewer there are. */
  readonly likelyEachMinor: number
  readonly minutesEach: number
  readonly hourlyMinor: number | null
  readonly atLoss: number
}

/** Fewer than this are said to be few. Judgement. */
const fewBelow = 5

export const paysMethod =
  'Likely for the next one: the mean of the kind and that of all machines, weighed by how many there are and how far they lie apart (Bühlmann–Straub credibility, empirical Bayes; Klugman, Panjer and Willmot, Loss Models, from memory)'

/** What pays, the dearest in profit first. */
export const paysLines = (
  results: readonly ResultLine[],
  currency: Currency,
  nameOf: (key: string) => string,
): readonly PaysLine[] => {
  const own = results.filter((line) => line.currency === currency)
  const credible = credibleMeans(
    own.map(({ machines, profitMinor, profitSquares }) => ({
      count: machines,
      sum: profitMinor,
      squares: profitSquares,
    })),
  )
  return own.map((line, i) => ({
    key: line.key,
    name: nameOf(line.key),
    machines: line.machines,
    few: line.machines < fewBelow,
    profitMinor: line.profitMinor,
    profitEachMinor: Math.round(line.profitMinor / line.machines),
    likelyEachMinor: Math.round(credible[i]?.likely ?? 0),
    minutesEach: line.minutes / line.machines,
    hourlyMinor: hourlyMinor(line.profitMinor, line.minutes),
    atLoss: line.atLoss,
  }))
}
