import { bytesOf, openSheet, printable, setFace, turnPage, type Sheet } from './safety-pdf.ts'
import { heading, inside, largeLine, list, numberPages, paragraph } from './safety-pdf-text.ts'
import type { SalePaper } from './sale-sheet.ts'

const a4 = { widthPt: 595.28, heightPt: 841.89 } as const
const marginPt = 42
const gapPt = 12
/** Two photographs stand side by side; one that is higher than wide is no higher than this. */
const highestPt = 220
const captionPt = 8
/** A heading, a row of photographs and their words. */
const roomForRowPt = 40 + highestPt + 3 * captionPt

/**
 * The sale sheet as a PDF of A4 pages: tagged, with selectable text, photographs inside it with their words. The same sheet gives the
 * same bytes on any machine and any day.
 */
export const saleSheetPdf = (given: SalePaper): Promise<Uint8Array> => {
  const { photos, ...words } = given
  const paper = printable(words)
  const sheet = openSheet({
    ...a4,
    marginPt,
    footPt: 18,
    title: paper.title,
    author: '',
    subject: paper.reference,
    madeOn: paper.on,
  })
  heading(sheet, 'H1', paper.title)
  if (paper.price !== '') largeLine(sheet, paper.price)
  for (const { name, lines } of paper.sections) {
    heading(sheet, 'H2', name)
    if (lines.length === 1) paragraph(sheet, lines[0] ?? '')
    else list(sheet, lines, '')
  }
  if (paper.condition.length > 0) {
    heading(sheet, 'H2', 'Looks, part by part')
    list(sheet, paper.condition, '')
  }
  if (paper.daggerWords !== '') paragraph(sheet, paper.daggerWords)
  drawPhotos(sheet, photos)
  numberPages(sheet, `${paper.title} · ${paper.reference}`)
  return bytesOf(sheet)
}

const drawPhotos = (sheet: Sheet, photos: SalePaper['photos']): void => {
  if (photos.length === 0) return
  // The heading is not left alone at the foot of a page.
  if (sheet.doc.y + roomForRowPt > sheet.bottomPt) turnPage(sheet)
  heading(sheet, 'H2', 'Photographs')
  for (let i = 0; i < photos.length; i += 2) drawRow(sheet, photos.slice(i, i + 2))
}

/** One or two photographs with their words below; the row is never parted. */
const drawRow = (sheet: Sheet, row: SalePaper['photos']): void => {
  const { doc } = sheet
  const widthPt = (sheet.widthPt - gapPt) / 2
  const drawn = row.map(({ alt, jpeg }) => ({
    alt: printable(alt),
    jpeg: Buffer.from(jpeg),
    ...sizeOf(sheet, jpeg, widthPt),
  }))
  setFace(sheet, 'plain', captionPt)
  const heightPt = Math.max(...drawn.map((one) => one.heightPt + 3 + doc.heightOfString(one.alt, { width: widthPt })))
  if (doc.y + heightPt > sheet.bottomPt) turnPage(sheet)
  const top = doc.y
  drawn.forEach((one, i) => {
    const left = sheet.leftPt + i * (widthPt + gapPt)
    const bbox = [left, top, left + one.widthPt, top + one.heightPt]
    const told = { alt: one.alt, bbox }
    const figure = doc.struct('Figure', told)
    sheet.root.add(figure)
    figure.add(() => doc.image(one.jpeg, left, top, { width: one.widthPt, height: one.heightPt }))
    setFace(sheet, 'plain', captionPt)
    inside(sheet.root, sheet, 'Caption').add(() => doc.text(one.alt, left, top + one.heightPt + 3, { width: widthPt }))
  })
  doc.y = top + heightPt + gapPt
}

/** What the library has and its types leave out. */
type OpensImages = { readonly openImage: (file: Buffer) => { readonly width: number; readonly height: number } }

/** As wide as its half of the page, less where it would be too high. */
const sizeOf = (
  { doc }: Sheet,
  jpeg: Uint8Array,
  widthPt: number,
): { readonly widthPt: number; readonly heightPt: number } => {
  const image = (doc as unknown as OpensImages).openImage(Buffer.from(jpeg))
  const scale = Math.min(widthPt / image.width, highestPt / image.height)
  return { widthPt: image.width * scale, heightPt: image.height * scale }
}
