import { dayText } from '../words.ts'
import type { RepairRecord } from './fields.ts'

/** What a record tells besides its status and its problem, each in a few words; what nobody knew is left out. */
export const recordFacts = (record: RepairRecord): readonly string[] =>
  [
    record.barrier === null ? '' : `in the way: ${record.barrier.toLowerCase()}`,
    record.brand,
    record.partnerCategory === '' ? record.category : record.partnerCategory,
    record.yearOfManufacture === null ? '' : `made ${record.yearOfManufacture}`,
    record.productAgeYears === null ? '' : `${record.productAgeYears} years old`,
    record.eventDay === '' ? '' : dayText(record.eventDay),
    record.country,
    record.group === '' ? record.dataProvider : record.group,
  ].filter((one) => one !== '')

/** What was wrong, as it was written. */
export const recordProblem = ({ problem }: RepairRecord): string => (problem === '' ? 'Nothing is said of it' : problem)
