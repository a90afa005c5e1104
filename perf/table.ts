/** Lines of a table of plain text: the first column to the left, the others to the right, each as wide as its widest cell. */
export const tableLines = (head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] => {
  const widths = head.map((_, c) => Math.max(...[head, ...rows].map((row) => row[c].length)))
  const line = (row: readonly string[]): string =>
    row.map((cell, c) => (c === 0 ? cell.padEnd(widths[c]) : cell.padStart(widths[c]))).join('  ')
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)]
}

export const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length

/** Standard error of the mean: what chance alone moves it by. */
export const standardError = (values: readonly number[]): number => {
  const middle = mean(values)
  return Math.sqrt(mean(values.map((x) => (x - middle) ** 2)) / (values.length - 1))
}

/** A number of minor units or milliseconds without its decimals; never "-0". */
export const whole = (value: number): string => String(Math.round(value) + 0)

export const percent = (share: number): string => (100 * share).toFixed(1)
