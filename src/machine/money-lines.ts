import { factorValue, type Basis, type Factor, type MoneySum } from '../base/money-sum.ts'
import { sourceText } from '../base/source-text.ts'
import type { Source } from '../base/source.ts'
import { marketWords, type MarketPrice } from './market.ts'

/** What a line rests on: a source, this blueprint, comparable sales, a price, an hour or a cost that somebody set, the plan itself. */
export type Ground =
  | Source
  | { readonly kind: 'blueprint'; readonly what: string }
  | { readonly kind: 'set'; readonly at: string }
  | { readonly kind: 'market'; readonly market: MarketPrice }
  | { readonly kind: 'hour'; readonly at: string | null }
  | { readonly kind: 'cost-set' }
  | { readonly kind: 'plan'; readonly what: string }

/** A line before its sources are numbered. */
export type LineDraft = {
  readonly name: string
  readonly minor: number
  readonly basis: Basis
  readonly grounds: readonly Ground[]
}

/** A line whose amount is the product of its factors, added or taken off. */
export const line = (
  name: string,
  sign: 1 | -1,
  factors: readonly Factor[],
  grounds: readonly Ground[],
): LineDraft => ({
  name,
  minor: sign * factors.reduce((product, factor) => product * factorValue(factor), 1),
  basis: { kind: 'product', factors },
  grounds,
})

export const totalOf = (lines: readonly LineDraft[]): number => lines.reduce((sum, { minor }) => sum + minor, 0)

/** The lines as a sum; each source is named once. */
export const moneySum = (name: string, drafts: readonly LineDraft[]): MoneySum => {
  const sources: string[] = []
  const place = (ground: Ground): number => {
    const text = groundText(ground)
    const known = sources.indexOf(text)
    return known >= 0 ? known : sources.push(text) - 1
  }
  const lines = drafts.map(({ name: lineName, minor, basis, grounds }) => ({
    name: lineName,
    minor,
    basis,
    sources: [...new Set(grounds.map(place))],
  }))
  return { name, minor: totalOf(drafts), lines, sources }
}

const groundText = (ground: Ground): string => {
  if (!('kind' in ground)) return sourceText(ground)
  switch (ground.kind) {
    case 'blueprint':
      return `This blueprint: ${ground.what}`
    case 'set':
      return `Price set by you on ${dayText(ground.at)}`
    case 'market':
      return marketWords(ground.market)
    case 'hour':
      return ground.at === null ? 'The worth of an hour' : `Your hour, set on ${dayText(ground.at)}`
    case 'cost-set':
      return 'Cost set by you'
    case 'plan':
      return `The plan: ${ground.what}`
  }
}

const dayFormat = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
})

/** `2026-03-14T10:02:00Z` as `14 March 2026`, in UTC. */
const dayText = (at: string): string => dayFormat.format(new Date(at))
