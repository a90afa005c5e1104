import { encode } from 'uqr'
import { bytesOf, openSheet, printable, setFace, type Face, type Sheet } from './safety-pdf.ts'
import { inside } from './safety-pdf-text.ts'
import { type SafetyRecord } from './safety-record.ts'

const ptPerMm = 72 / 25.4
const label = { widthPt: 62 * ptPerMm, heightPt: 29 * ptPerMm, marginPt: 1.5 * ptPerMm } as const
const codePt = label.heightPt - 2 * ptPerMm
/** White that a reader of QR codes needs on each side, in modules (ISO/IEC 18004:2015, 6.3.8; from memory). */
const quietModules = 4
/** Finer than this, a phone no longer reads it from a printed label (common practice). */
const leastModulePt = 0.35 * ptPerMm

/**
 * A label of 62 × 29 mm: machine, verdict in words, day, name, rules, and a QR code that leads to the record at the address.
 * Throws a RangeError when the address is too long for a code that a phone can read at this size.
 */
export const safetyLabelPdf = (given: SafetyRecord, address: string): Promise<Uint8Array> => {
  const record = printable(given)
  const sheet = openSheet({
    ...label,
    footPt: 0,
    title: `Safety label: ${record.machine.name}`,
    author: record.madeBy,
    subject: record.reference,
    madeOn: record.madeOn,
  })
  drawWords(sheet, record)
  drawCode(sheet, address)
  return bytesOf(sheet)
}

type Line = { readonly words: string; readonly face: Face; readonly sizePt: number; readonly mostLines: number }

const wordsWidthPt = label.widthPt - label.marginPt - codePt - ptPerMm
const gapPt = 2

const drawWords = (sheet: Sheet, record: SafetyRecord): void => {
  const { doc, topPt, bottomPt } = sheet
  const { machine, verdict, madeBy, madeOn, rules } = record
  const name: Line = { words: machine.name, face: 'bold', sizePt: 7, mostLines: 2 }
  const below: readonly Line[] = [
    { words: warningOf(record), face: 'bold', sizePt: 6, mostLines: 2 },
    { words: madeOn, face: 'plain', sizePt: 6, mostLines: 1 },
    { words: madeBy, face: 'plain', sizePt: 6, mostLines: 1 },
    { words: `${rules.name}, ${rules.edition}`, face: 'plain', sizePt: 5, mostLines: 2 },
  ]
  const takenPt = [name, ...below].reduce((sum, line) => sum + heightOf(sheet, line), 0)
  doc.y = topPt
  drawLine(sheet, name)
  doc.y += gapPt
  drawVerdict(sheet, verdict.title, bottomPt - topPt - takenPt - 2 * gapPt)
  doc.y += gapPt
  for (const line of below) drawLine(sheet, line)
}

/** Empty where nothing was overruled and no proof was void. */
const warningOf = ({ voided, overruled }: SafetyRecord): string => {
  const said = [voided === null ? [] : ['earlier proof void'], overruled === null ? [] : ['verdict overruled']].flat()
  return said.length === 0 ? '' : `See the record: ${said.join(', ')}`
}

/** How high a line comes out: its words may be cut off after so many lines, for the record has them whole. */
const heightOf = (sheet: Sheet, { words, face, sizePt, mostLines }: Line): number => {
  if (words === '') return 0
  setFace(sheet, face, sizePt)
  const { doc } = sheet
  return Math.min(doc.heightOfString(words, { width: wordsWidthPt }), mostLines * doc.currentLineHeight(true))
}

const drawLine = (sheet: Sheet, line: Line): void => {
  if (line.words === '') return
  const { doc, root, leftPt } = sheet
  const height = heightOf(sheet, line) + 0.1
  const draw = () => doc.text(line.words, leftPt, doc.y, { width: wordsWidthPt, height, ellipsis: true })
  inside(root, sheet, 'P').add(draw)
}

/** As large as goes: the verdict is never cut off. */
const drawVerdict = (sheet: Sheet, words: string, roomPt: number): void => {
  const { doc, root, leftPt } = sheet
  const fits = (sizePt: number): boolean => {
    setFace(sheet, 'bold', sizePt)
    const wordsFit = words.split(' ').every((word) => doc.widthOfString(word) <= wordsWidthPt)
    return wordsFit && doc.heightOfString(words, { width: wordsWidthPt }) <= roomPt
  }
  const sizePt = verdictSizesPt.find(fits)
  if (sizePt === undefined) throw new RangeError(`the verdict is too long for a label: ${words}`)
  inside(root, sheet, 'P').add(() => doc.text(words, leftPt, doc.y, { width: wordsWidthPt }))
}

const verdictSizesPt = Array.from({ length: 20 }, (_, i) => 14 - i / 2)

const drawCode = (sheet: Sheet, address: string): void => {
  const { doc, root } = sheet
  const { data, size } = encode(address, { ecc: 'M', border: 0 })
  const modulePt = codePt / (size + 2 * quietModules)
  if (modulePt < leastModulePt) throw new RangeError(`the address is too long for a code on this label: ${address}`)
  const leftPt = label.widthPt - codePt + quietModules * modulePt
  const topPt = (label.heightPt - codePt) / 2 + quietModules * modulePt
  const sizePt = size * modulePt
  const told = { alt: `QR code that leads to ${address}`, bbox: [leftPt, topPt, leftPt + sizePt, topPt + sizePt] }
  const figure = doc.struct('Figure', told)
  root.add(figure)
  figure.add(() => {
    for (const { x, y, length } of runs(data)) {
      doc.rect(leftPt + x * modulePt, topPt + y * modulePt, length * modulePt, modulePt)
    }
    doc.fill('black')
  })
}

/** Dark modules side by side as one bar: no hairline of white shows between them. */
const runs = (rows: readonly (readonly boolean[])[]): readonly { x: number; y: number; length: number }[] =>
  rows.flatMap((row, y) => {
    const bars: { x: number; y: number; length: number }[] = []
    row.forEach((dark, x) => {
      const last = bars.at(-1)
      if (dark && last !== undefined && last.x + last.length === x) last.length++
      else if (dark) bars.push({ x, y, length: 1 })
    })
    return bars
  })
