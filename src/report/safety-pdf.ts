import { createRequire } from 'node:module'
import PDFDocument from 'pdfkit'

export type Pdf = InstanceType<typeof PDFDocument>
export type Structure = ReturnType<Pdf['struct']>

/** A PDF being written: the cursor is `doc.y`; everything is placed between the margins and hangs below `root`. All in points. */
export type Sheet = {
  readonly doc: Pdf
  readonly root: Structure
  readonly leftPt: number
  readonly widthPt: number
  readonly topPt: number
  readonly bottomPt: number
}

export type SheetPlan = {
  readonly title: string
  readonly author: string
  readonly subject: string
  /** `14 March 2026`; the file is dated by it, or 1 January 1970 when it is not a day (no check was made yet). */
  readonly madeOn: string
  readonly widthPt: number
  readonly heightPt: number
  readonly marginPt: number
  /** Room kept free below the text for what stands at the foot of each page. */
  readonly footPt: number
}

export type Face = 'plain' | 'bold'

const require = createRequire(import.meta.url)
/** One family that has ohm, micro, the signs of comparison and most alphabets; the fonts every reader has do not. */
const fontFiles: Readonly<Record<Face, string>> = {
  plain: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
}

/**
 * Opens a PDF of one empty page: tagged, in British English, its title shown in the window.
 * The same plan gives the same bytes on every machine: no clock, and no compression, which differs between builds of zlib.
 */
export const openSheet = (plan: SheetPlan): Sheet => {
  const { widthPt, heightPt, marginPt, footPt } = plan
  const doc = new PDFDocument({
    size: [widthPt, heightPt],
    // Pages are turned by us, never by the library, so nothing may reach its lower margin.
    margins: { top: marginPt, left: marginPt, right: marginPt, bottom: 0 },
    compress: false,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    bufferPages: true,
    font: fontFiles.plain,
    info: {
      Producer: 'Thrum',
      Creator: 'Thrum',
      CreationDate: dayOf(plan.madeOn) ?? new Date(0),
      Title: forInformation(plan.title),
      Author: forInformation(plan.author),
      Subject: forInformation(plan.subject),
    },
  })
  const root = doc.struct('Document')
  doc.addStructure(root)
  return {
    doc,
    root,
    leftPt: marginPt,
    widthPt: widthPt - 2 * marginPt,
    topPt: marginPt,
    bottomPt: heightPt - marginPt - footPt,
  }
}

const months = 'January February March April May June July August September October November December'.split(' ')

/** The first instant, in UTC, of a day written as `14 March 2026`; null when it is not one. */
const dayOf = (words: string): Date | null => {
  const found = /^(\d{1,2}) ([A-Z][a-z]+) (\d{4})$/.exec(words)
  if (found === null) return null
  const [day, month, year] = [Number(found[1]), months.indexOf(found[2]), Number(found[3])]
  const date = new Date(Date.UTC(year, month, day))
  return month >= 0 && date.getUTCDate() === day ? date : null
}

/** The library copies these words into XML as they are, so what XML would take for its own must not be in them. */
const forInformation = (words: string): string => words.replace(/[<>&\s]+/g, ' ').trim()

/** The same value with every control character in its words a space: a font has only an empty box for it. Lines stay lines. */
export const printable = <T>(value: T): T => {
  if (typeof value === 'string') return value.replace(/\r\n?/g, '\n').replace(/(?!\n)\p{Cc}/gu, ' ') as T
  if (Array.isArray(value)) return value.map(printable) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, printable(part as unknown)])) as T
}

/** Ends the document and gives back the whole file. */
export const bytesOf = async ({ doc, root }: Sheet): Promise<Uint8Array> => {
  const chunks: Uint8Array[] = []
  doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
  const ended = new Promise<void>((resolve, reject) => {
    doc.on('end', resolve)
    doc.on('error', reject)
  })
  root.end()
  doc.end()
  await ended
  return new Uint8Array(Buffer.concat(chunks))
}

/** Draws what is there for the eye only (rules, frames, page numbers), so that a screen reader passes over it. */
export const drawForTheEye = ({ doc }: Sheet, type: 'Layout' | 'Pagination', draw: () => void): void => {
  doc.markContent('Artifact', { type })
  draw()
  doc.endMarkedContent()
}

export const setFace = ({ doc }: Sheet, face: Face, sizePt: number): void => {
  doc.font(fontFiles[face]).fontSize(sizePt).fillColor('black')
}

export const turnPage = ({ doc, topPt }: Sheet): void => {
  doc.addPage()
  doc.y = topPt
}

/**
 * Splits words so that the first part fits into a box, at a space where there is one; in the face and size that are set.
 * Either part may be empty.
 */
export const splitToFit = (
  { doc }: Sheet,
  words: string,
  widthPt: number,
  heightPt: number,
): readonly [string, string] => {
  const fits = (length: number): boolean =>
    doc.heightOfString(words.slice(0, length), { width: widthPt }) <= heightPt + 0.01
  if (fits(words.length)) return [words, '']
  let [most, tooMany] = [0, words.length]
  while (tooMany - most > 1) {
    const middle = Math.floor((most + tooMany) / 2)
    if (fits(middle)) most = middle
    else tooMany = middle
  }
  const space = words.lastIndexOf(' ', most)
  const at = space > 0 ? space : most
  return [words.slice(0, at), words.slice(at).trimStart()]
}
