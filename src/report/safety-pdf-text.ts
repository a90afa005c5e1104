import { drawForTheEye, setFace, splitToFit, turnPage, type Face, type Sheet, type Structure } from './safety-pdf.ts'

type Style = { readonly face: Face; readonly sizePt: number; readonly beforePt: number; readonly afterPt: number }

const styles = {
  H1: { face: 'bold', sizePt: 20, beforePt: 0, afterPt: 2 },
  H2: { face: 'bold', sizePt: 11, beforePt: 12, afterPt: 3 },
  P: { face: 'plain', sizePt: 9, beforePt: 0, afterPt: 3 },
  verdict: { face: 'bold', sizePt: 24, beforePt: 2, afterPt: 2 },
} as const satisfies Record<string, Style>

/** A heading is not left alone at the foot of a page: this much must follow it. */
const roomAfterHeadingPt = 80
const labelWidthPt = 92

export const heading = (sheet: Sheet, level: 'H1' | 'H2', words: string): void => {
  const { doc, root, bottomPt, topPt } = sheet
  const style = styles[level]
  if (doc.y + style.beforePt + style.sizePt + roomAfterHeadingPt > bottomPt) turnPage(sheet)
  if (doc.y > topPt) doc.y += style.beforePt
  write(sheet, inside(root, sheet, level), style, words)
}

export const paragraph = (sheet: Sheet, words: string): void =>
  write(sheet, inside(sheet.root, sheet, 'P'), styles.P, words)

/** The one line that is read from across the table. */
export const largeLine = (sheet: Sheet, words: string): void =>
  write(sheet, inside(sheet.root, sheet, 'P'), styles.verdict, words)

/** A name and what it stands for beside it; `not noted` where that is empty. */
export const field = (sheet: Sheet, name: string, noted: string): void => {
  const words = noted === '' ? 'not noted' : noted
  const { doc, leftPt, widthPt, bottomPt } = sheet
  const element = inside(sheet.root, sheet, 'P')
  const style = styles.P
  setFace(sheet, 'plain', style.sizePt)
  const heightPt = doc.heightOfString(words, { width: widthPt - labelWidthPt })
  if (doc.y + Math.min(heightPt, roomAfterHeadingPt) > bottomPt) turnPage(sheet)
  const top = doc.y
  setFace(sheet, 'bold', style.sizePt)
  element.add(() => doc.text(`${name}:`, leftPt, top, { width: labelWidthPt - 6 }))
  const below = doc.y
  const page = doc.page
  doc.y = top
  write(sheet, element, style, words, labelWidthPt)
  if (doc.page === page) doc.y = Math.max(doc.y, below + style.afterPt)
}

/** Each entry with a dash before it; says so in words when there is none. */
export const list = (sheet: Sheet, entries: readonly string[], whenNone: string): void => {
  if (entries.length === 0) return paragraph(sheet, whenNone)
  const all = inside(sheet.root, sheet, 'L')
  const style = styles.P
  for (const entry of entries) {
    const item = inside(all, sheet, 'LI')
    if (sheet.doc.y + 2 * style.sizePt > sheet.bottomPt) turnPage(sheet)
    const top = sheet.doc.y
    setFace(sheet, style.face, style.sizePt)
    inside(item, sheet, 'Lbl').add(() => sheet.doc.text('–', sheet.leftPt, top, { lineBreak: false }))
    sheet.doc.y = top
    write(sheet, inside(item, sheet, 'LBody'), style, entry, 10)
  }
}

/** Words in a frame that nobody overlooks, with a bold line on top. A frame that is too high goes on overleaf. */
export const frame = (sheet: Sheet, title: string, words: string): void => {
  const { doc, root, leftPt, widthPt, bottomPt } = sheet
  const padPt = 7
  const inner = { width: widthPt - 2 * padPt }
  const section = inside(root, sheet, 'Sect')
  const [head, body] = [inside(section, sheet, 'P'), inside(section, sheet, 'P')]
  let [top, rest] = [title, words]
  doc.y += 3
  while (top !== '' || rest !== '') {
    setFace(sheet, 'bold', 11)
    const titlePt = top === '' ? 0 : doc.heightOfString(top, inner) + 2
    if (doc.y + titlePt + 2 * padPt + roomAfterHeadingPt > bottomPt) turnPage(sheet)
    const y = doc.y + padPt
    if (top !== '') head.add(() => doc.text(top, leftPt + padPt, y, inner))
    setFace(sheet, 'plain', 10)
    const [now, later] = splitToFit(sheet, rest, inner.width, bottomPt - y - titlePt - padPt)
    const endPt = y + titlePt + doc.heightOfString(now, inner) + padPt
    body.add(() => doc.text(now, leftPt + padPt, y + titlePt, inner))
    drawForTheEye(sheet, 'Layout', () =>
      doc
        .lineWidth(1.5)
        .rect(leftPt, y - padPt, widthPt, endPt - y + padPt)
        .stroke(),
    )
    doc.y = endPt + 6
    ;[top, rest] = ['', later]
  }
}

/** At the foot of each page: what it belongs to, and which page of how many. Call it last. */
export const numberPages = (sheet: Sheet, words: string): void => {
  const { doc, leftPt, widthPt, bottomPt } = sheet
  const { start, count } = doc.bufferedPageRange()
  for (let i = 0; i < count; i++) {
    doc.switchToPage(start + i)
    drawForTheEye(sheet, 'Pagination', () => {
      const y = bottomPt + 12
      const number = `Page ${i + 1} of ${count}`
      doc
        .lineWidth(0.5)
        .moveTo(leftPt, y - 4)
        .lineTo(leftPt + widthPt, y - 4)
        .stroke()
      setFace(sheet, 'plain', 7.5)
      const numberPt = doc.widthOfString(number)
      doc.text(splitToFit(sheet, words, widthPt - numberPt - 12, 10)[0], leftPt, y, { lineBreak: false })
      doc.text(number, leftPt + widthPt - numberPt, y, { lineBreak: false })
    })
  }
}

/** A new element of the document's structure, ready to be filled. */
export const inside = (parent: Structure, { doc }: Sheet, type: string): Structure => {
  const element = doc.struct(type)
  parent.add(element)
  return element
}

const write = (sheet: Sheet, element: Structure, style: Style, words: string, indentPt = 0): void => {
  const { doc, leftPt, bottomPt } = sheet
  const width = sheet.widthPt - indentPt
  for (let rest = words; rest !== '';) {
    setFace(sheet, style.face, style.sizePt)
    const [now, later] = splitToFit(sheet, rest, width, bottomPt - doc.y)
    if (now !== '') element.add(() => doc.text(now, leftPt + indentPt, doc.y, { width }))
    if (later !== '') turnPage(sheet)
    rest = later
  }
  doc.y += style.afterPt
}
