import type { Currency } from '../../../base/money.ts'
import type { Complaint } from '../../../facts/complaints.ts'
import type { WhereFrom } from '../../../facts/where-from.ts'
import type { ExitId } from '../../../machine/view.ts'

/** A machine that was dealt with before the book began, as one row of a file tells it. Money in minor units. */
export type PastMachine = {
  readonly name: string
  readonly blueprint: string
  readonly bought: string
  readonly paidMinor: number
  readonly spentMinor: number
  readonly minutes: number
  readonly left: {
    readonly day: string
    readonly exit: ExitId
    readonly receivedMinor: number
    readonly feesMinor: number
  } | null
  readonly currency: Currency
  readonly source: WhereFrom | null
  readonly complaints: readonly Complaint[]
  readonly model: string
}

/** The columns that are read, in the order in which a file of our own has them. */
export const pastColumns = [
  'name',
  'kind',
  'model',
  'source',
  'complaint',
  'bought',
  'paid',
  'spent',
  'to shelf',
  'minutes',
  'left',
  'how',
  'received',
  'fees',
  'currency',
] as const
export type PastColumn = (typeof pastColumns)[number]

/** Without these no row can be read. */
export const neededColumns: readonly PastColumn[] = ['name', 'kind', 'bought', 'paid']

/** How a machine left, as the column says it. */
export const exitWords: Readonly<Record<ExitId, string>> = {
  'sell-working': 'sold working',
  'sell-for-spares': 'for spares',
  'break-for-parts': 'parts',
  scrap: 'scrap',
}
