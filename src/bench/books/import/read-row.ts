import { currencies, moneyFromText, type Currency } from '../../../base/money.ts'
import { problem, type Problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'
import { complaints, type Complaint } from '../../../facts/complaints.ts'
import type { Region } from '../../../facts/regions.ts'
import { whereFrom, type WhereFrom } from '../../../facts/where-from.ts'
import type { ExitId } from '../../../machine/view.ts'
import type { CsvRow } from './csv-rows.ts'
import { placeOf, readChoice, readDay, readMinutes, readMoney } from './field-readers.ts'
import { exitWords, type PastColumn, type PastMachine } from './past-machine.ts'

/** What rows are read against. `kinds`: blueprint ids with their names. */
export type RowGrounds = {
  readonly today: string
  readonly region: Region
  readonly currency: Currency
  readonly kinds: readonly (readonly [string, string])[]
}

const entriesOf = <Id extends string>(names: Readonly<Record<Id, string>>): readonly (readonly [Id, string])[] =>
  Object.entries(names) as [Id, string][]
const complaintNames = entriesOf<Complaint>(complaints)
const sourceNames = entriesOf<WhereFrom>(whereFrom)
const exitNames = entriesOf<ExitId>(exitWords).map(([id, word]) => [word, id] as const)
const currencyNames = currencies.map((one) => [one, one] as const)

/** The machine of a row; refused with all that is wrong in it, each at its row and column. */
export const readRow = ({ number, fields }: CsvRow, grounds: RowGrounds): Result<PastMachine> => {
  const problems: Problem[] = []
  const text = (column: PastColumn): string => fields.get(column) ?? ''
  const at = (column: PastColumn): string => placeOf(number, column)
  const take = <T>(result: Result<T>, otherwise: T): T => {
    if (result.kind === 'ok') return result.value
    problems.push(...result.problems)
    return otherwise
  }
  const money = (column: PastColumn, whenEmpty?: number): number =>
    text(column) === '' && whenEmpty !== undefined ? whenEmpty : take(readMoney(text(column), at(column)), 0)
  const day = (column: 'bought' | 'left'): string => {
    const read = take(readDay(text(column), grounds.region, at(column)), '')
    if (read > grounds.today) problems.push(notYet(read, at(column)))
    return read
  }
  const choice = <Id extends string>(column: PastColumn, names: readonly (readonly [Id, string])[]): Id | null =>
    text(column) === '' ? null : take<Id | null>(readChoice(text(column), names, at(column)), null)

  const name = text('name')
  if (name === '') problems.push(noName(at('name')))
  const blueprint = take(readChoice(text('kind'), grounds.kinds, at('kind')), '')
  const bought = day('bought')
  const cost = withoutShelf(money('paid'), money('spent', 0), money('to shelf', 0))
  if (cost === null) problems.push(tooMuchToShelf(at('to shelf')))
  const minutes = text('minutes') === '' ? 0 : take(readMinutes(text('minutes'), at('minutes')), 0)
  const hasLeft = text('left') !== '' || text('how') !== '' || amountColumns.some((column) => isAmount(text(column)))
  const left = hasLeft ? { day: day('left'), ...leaving(text, at, money, take) } : null
  if (left !== null && left.day !== '' && left.day < bought) problems.push(leftBefore(at('left')))
  const machine: PastMachine = {
    name,
    blueprint,
    bought,
    paidMinor: cost?.paidMinor ?? 0,
    spentMinor: cost?.spentMinor ?? 0,
    minutes,
    left,
    currency: choice('currency', currencyNames) ?? grounds.currency,
    source: choice('source', sourceNames),
    complaints: complaintsOf(text('complaint')).map((one) =>
      take<Complaint>(readChoice(one, complaintNames, at('complaint')), 'dead'),
    ),
    model: text('model'),
  }
  return problems.length === 0 ? ok(machine) : refused(...problems)
}

/** A row with an amount in one of these is of a machine that left, whatever else is missing. */
const amountColumns: readonly PastColumn[] = ['received', 'fees']
const isAmount = (text: string): boolean => text !== '' && moneyFromText(text) !== 0

type Columns<T> = (column: PastColumn) => T

const leaving = (
  text: Columns<string>,
  at: Columns<string>,
  money: (column: PastColumn, whenEmpty?: number) => number,
  take: <T>(result: Result<T>, otherwise: T) => T,
): { readonly exit: ExitId; readonly receivedMinor: number; readonly feesMinor: number } => {
  const byWord = exitNames.map(([word, id]) => [word, id as string] as const)
  const word = take(readChoice(text('how'), byWord, at('how')), '')
  const exit = exitNames.find(([one]) => one === word)?.[1] ?? 'scrap'
  const isSale = exit === 'sell-working' || exit === 'sell-for-spares'
  return { exit, receivedMinor: isSale ? money('received') : money('received', 0), feesMinor: money('fees', 0) }
}

/** Complaints stand one after another with semicolons between; a name may hold a comma. */
const complaintsOf = (text: string): readonly string[] =>
  text
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '')

/** Cost that went to the shelf with parts is first taken off what was spent, then off what was paid. */
const withoutShelf = (
  paidMinor: number,
  spentMinor: number,
  toShelfMinor: number,
): { readonly paidMinor: number; readonly spentMinor: number } | null => {
  const ofSpent = Math.min(spentMinor, toShelfMinor)
  const ofPaid = toShelfMinor - ofSpent
  return ofPaid > paidMinor ? null : { paidMinor: paidMinor - ofPaid, spentMinor: spentMinor - ofSpent }
}

const noName = (where: string): Problem =>
  problem('no-name', where, 'The machine has no name', 'Write what you call it, such as Grey upright')
const notYet = (day: string, where: string): Problem =>
  problem('not-yet', where, `${day} has not come yet`, 'Write a day up to today')
const leftBefore = (where: string): Problem =>
  problem('left-before', where, 'It left before it was bought', 'Write a day after that, or mend the day it was bought')
const tooMuchToShelf = (where: string): Problem =>
  problem(
    'too-much-to-shelf',
    where,
    'More of its cost went to the shelf than it had cost',
    'Write at most paid and spent together',
  )
