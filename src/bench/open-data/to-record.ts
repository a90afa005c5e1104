import { inSentence } from '../../base/in-sentence.ts'
import type { Cell } from '../../base/cell.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { complaints } from '../../facts/complaints.ts'
import {
  openRepairColumns,
  vacuumCategory,
  type OpenRepairColumn,
  type RepairStatus,
} from '../../facts/open-repair-data.ts'
import { readMarks } from '../../machine/stamps/marks.ts'
import type { MachineState } from '../contract.ts'
import { dayOf } from '../logs/calendar-day.ts'
import { listText } from '../words.ts'
import type { RepairRecord } from './fields.ts'

/** Who gives the data out, and where the bench stands; empty where that is not said. */
export type RecordGrounds = { readonly provider: string; readonly country: string }

/**
 * A closed machine as an open repair record; null for one in hand or a virtual one. What nobody noted stays empty: the make (a model
 * as typed is no make), the barrier, and the year where the date marks leave more than one.
 */
export const toRecord = (
  state: MachineState,
  blueprint: Blueprint | null,
  { provider, country }: RecordGrounds,
): RepairRecord | null => {
  if (state.left === null || state.practiceSeed !== null) return null
  const eventDay = dayOf(state.left.at)
  const yearOfManufacture = yearOf(state, eventDay)
  const status = statusOf(state, blueprint)
  return {
    id: state.id,
    dataProvider: provider,
    country,
    partnerCategory: `Vacuum cleaner ~ ${blueprint?.name ?? state.blueprint}`,
    category: vacuumCategory.name,
    brand: withoutPersons(state.make ?? ''),
    yearOfManufacture,
    productAgeYears: yearOfManufacture === null ? state.ageYears : Number(eventDay.slice(0, 4)) - yearOfManufacture,
    status,
    barrier: status === 'End of life' ? (state.left.barrier ?? null) : null,
    group: provider,
    eventDay,
    problem: problemText(state, blueprint),
  }
}

/** The year that the date marks leave, where they leave one only. */
const yearOf = ({ marks, plate }: MachineState, today: string): number | null => {
  const { window } = readMarks(marks, plate.powerW, today)
  if (window === null) return null
  const [from, to] = [window.from.slice(0, 4), window.to.slice(0, 4)]
  return from === to ? Number(from) : null
}

/**
 * Sold working: it can go on being used. Sold for spares with a fault known and not mended: somebody said what is still to be done.
 * Broken up or scrapped: not worth mending here. Anything else is not known.
 */
const statusOf = (state: MachineState, blueprint: Blueprint | null): RepairStatus => {
  switch (state.left?.exit) {
    case 'sell-working':
      return 'Fixed'
    case 'break-for-parts':
    case 'scrap':
      return 'End of life'
    case 'sell-for-spares':
      return openFaults(state, blueprint).length > 0 ? 'Repairable' : 'Unknown'
    case undefined:
      return 'Unknown'
  }
}

const openFaults = ({ confirmed, fixed }: MachineState, blueprint: Blueprint | null): readonly string[] => {
  const mended = new Set(
    fixed.flatMap(({ repair }) => blueprint?.repairs.find(({ id }) => id === repair)?.removes ?? []),
  )
  return confirmed.map(({ fault }) => fault).filter((fault) => !mended.has(fault))
}

/** What was claimed, found and done, as one text. */
const problemText = (state: MachineState, blueprint: Blueprint | null): string => {
  const named = (all: readonly { readonly id: string; readonly name: string }[] | undefined, id: string): string =>
    inSentence(all?.find((one) => one.id === id)?.name ?? id)
  const claimed = state.claimed.complaints.map((one) => inSentence(complaints[one]))
  const found = [...new Set(state.confirmed.map(({ fault }) => named(blueprint?.faults, fault)))]
  const done = [...new Set(state.fixed.map(({ repair }) => named(blueprint?.repairs, repair)))]
  const said = withoutPersons(state.claimed.words)
  return [
    claimed.length === 0 && said === '' ? '' : `Said: ${[...claimed, said].filter((one) => one !== '').join('; ')}.`,
    found.length === 0 ? '' : `Found: ${listText(found)}.`,
    done.length === 0 ? '' : `Done: ${listText(done)}.`,
  ]
    .filter((one) => one !== '')
    .join(' ')
}

/** Words without what leads to a person, as the standard asks: addresses of mail and pages, and numbers as long as a telephone's. */
export const withoutPersons = (words: string): string =>
  words
    .replace(/\S{1,64}@\S{1,190}\.\S{1,63}/g, '[left out]')
    .replace(/\b(?:https?:\/\/|www\.)\S+/gi, '[left out]')
    .replace(/\+?\d[\d ()/-]{6,}\d/g, '[left out]')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/\.$/, '')

/** The row of a file. */
export const recordRow = (record: RepairRecord): readonly Cell[] =>
  openRepairColumns.map((column) => cellOf(record, column))

const cellOf = (record: RepairRecord, column: OpenRepairColumn): Cell => {
  switch (column) {
    case 'id':
      return record.id
    case 'data_provider':
      return record.dataProvider
    case 'country':
      return record.country
    case 'partner_product_category':
      return record.partnerCategory
    case 'product_category':
      return record.category
    case 'product_category_id':
      return record.category === vacuumCategory.name ? vacuumCategory.id : null
    case 'brand':
      return record.brand
    case 'year_of_manufacture':
      return record.yearOfManufacture
    case 'product_age':
      return record.productAgeYears
    case 'repair_status':
      return record.status
    case 'repair_barrier_if_end_of_life':
      return record.barrier
    case 'group_identifier':
      return record.group
    case 'event_date':
      return record.eventDay
    case 'problem':
      return record.problem
  }
}
