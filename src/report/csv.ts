// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="../base/d3-dsv.d.ts" />
import { dsvFormat } from 'd3-dsv'
import type { Cell } from '../base/cell.ts'

const comma = dsvFormat(',')
const minorPerMajor = 100

/** One record of a CSV file with its line end, as RFC 4180 has it. Amounts of money in major units with two decimals. */
export const csvLine = (cells: readonly Cell[]): string => `${comma.formatRow(cells.map(cellText))}\r\n`

const cellText = (cell: Cell): string => {
  if (cell === null) return ''
  if (typeof cell === 'string') return harmless(cell)
  return typeof cell === 'number' ? String(cell) : (cell.minor / minorPerMajor).toFixed(2)
}

/** Words that a spreadsheet would take for a formula get an apostrophe in front. */
const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)

/** A table as the text of a CSV file, a stretch at a time. */
export async function* csvText(
  header: readonly string[],
  stretches: AsyncIterable<readonly (readonly Cell[])[]>,
): AsyncGenerator<string> {
  yield csvLine(header)
  for await (const rows of stretches) yield rows.map(csvLine).join('')
}
