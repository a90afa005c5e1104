import { moneyText } from '../../base/money.ts'
import { entryLines, type EntryLine } from '../logs/entry-lines.ts'
import type { LogDocument } from '../logs/log-commands.ts'
import type { AdvertContent } from './advert-note.ts'
import type { AdvertState } from './advert-state.ts'

/** The history of a kept advert as it is read, in the order of its log. */
export const advertHistory = ({ state, entries }: LogDocument<AdvertContent, AdvertState>): readonly EntryLine[] => {
  const money = (minor: number): string => moneyText(minor, state.advert.currency)
  return entryLines(entries, (content) => entryText(content, money), mayStrike)
}

/** The machine of an advert that was bought is on the bench, and what was reckoned is held against what comes of it: both stay. */
const mayStrike = ({ kind }: AdvertContent): boolean => kind === 'passed' || kind === 'said'

const entryText = (content: AdvertContent, money: (minor: number) => string): string => {
  switch (content.kind) {
    case 'weighed':
      return `weighed: asks ${money(content.advert.askingMinor)}, ${ceilingText(content.guess.ceilingMinor, money)}`
    case 'bought':
      return `bought for ${money(content.paidMinor)}`
    case 'passed':
      return `passed by${because(content.reason)}`
    case 'said':
      return content.text
    case 'struck':
      return `an entry was struck out${because(content.reason)}`
  }
}

const ceilingText = (ceilingMinor: number, money: (minor: number) => string): string =>
  ceilingMinor < 0 ? 'not even for nothing' : `at most ${money(ceilingMinor)}`

const because = (reason: string): string => (reason === '' ? '' : `: ${reason}`)
