import type { Cell } from '../../base/cell.ts'
import { sourceText } from '../../base/source-text.ts'
import { itemMargins } from '../../engines/money/index.ts'
import { marginSchemes } from '../../facts/margin-scheme.ts'
import { whereFrom } from '../../facts/where-from.ts'
import type { QueryDeps } from '../queries.ts'
import type { MachineState } from '../contract.ts'
import type { LogKind } from '../logs/entry.ts'
import { dayOf } from '../logs/calendar-day.ts'
import type { LedgerLine, Page, SettingsStore } from '../ports.ts'
import type { PriceState } from '../prices/seen-prices.ts'
import { currentSettings, type Settings } from '../settings.ts'
import type { PartState } from '../shelf/part-state.ts'
import type { ExpenseState } from './expenses.ts'
import { exitWords, pastColumns } from './import/past-machine.ts'

/** The files that the books can be taken away in. */
export const bookFileNames = ['machines', 'ledger', 'shelf', 'prices', 'expenses', 'stock-book'] as const
export type BookFileName = (typeof bookFileNames)[number]

type Row = readonly Cell[]

/** A file as a header and its rows, a stretch at a time, so that no whole bench is held in memory. */
export type BookFile = { readonly header: readonly string[]; readonly stretches: AsyncIterable<readonly Row[]> }

export type FileDeps = QueryDeps & { readonly settings: SettingsStore }

/** One of the files of a bench. Virtual machines are in none. */
export const bookFile = async (deps: FileDeps, name: BookFileName): Promise<BookFile> => {
  const settings = await currentSettings(deps.settings)
  switch (name) {
    case 'machines':
      return { header: [...pastColumns, 'profit', 'stock no.'], stretches: rowsOf(realMachines(deps), machineRow) }
    case 'stock-book':
      return {
        header: stockBookHeader(settings),
        stretches: rowsOf(realMachines(deps), (machine) => stockBookRow(machine, settings)),
      }
    case 'ledger':
      return { header: ledgerHeader, stretches: rowsOf(ledger(deps), ledgerRow) }
    case 'shelf':
      return { header: shelfHeader, stretches: rowsOf(bothLists<PartState>(deps, 'part'), partRow) }
    case 'prices':
      return { header: priceHeader, stretches: rowsOf(openList<PriceState>(deps, 'price'), priceRow) }
    case 'expenses':
      return { header: expenseHeader, stretches: rowsOf(openList<ExpenseState>(deps, 'expense'), expenseRow) }
  }
}

/** Rows fetched together. */
const atOnce = 200

async function* rowsOf<T>(
  stretches: AsyncIterable<readonly T[]>,
  row: (item: T) => Row,
): AsyncGenerator<readonly Row[]> {
  for await (const items of stretches) yield items.map(row)
}

async function* pages<T>(page: (after: number | undefined) => Promise<Page<T>>): AsyncGenerator<readonly T[]> {
  let after: number | undefined
  for (;;) {
    const { items, after: next } = await page(after)
    yield items
    if (next === null) return
    after = next
  }
}

async function* realMachines({ books, bench }: FileDeps): AsyncGenerator<readonly MachineState[]> {
  for (const open of [true, false]) {
    for await (const items of pages((after) => books.machines(bench, { open, limit: atOnce, after })))
      yield items.filter(({ practiceSeed }) => practiceSeed === null)
  }
}

const openList = <T>({ books, bench }: FileDeps, kind: LogKind, open = true): AsyncGenerator<readonly T[]> =>
  pages(async (after) => (await books.logs(bench, kind, { open, limit: atOnce, after })) as Page<T>)

async function* bothLists<T>(deps: FileDeps, kind: LogKind): AsyncGenerator<readonly T[]> {
  yield* openList<T>(deps, kind)
  yield* openList<T>(deps, kind, false)
}

/** Days that a month may have. */
const mostDays = 31

/** Day by day, the earliest first: a month of a large bench has tens of thousands of lines. */
async function* ledger({ books, bench }: FileDeps): AsyncGenerator<readonly LedgerLine[]> {
  const months = new Set((await books.months(bench, 'calendar')).map(({ month }) => month))
  for (const month of [...months].sort()) {
    for (let day = 1; day <= mostDays; day++) {
      yield await books.lines(bench, 'calendar', month, { day: `${month}-${String(day).padStart(2, '0')}` })
    }
  }
}

const money = (minor: number): Cell => ({ minor })

/** By the columns that an import reads, then the profit and the machine's id. */
const machineRow = (one: MachineState): Row => [
  one.name,
  one.blueprint,
  one.model,
  one.source,
  one.claimed.complaints.join('; '),
  dayOf(one.addedAt),
  money(one.paidMinor),
  money(one.spentMinor),
  money(one.toShelfMinor),
  one.minutes,
  one.left === null ? null : dayOf(one.left.at),
  one.left === null ? null : exitWords[one.left.exit],
  one.left === null ? null : money(one.receivedMinor),
  one.left === null ? null : money(one.feesMinor),
  one.currency,
  one.left === null ? null : money(one.left.profitMinor),
  one.id,
]

const stockBookHeader = ({ region }: Settings): readonly string[] => {
  const scheme = marginSchemes[region]
  const rate = scheme?.ratePercent ?? null
  const vat =
    scheme === undefined || rate === null
      ? 'VAT (ask an adviser)'
      : `VAT in the margin at ${rate} % (information, not advice: ${sourceText(scheme.source)})`
  return [
    'stock no.',
    'date bought',
    'bought from',
    'description',
    'purchase price',
    'date sold',
    'sale price',
    'margin',
    vat,
    'currency',
  ]
}

const stockBookRow = (one: MachineState, { region }: Settings): Row => {
  const rate = marginSchemes[region]?.ratePercent ?? null
  const isSold = one.left !== null && one.receivedMinor > 0
  const item = { id: one.id, purchaseMinor: one.paidMinor, saleMinor: one.receivedMinor }
  const [margin] = isSold ? itemMargins([item], rate ?? 0) : []
  return [
    one.id,
    dayOf(one.addedAt),
    one.source === null ? null : whereFrom[one.source],
    [one.name, one.model].filter((text) => text !== '').join(', '),
    money(one.paidMinor),
    one.left === null ? null : dayOf(one.left.at),
    isSold ? money(one.receivedMinor) : null,
    margin === undefined ? null : money(margin.marginMinor),
    margin === undefined || rate === null ? null : money(margin.vatMinor),
    one.currency,
  ]
}

const ledgerHeader = ['day', 'of', 'name', 'what', 'account', 'amount', 'currency', 'minutes', 'id', 'note']

const ledgerRow = (line: LedgerLine): Row => [
  line.day,
  line.kind,
  line.label,
  line.what,
  line.account,
  line.account === 'minutes' ? null : money(line.minor),
  line.currency,
  line.account === 'minutes' ? line.minutes : null,
  line.log,
  line.note,
]

const shelfHeader = ['name', 'kind', 'condition', 'place', 'count', 'cost', 'would fetch', 'currency', 'put there', 'received', 'fees', 'written off', 'id'] // prettier-ignore

const partRow = (part: PartState): Row => [
  part.name,
  part.partKind,
  part.condition,
  part.place,
  part.count,
  money(part.costMinor),
  part.fetchesMinor === null ? null : money(part.fetchesMinor),
  part.currency,
  dayOf(part.putAt),
  money(part.receivedMinor),
  money(part.feesMinor),
  money(part.writtenOffMinor),
  part.id,
]

const priceHeader = ['day', 'kind', 'model', 'price', 'currency', 'sold', 'where', 'remark', 'id']

const priceRow = (one: PriceState): Row => [
  one.day,
  one.blueprint,
  one.model,
  money(one.priceMinor),
  one.currency,
  one.sold ? 'yes' : 'no',
  one.place,
  one.text,
  one.id,
]

const expenseHeader = ['day', 'what', 'cost', 'currency', 'minutes', 'id']

const expenseRow = ({ day, what, costMinor, currency, minutes, id }: ExpenseState): Row => [
  day,
  what,
  money(costMinor),
  currency,
  minutes,
  id,
]
