import { problem } from '../../base/problem.ts'
import type { EntryOf } from '../logs/entry.ts'
import { logCommands } from '../logs/log-commands.ts'
import { standingEntries } from '../logs/standing-entries.ts'
import { strikeProblems } from '../logs/strike-problems.ts'
import { priceContentSchema, type PriceContent, type SeenPrice } from './price-note.ts'

/** A price that was seen, with its id and whether it was struck out. */
export type PriceState = SeenPrice & { readonly id: string; readonly at: string; readonly struck: boolean }

const foldPrice = (entries: readonly EntryOf<PriceContent>[]): PriceState => {
  const first = entries.find(({ content }) => content.kind === 'seen')
  if (first?.content.kind !== 'seen') throw new Error('the log of a price has no first entry')
  return { ...first.content, id: first.log, at: first.at, struck: standingEntries(entries).length === 0 }
}

/** Prices seen elsewhere, each in a log of its own, so that a slip can be struck out. */
export const seenPrices = logCommands<PriceContent, PriceState>({
  kind: 'price',
  name: 'price',
  schema: priceContentSchema,
  problems: (entries, content) => {
    if (content.kind === 'struck') return strikeProblems(entries, content.note)
    return entries.length === 0 ? [] : [seenAlready]
  },
  fold: foldPrice,
})

const seenAlready = problem('seen-already', 'kind', 'This price is kept already', 'Enter another one under a new id')
