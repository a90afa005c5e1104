import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { sourceText } from '../../base/source-text.ts'
import { marginSchemes } from '../../facts/margin-scheme.ts'
import { taxNote } from '../../facts/tax-years.ts'
import { globalMargins, itemMargins, type ItemMargin, type PeriodMargin } from './margin-scheme.ts'
import type { MarginTask } from './request-schema.ts'

export type MarginAnswer = {
  readonly ratePercent: number
  readonly items: readonly ItemMargin[]
  readonly periods: readonly PeriodMargin[]
  /** Tax on all items and periods together. */
  readonly vatMinor: number
  /** What this is and is not, with region and year. */
  readonly note: string
  readonly source: string
}

/** Value added tax on second-hand margins, as information. Refused where a rate is neither known nor given, or an item is too dear. */
export const marginScheme = ({
  region,
  ratePercent,
  items,
  periods,
  openingMinor,
}: MarginTask): Result<MarginAnswer> => {
  const scheme = marginSchemes[region]
  if (scheme === undefined) return refused(noScheme(region))
  const rate = ratePercent ?? scheme.ratePercent
  if (rate === null) return refused(noRate)
  const apart = itemMargins(items, rate)
  const together = globalMargins(periods, rate, openingMinor, scheme.globalItemMinor)
  if (together.kind === 'refused') return together
  return ok({
    ratePercent: rate,
    items: apart,
    periods: together.value,
    vatMinor: [...apart, ...together.value].reduce((sum, { vatMinor }) => sum + vatMinor, 0),
    note: taxNote(region, scheme.asOf),
    source: sourceText(scheme.source),
  })
}

const noScheme = (region: string) =>
  problem('no-margin-scheme', 'do.region', `No margin scheme is known here for ${region}`, 'Ask an adviser there')
const noRate = problem(
  'no-rate',
  'do.ratePercent',
  'Each member state has its own rate',
  'Give the rate as per cent, such as 23',
)
