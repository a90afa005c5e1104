/**
 * Reads comma-separated text with a heading line and no quoted fields. Gives one object per line, keyed by heading.
 * Throws on a quote or a line with another number of fields, so that a file it cannot read is not read wrongly.
 */
export const readCsv = <Column extends string>(
  text: string,
  columns: readonly Column[],
): readonly Record<Column, string>[] => {
  if (text.includes('"')) throw new Error('quoted fields are not read here')
  const [heading = '', ...lines] = text.split(/\r?\n/).filter((line) => line !== '')
  const places = columns.map((column) => {
    const place = heading.split(',').indexOf(column)
    if (place < 0) throw new Error(`no column ${column} in ${heading}`)
    return [column, place] as const
  })
  const width = heading.split(',').length
  return lines.map((line) => {
    const fields = line.split(',')
    if (fields.length !== width) throw new Error(`${fields.length} fields, not ${width}: ${line}`)
    return Object.fromEntries(places.map(([column, place]) => [column, fields[place]])) as Record<Column, string>
  })
}
