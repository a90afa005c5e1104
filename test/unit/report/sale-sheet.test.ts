import sharp from 'sharp'
import { beforeAll, describe, expect, it } from 'vitest'
import { saleSheetHtml } from '../../../src/report/sale-sheet-html.ts'
import { saleSheetPdf } from '../../../src/report/sale-sheet-pdf.ts'
import { saleSheetText } from '../../../src/report/sale-sheet-text.ts'
import type { SalePaper } from '../../../src/report/sale-sheet.ts'
import { paintPage, readPdf } from './safety-pdf-reader.ts'

const squeezed = (words: string): string => words.replace(/\s+/g, '')
const jpegOf = async (width: number, height: number, background: string): Promise<Uint8Array> =>
  new Uint8Array(
    await sharp({ create: { width, height, channels: 3, background } })
      .jpeg()
      .toBuffer(),
  )

let paper: SalePaper
beforeAll(async () => {
  paper = {
    title: 'Grey <upright> & co: bagged upright, working',
    price: '£45.00',
    sections: [
      { name: 'What it is', lines: ['Bagged upright. By its plate 230 V, 700 W, class II.'] },
      {
        name: 'What was tested',
        lines: [
          'Insulation (motor housing): 120 MΩ, limit at least 1 MΩ; passed.',
          'Suction, sealed at the hose: 19.4 kPa.',
          'like new †',
        ],
      },
    ],
    condition: ['Hose: C, worn to look at'],
    photos: [
      { alt: 'Front', jpeg: await jpegOf(400, 300, 'black') },
      { alt: 'Rating plate "small"', jpeg: await jpegOf(300, 900, 'gray') },
      { alt: 'Back', jpeg: await jpegOf(400, 300, 'gray') },
    ],
    daggerWords: '† The seller’s own word: no note of the work bears it out.',
    on: '14 March 2026',
    reference: 'm1, note 12',
  }
})

const allWords = ({ photos, ...words }: SalePaper): readonly string[] => [
  words.title,
  words.price,
  ...words.sections.flatMap(({ name, lines }) => [name, ...lines]),
  ...words.condition,
  words.daggerWords,
  ...photos.map(({ alt }) => alt),
]

describe('the sale sheet as PDF, read by another program (pdf.js)', () => {
  it('has every word of the sheet, selectable, is A4 and tagged with a figure for each photograph', async () => {
    const pdf = await readPdf(await saleSheetPdf(paper))
    const words = squeezed(pdf.pages.join(' '))
    for (const each of allWords(paper)) expect(words).toContain(squeezed(each))
    // ISO 216: A4 is 210 × 297 mm; a point is 1/72 inch.
    expect(((pdf.sizesPt[0]?.[0] ?? 0) / 72) * 25.4).toBeCloseTo(210, 1)
    const roles = pdf.roles.flat()
    expect(pdf.marked).toBe(true)
    expect(pdf.language).toBe('en-GB')
    expect(roles.filter((role) => role === 'Figure')).toHaveLength(3)
    expect(roles.filter((role) => role === 'H1')).toHaveLength(1)
    expect(roles.filter((role) => role === 'H2')).toHaveLength(4)
  })

  it('shows the photographs: the black one is painted on the page', async () => {
    const black = async (sheet: SalePaper): Promise<number> => {
      const { data } = await paintPage(await saleSheetPdf(sheet), 0.5)
      return data.filter((value, i) => i % 4 === 0 && value < 40).length
    }
    // Half of the width between the margins by three quarters of it, at half a dot for a point: some 5900 dots.
    const widthPt = (595.28 - 2 * 42 - 12) / 2
    const dots = (widthPt / 2) * ((widthPt * 0.75) / 2)
    const more = (await black(paper)) - (await black({ ...paper, photos: [] }))
    expect(more / dots).toBeGreaterThan(0.9)
    expect(more / dots).toBeLessThan(1.1)
  })

  it('is the same, byte for byte, each time', async () => {
    const [one, other] = [await saleSheetPdf(paper), await saleSheetPdf(paper)]
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true)
  })
})

describe('the sale sheet as a page', () => {
  it('is one file: photographs inside it, no script, no address of anything else', () => {
    const html = saleSheetHtml(paper)
    expect(html).not.toMatch(/<script|<link|https?:|src="(?!data:image\/jpeg;base64,)|url\(|@import| on\w+=/i)
    expect(html.match(/<img /g)).toHaveLength(3)
    const sent = /base64,([^"]+)"/.exec(html)?.[1] ?? ''
    expect(Buffer.from(sent, 'base64').equals(Buffer.from(paper.photos[0].jpeg))).toBe(true)
  })

  it('takes no word for a tag', () => {
    const html = saleSheetHtml(paper)
    expect(html).toContain('<h1>Grey &lt;upright&gt; &amp; co: bagged upright, working</h1>')
    expect(html).toContain('alt="Rating plate &quot;small&quot;"')
  })
})

describe('the sale sheet as text', () => {
  it('has title, price, each section under its name, and what the dagger means', () => {
    const text = saleSheetText(paper)
    expect(text.startsWith(`${paper.title}\n£45.00\n\nWhat it is\n`)).toBe(true)
    expect(text).toContain('\n\nLooks, part by part\nHose: C, worn to look at\n\n† The seller’s own word')
  })
})
