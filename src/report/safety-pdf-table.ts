import { drawForTheEye, setFace, splitToFit, turnPage, type Face, type Sheet, type Structure } from './safety-pdf.ts'
import { inside } from './safety-pdf-text.ts'

export type TableColumn = { readonly head: string; readonly widthPt: number }

/** Rows that belong together under a line of their own across the whole width. */
export type TableGroup = {
  readonly title: string
  /** Stands below the title; empty where there is nothing to say. */
  readonly note: string
  /** As many cells as there are columns; the first names the row. */
  readonly rows: readonly (readonly string[])[]
}

type Cell = {
  readonly words: string
  readonly face: Face
  readonly leftPt: number
  readonly widthPt: number
  /** Null on a later page, where it is repeated for the eye only. */
  readonly element: Structure | null
}
type Table = {
  readonly sheet: Sheet
  readonly columns: readonly TableColumn[]
  /** What is repeated below the head when a group goes on overleaf. */
  group: string
}

const sizePt = 8
const padPt = 3
/** A title is not left alone at the foot of a page: room for a row of three lines must follow. */
const roomAfterTitlePt = 3 * 10 + 2 * padPt

/** A table across the page. Its head is repeated on each page; a row is split only when it is higher than a page. */
export const drawTable = (sheet: Sheet, columns: readonly TableColumn[], groups: readonly TableGroup[]): void => {
  const whole = inside(sheet.root, sheet, 'Table')
  const table: Table = { sheet, columns, group: '' }
  drawHead(table, inside(inside(whole, sheet, 'THead'), sheet, 'TR'))
  const body = inside(whole, sheet, 'TBody')
  for (const group of groups) drawGroup(table, body, group)
  rule(sheet, 1.2)
  sheet.doc.y += 4
}

const drawGroup = (table: Table, body: Structure, group: TableGroup): void => {
  const { sheet, columns } = table
  const line = inside(body, sheet, 'TR')
  const title = inside(line, sheet, 'TH')
  describe(title, { Scope: 'Row', ColSpan: columns.length })
  table.group = ''
  if (sheet.doc.y + 10 + 2 * padPt + (group.rows.length > 0 ? roomAfterTitlePt : 0) > sheet.bottomPt) overleaf(table)
  rule(sheet, 0.8)
  drawRow(table, [across(sheet, group.title, 'bold', title)])
  table.group = group.title
  if (group.note !== '') {
    sheet.doc.y -= padPt
    drawRow(table, [across(sheet, group.note, 'plain', title)])
  }
  for (const words of group.rows) {
    rule(sheet, 0.3)
    const row = inside(body, sheet, 'TR')
    drawRow(
      table,
      cellsOf(table, words, 'plain', (i) => cellElement(sheet, row, i)),
    )
  }
}

const cellElement = (sheet: Sheet, row: Structure, column: number): Structure => {
  const element = inside(row, sheet, column === 0 ? 'TH' : 'TD')
  if (column === 0) describe(element, { Scope: 'Row' })
  return element
}

const drawHead = (table: Table, row: Structure | null): void => {
  const { sheet, columns } = table
  const heads = columns.map(({ head }) => head)
  const element = (): Structure | null => {
    const made = row === null ? null : inside(row, sheet, 'TH')
    if (made !== null) describe(made, { Scope: 'Column' })
    return made
  }
  rule(sheet, 1.2)
  drawRow(table, cellsOf(table, heads, 'bold', element))
  rule(sheet, 1.2)
}

const overleaf = (table: Table): void => {
  const { sheet, group } = table
  turnPage(sheet)
  drawHead(table, null)
  if (group !== '') drawRow(table, [across(sheet, `${group} (continued)`, 'bold', null)])
}

const across = ({ leftPt, widthPt }: Sheet, words: string, face: Face, element: Structure | null): Cell => ({
  words,
  face,
  leftPt,
  widthPt,
  element,
})

const cellsOf = (
  { sheet, columns }: Table,
  words: readonly string[],
  face: Face,
  elementOf: (column: number) => Structure | null,
): readonly Cell[] => {
  let leftPt = sheet.leftPt
  return columns.map(({ widthPt }, i) => {
    const cell = { words: words[i], face, leftPt, widthPt, element: elementOf(i) }
    leftPt += widthPt
    return cell
  })
}

/** Draws a row at the cursor, overleaf when it does not fit there, in pieces when it fits on no page. */
const drawRow = (table: Table, cells: readonly Cell[]): void => {
  const { sheet } = table
  const { doc, bottomPt } = sheet
  let rest = cells
  let fresh = false
  for (;;) {
    const roomPt = bottomPt - doc.y - 2 * padPt
    const parts = rest.map((cell) => splitCell(sheet, cell, roomPt))
    const fits = parts.every(([, later]) => later === '')
    if (!fits && !fresh) {
      overleaf(table)
      fresh = true
      continue
    }
    drawPieces(
      sheet,
      rest,
      parts.map(([now]) => now),
    )
    if (fits) return
    rest = rest.map((cell, i) => ({ ...cell, words: parts[i][1] }))
    overleaf(table)
  }
}

const splitCell = (sheet: Sheet, { words, face, widthPt }: Cell, heightPt: number): readonly [string, string] => {
  setFace(sheet, face, sizePt)
  return splitToFit(sheet, words, widthPt - 2 * padPt, heightPt)
}

const drawPieces = (sheet: Sheet, cells: readonly Cell[], pieces: readonly string[]): void => {
  const { doc } = sheet
  const top = doc.y + padPt
  let bottom = top
  cells.forEach(({ face, leftPt, widthPt, element }, i) => {
    if (pieces[i] === '') return
    setFace(sheet, face, sizePt)
    const draw = () => doc.text(pieces[i], leftPt + padPt, top, { width: widthPt - 2 * padPt })
    if (element === null) drawForTheEye(sheet, 'Pagination', draw)
    else element.add(draw)
    bottom = Math.max(bottom, doc.y)
  })
  doc.y = bottom + padPt
}

const rule = (sheet: Sheet, widthPt: number): void => {
  const { doc, leftPt } = sheet
  drawForTheEye(sheet, 'Layout', () => {
    doc
      .lineWidth(widthPt)
      .moveTo(leftPt, doc.y)
      .lineTo(leftPt + sheet.widthPt, doc.y)
      .stroke()
  })
}

/** What a screen reader is told of a cell. The library writes it so for its own tables but offers no call for it. */
const describe = (cell: Structure, told: { readonly Scope: 'Row' | 'Column'; readonly ColSpan?: number }): void => {
  const { dictionary } = cell as unknown as { readonly dictionary: { readonly data: Record<string, unknown> } }
  dictionary.data['A'] = { O: 'Table', ...told }
}
