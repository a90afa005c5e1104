import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { refused, type Result } from '../../base/result.ts'
import {
  barrierSynonyms,
  productCategories,
  repairBarriers,
  repairStatuses,
  vacuumCategory,
  type OpenRepairColumn,
  type RepairBarrier,
  type RepairStatus,
} from '../../facts/open-repair-data.ts'
import type { CsvRow } from '../books/import/csv-rows.ts'
import { placeOf } from '../books/import/field-readers.ts'
import { repairRecordSchema, type RepairRecord } from './fields.ts'

/** The record of a row by the rules of the standard; refused with all that is wrong in it, each at its row and column. */
export const fromRow = (row: CsvRow): Result<RepairRecord> => {
  const problems: Problem[] = []
  const text = (column: OpenRepairColumn): string => row.fields.get(column) ?? ''
  const read = <T>(column: OpenRepairColumn, reader: (text: string) => T | null, mend: string): T | null => {
    const value = text(column)
    const found = reader(value)
    if (found === null && value !== '')
      problems.push(problem('not-of-the-standard', placeOf(row.number, column), `“${value}” cannot stand here`, mend))
    return found
  }
  const id = text('id')
  if (id === '') problems.push(noId(row.number))
  const status = statusOf(text('repair_status'))
  if (status === null) problems.push(notAStatus(row.number, text('repair_status')))
  const barrier = read('repair_barrier_if_end_of_life', barrierOf, `Write one of ${repairBarriers.join(', ')}`)
  if (barrier !== null && status !== null && status !== 'End of life') problems.push(strayBarrier(row.number, status))
  const record = {
    id,
    dataProvider: text('data_provider'),
    country: read('country', matching(/^[A-Z]{3}$/), 'Write three capital letters, such as GBR') ?? '',
    partnerCategory: text('partner_product_category'),
    category: categoryOf(text('product_category'), text('product_category_id')),
    brand: text('brand') === 'Unknown' ? '' : text('brand'),
    yearOfManufacture: read('year_of_manufacture', yearFrom, 'Write a year of four digits'),
    productAgeYears: read('product_age', ageFrom, 'Write years, such as 12 or 12.5'),
    status: status ?? 'Unknown',
    barrier,
    group: text('group_identifier'),
    eventDay: read('event_date', dayFrom, 'Write a day such as 2026-03-14') ?? '',
    problem: text('problem'),
  }
  if (problems.length > 0) return refused(...problems)
  return parse(repairRecordSchema, record, 'record', ([field]) => placeOf(row.number, columnOf(String(field))))
}

/** Whether a row is of a vacuum cleaner: by the standard's category, else by the word in the provider's own. */
export const isVacuum = ({ category, partnerCategory }: RepairRecord): boolean =>
  category === '' ? /vacuum/i.test(partnerCategory) : category === vacuumCategory.name

/** A category by its words, else by its number; words that the standard does not know stay as they are. */
const categoryOf = (words: string, id: string): string =>
  words !== '' || !/^\d{1,2}$/.test(id) ? words : (productCategories[Number(id) - 1] ?? '')

/** By words or code; an empty value is “Unknown”, as the standard says. */
const statusOf = (text: string): RepairStatus | null => {
  if (text === '') return 'Unknown'
  if (/^[0-3]$/.test(text)) return repairStatuses[Number(text)] ?? null
  return repairStatuses.find((one) => one.toLowerCase() === text.toLowerCase()) ?? null
}

const barrierOf = (text: string): RepairBarrier | null => {
  if (/^[1-6]$/.test(text)) return repairBarriers[Number(text) - 1] ?? null
  const known = repairBarriers.find((one) => one.toLowerCase() === text.toLowerCase())
  return known ?? barrierSynonyms[text] ?? null
}

const matching =
  (form: RegExp) =>
  (text: string): string | null =>
    form.test(text) ? text : null

const yearFrom = (text: string): number | null => (/^[12]\d{3}(\.0)?$/.test(text) ? Number(text) : null)

const oldestYears = 200
const ageFrom = (text: string): number | null =>
  /^\d+(\.\d+)?$/.test(text) && Number(text) <= oldestYears ? Number(text) : null

const dayFrom = (text: string): string | null => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null
  const at = new Date(`${text}T00:00:00Z`)
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text) ? text : null
}

const noId = (row: number): Problem =>
  problem('no-id', placeOf(row, 'id'), 'The record has no id', 'Give it one that no other record of the provider has')
const notAStatus = (row: number, text: string): Problem =>
  problem(
    'not-of-the-standard',
    placeOf(row, 'repair_status'),
    `“${text}” is no repair status`,
    `Write one of ${repairStatuses.join(', ')}`,
  )
const strayBarrier = (row: number, status: RepairStatus): Problem =>
  problem(
    'barrier-without-end-of-life',
    placeOf(row, 'repair_barrier_if_end_of_life'),
    `A barrier is given though the status is “${status}”`,
    'Leave it empty, or set the status to End of life',
  )

/** The column that a field of a record is read from. */
const columnOf = (field: string): string => (field in columns ? columns[field as keyof typeof columns] : field)

const columns = {
  dataProvider: 'data_provider',
  partnerCategory: 'partner_product_category',
  category: 'product_category',
  yearOfManufacture: 'year_of_manufacture',
  productAgeYears: 'product_age',
  status: 'repair_status',
  barrier: 'repair_barrier_if_end_of_life',
  group: 'group_identifier',
  eventDay: 'event_date',
} as const satisfies Readonly<Record<string, OpenRepairColumn>>
