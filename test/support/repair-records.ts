import { existsSync, readFileSync } from 'node:fs'
import { readCsv } from './csv.ts'

const folder = new URL('../../../shared/data/', import.meta.url)
const repairs = new URL('vacuum-repairs-open.csv', folder)
const components = new URL('vacuum-repairs-open-component.csv', folder)
const shares = new URL('component-prior-open.json', folder)

/** The open repair records are not part of this repository; what needs them runs where they lie beside it. */
export const hasRepairRecords = [repairs, components, shares].every((file) => existsSync(file))

/** Shares of components as published beside the records, by the component's name there. */
export const readComponentShares = (): Readonly<Record<string, number>> =>
  JSON.parse(readFileSync(shares, 'utf8')) as Record<string, number>

export type RepairRecord = {
  readonly id: string
  readonly faultType: string
  readonly symptoms: readonly string[]
  /** Component that the record's text names; null when it names none. */
  readonly component: string | null
}

/** Records of corded machines. */
export const readCordedRecords = (): readonly RepairRecord[] => {
  const componentRows = readCsv(readFileSync(components, 'utf8'), ['id', 'component_named_in_text'])
  const named = new Map(componentRows.map((row) => [row.id, row.component_named_in_text]))
  return readCsv(readFileSync(repairs, 'utf8'), ['id', 'corded', 'fault_type', 'symptoms'])
    .filter((row) => row.corded === 'true')
    .map((row) => ({
      id: row.id,
      faultType: row.fault_type,
      symptoms: row.symptoms === '' ? [] : row.symptoms.split('|'),
      component: componentOf(named.get(row.id)),
    }))
}

const componentOf = (tag: string | undefined): string | null => (tag === undefined || tag === 'not_stated' ? null : tag)

/** Labels that are no fault type. */
const noType: readonly string[] = ['Poor data', 'Other']

export const hasFaultType = ({ faultType }: RepairRecord): boolean => !noType.includes(faultType)

/**
 * Whether a record names a cause, and so its fault type says more than the complaint repeated: it has a fault type, its
 * text names a component, and that component is not the very one complained of ("brush does not turn", brush drive).
 * "No power" with a named component, such as a fuse, stays in.
 */
export const namesCause = (record: RepairRecord): boolean =>
  hasFaultType(record) && record.component !== null && !repeatsComplaint(record)

const repeatsComplaint = ({ component, symptoms }: RepairRecord): boolean =>
  component === 'brush_roll_or_head_drive' && symptoms.includes('brush_not_turning')
