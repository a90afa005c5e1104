import type { Currency } from '../../base/money.ts'
import type { Account as MoneyAccount } from '../../engines/money/index.ts'

/** The accounts of the books, and minutes of one's own, which carry no money. */
export type Account = MoneyAccount | 'minutes'

/** One line of the books. The lines of an entry add up to nothing; the account `minutes` carries time and no money. */
export type BookLine = {
  /** The entry that it comes from. */
  readonly note: string
  /** `2026-03-14` */
  readonly day: string
  readonly account: Account
  readonly minor: number
  readonly minutes: number
}

/** What the store keeps beside a log, so that lists and books need not read the log: made from the log alone, at every entry. */
export type Projection = {
  /** Whether it is still there: a machine in hand, a part on the shelf, an advert not decided. */
  readonly open: boolean
  readonly label: string
  /** What it is listed under: a blueprint, a kind of part. */
  readonly group: string
  readonly currency: Currency
  readonly count: number
  /** What it stands at. */
  readonly stockMinor: number
  /** Plain JSON: the state that lists show. */
  readonly summary: unknown
  readonly lines: readonly BookLine[]
  /** What a machine brought and what is known of where it came from; null for other logs, and for virtual machines. */
  readonly result: MachineResult | null
}

/** A machine's line among those that pay or do not. */
export type MachineResult = {
  readonly complaint: string
  readonly source: string
  readonly cameDay: string
  readonly leftDay: string | null
  readonly exit: string | null
  readonly paidMinor: number
  readonly receivedMinor: number
  readonly costMinor: number
  readonly profitMinor: number
  readonly minutes: number
}
