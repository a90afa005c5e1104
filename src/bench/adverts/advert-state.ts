import type { Advert } from '../../machine/buying/advert.ts'
import type { EntryOf } from '../logs/entry.ts'
import { standingEntries } from '../logs/standing-entries.ts'
import type { AdvertContent, Guess } from './advert-note.ts'

export type AdvertEntry = EntryOf<AdvertContent>

/** What the entries of one advert add up to. */
export type AdvertState = {
  readonly id: string
  readonly name: string
  readonly advert: Advert
  readonly guess: Guess
  readonly firstAt: string
  readonly weighedAt: string
  readonly version: number
  readonly decided:
    | { readonly kind: 'bought'; readonly machine: string; readonly paidMinor: number; readonly at: string }
    | { readonly kind: 'passed'; readonly reason: string; readonly at: string }
    | null
}

/** Folds an advert's log. Throws when nothing was ever weighed: a programmer's mistake. */
export const foldAdvert = (entries: readonly AdvertEntry[]): AdvertState => {
  const standing = standingEntries(entries)
  const weighed = (standing.findLast(({ content }) => content.kind === 'weighed') ??
    entries.find(({ content }) => content.kind === 'weighed'))!
  const first = entries.find(({ content }) => content.kind === 'weighed')
  if (first === undefined || weighed.content.kind !== 'weighed') throw new Error('an advert that was never weighed')
  const { name, advert, guess } = weighed.content
  return {
    id: first.log,
    name,
    advert,
    guess,
    firstAt: first.at,
    weighedAt: weighed.at,
    version: new Set(entries.map(({ id }) => id)).size,
    decided: decisionOf(standing),
  }
}

const decisionOf = (standing: readonly AdvertEntry[]): AdvertState['decided'] => {
  const last = standing.findLast(({ content }) => content.kind === 'bought' || content.kind === 'passed')
  if (last === undefined) return null
  const { at, content } = last
  if (content.kind === 'bought') return { kind: 'bought', machine: content.machine, paidMinor: content.paidMinor, at }
  return content.kind === 'passed' ? { kind: 'passed', reason: content.reason, at } : null
}
