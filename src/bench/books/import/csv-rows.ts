// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="../../../base/d3-dsv.d.ts" />
import { dsvFormat } from 'd3-dsv'
import { problem, type Problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'

/** One row of a file: its number as a spreadsheet counts them, and its fields by the names in the header. */
export type CsvRow = { readonly number: number; readonly fields: ReadonlyMap<string, string> }

export type CsvTable = {
  readonly columns: readonly string[]
  readonly rows: readonly CsvRow[]
  /** Rows with more fields than there are columns. */
  readonly problems: readonly Problem[]
}

const delimiters = [',', ';', '\t']

/**
 * The rows of a CSV file; columns by their names in the first row, whatever their order and case. Reads commas, semicolons or
 * tabs, whichever divides the first row into most; empty rows are left out. Refused where there is no row, a name stands twice
 * or a quotation mark is not closed.
 */
export const csvTable = (text: string): Result<CsvTable> => {
  const body = text.replace(/^\uFEFF/, '')
  const isOpen = (body.match(/"/g)?.length ?? 0) % 2 === 1
  const [first = ''] = body.split(/\r?\n/, 1)
  const delimiter = delimiters.toSorted((a, b) => first.split(b).length - first.split(a).length)[0] ?? ','
  const [header, ...records] = dsvFormat(delimiter).parseRows(body)
  const columns = (header ?? []).map((name) => name.trim().toLowerCase())
  const problems = [...(isOpen ? [notClosed] : []), ...headerProblems(columns)]
  if (problems.length > 0) return refused(...problems)
  const filled = records
    .map((record, i) => ({ record, number: i + 2 }))
    .filter(({ record }) => record.some((field) => field.trim() !== ''))
  return ok({
    columns,
    rows: filled.map(({ record, number }) => ({
      number,
      fields: new Map(columns.map((name, i) => [name, plain(record[i] ?? '')])),
    })),
    problems: filled.flatMap(({ record, number }) =>
      record.slice(columns.length).some((field) => field.trim() !== '') ? [tooWide(number, columns.length)] : [],
    ),
  })
}

/** A field without the apostrophe that keeps a spreadsheet from taking it for a formula. */
const plain = (field: string): string => (/^'[=+\-@\t\r]/.test(field) ? field.slice(1) : field).trim()

const headerProblems = (columns: readonly string[]): readonly Problem[] => {
  if (columns.every((name) => name === '')) return [noHeader]
  return columns
    .filter((name, i) => name !== '' && columns.indexOf(name) < i)
    .map((name) => problem('column-twice', 'row 1', `The column “${name}” stands there twice`, 'Leave one of them out'))
}

const noHeader = problem(
  'no-header',
  'row 1',
  'The file has no first row with the names of its columns',
  'Let it begin with a row such as name,kind,bought,paid',
)
const notClosed = problem(
  'quotation-open',
  '',
  'A quotation mark is opened and not closed',
  'Write a quotation mark inside a field twice, or take it out',
)
const tooWide = (row: number, width: number): Problem =>
  problem(
    'row-too-wide',
    `row ${row}`,
    `The row has more fields than the ${width} columns`,
    'Put fields that hold a comma in quotation marks',
  )
