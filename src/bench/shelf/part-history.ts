import { moneyText, type Currency } from '../../base/money.ts'
import { entryLines, type EntryLine } from '../logs/entry-lines.ts'
import type { PartContent } from './part-note.ts'
import type { PartDocument } from './shelf-commands.ts'

/** The history of a part of the shelf as it is read, in the order of its log. */
export const partHistory = ({ state, entries }: PartDocument): readonly EntryLine[] =>
  entryLines(entries, (content) => entryText(content, state.currency), mayStrike)

/** What came from or went into a machine is struck out there. */
const mayStrike = (content: PartContent): boolean =>
  content.kind !== 'used' && !(content.kind === 'put' && content.origin.kind === 'machine')

const entryText = (content: PartContent, currency: Currency): string => {
  const money = (minor: number): string => moneyText(minor, currency)
  switch (content.kind) {
    case 'put':
      return `put on the shelf, ${content.count} at ${money(content.costMinor)}`
    case 'described':
      return 'described'
    case 'reserved':
      return 'kept for'
    case 'released':
      return 'free again'
    case 'used':
      return `one at ${money(content.costMinor)} went into`
    case 'sold':
      return `${content.count} sold for ${money(content.receivedMinor)}`
    case 'scrapped':
      return `${content.count} scrapped${because(content.reason)}`
    case 'counted':
      return `counted: ${content.count}${because(content.reason)}`
    case 'said':
      return content.text
    case 'struck':
      return `an entry was struck out${because(content.reason)}`
  }
}

const because = (reason: string): string => (reason === '' ? '' : `: ${reason}`)
