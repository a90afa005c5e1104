import { problem, type Problem } from '../../../base/problem.ts'

/** Accounts of the books: where money is, and what became of it. */
export const accounts = [
  'cash',
  'machines',
  'shelf',
  'sales',
  'cost-of-sales',
  'fees',
  'expenses',
  'written-off',
] as const
export type Account = (typeof accounts)[number]

/**
 * One line of double entry. What comes into an account is above zero, what leaves it below; money taken for sales leaves
 * `sales`, so that the lines of each event add up to nothing.
 */
export type Posting = {
  readonly note: string
  readonly day: string
  readonly account: Account
  /** Whole minor units, never 0. */
  readonly minor: number
  /** The part on the shelf, where it is one. */
  readonly part?: string
}

type Told = { readonly day: string; readonly note: string }

/** An amount goes from one account to another; no lines where there is none. */
export const moved = (
  { day, note }: Told,
  from: Account,
  to: Account,
  minor: number,
  part?: string,
): readonly Posting[] => {
  if (minor === 0) return []
  const line = (account: Account, amount: number): Posting =>
    account === 'shelf' && part !== undefined
      ? { note, day, account, minor: amount, part }
      : { note, day, account, minor: amount }
  return [line(to, minor), line(from, -minor)]
}

type Sold = Told & { readonly receivedMinor: number; readonly feeMinor: number; readonly postageMinor: number }

/** The lines of a sale: the price, fee and postage, and what the sold thing stood at. */
export const saleLines = (
  event: Sold,
  stock: 'machines' | 'shelf',
  costMinor: number,
  part?: string,
): readonly Posting[] => [
  ...moved(event, 'sales', 'cash', event.receivedMinor),
  ...moved(event, 'cash', 'fees', event.feeMinor + event.postageMinor),
  ...moved(event, stock, 'cost-of-sales', costMinor, part),
]

const largestMinor = 1_000_000_000

/** What is wrong with the amounts of an event: each is whole, not below zero, at most ten million. */
export const amountProblems = (event: object & { readonly note: string }): readonly Problem[] =>
  Object.entries(event).flatMap(([name, value]: [string, unknown]) => {
    if (typeof value !== 'number' || (Number.isInteger(value) && value >= 0 && value <= largestMinor)) return []
    const what = `${String(value)} is not an amount of whole minor units`
    return [problem('not-an-amount', `${event.note} ${name}`, what, 'Give whole pence or cents, 0 to 1,000,000,000')]
  })
