import { afterEach, describe, expect, test, vi } from 'vitest'
import { safetyRecordPdf } from '../../../src/report/safety-record-pdf.ts'
import { type SafetyRecord } from '../../../src/report/safety-record.ts'
import { readPdf } from './safety-pdf-reader.ts'
import { recordOfReadings, sampleRecord } from './safety-sample-record.ts'

const overruled = 'The buyer tests it at 500 V before it is used.'
const voided = 'The motor cover was opened on 15 March 2026.'
const full: SafetyRecord = { ...sampleRecord, overruled, voided }

/** Where a line was broken a reader sees a space more or less, so words are compared without any. */
const squeezed = (words: string): string => words.replace(/\s+/g, '')
const read = async (record: SafetyRecord) => {
  const pdf = await readPdf(await safetyRecordPdf(record))
  return { ...pdf, words: squeezed(pdf.pages.join(' ')) }
}
const howOften = (words: string, part: string): number => words.split(squeezed(part)).length - 1

/** Every string in a value, in order. */
const stringsIn = (value: unknown): readonly string[] => {
  if (typeof value === 'string') return [value]
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(stringsIn) : []
}

afterEach(() => {
  vi.useRealTimers()
})

describe('the file, as another program reads it (ISO 32000-1:2008, 7.5, from memory; pdf.js)', () => {
  test('has a header, and a trailer that points at the table of its objects', async () => {
    const file = Buffer.from(await safetyRecordPdf(full)).toString('latin1')
    expect(file.startsWith('%PDF-1.7\n')).toBe(true)
    const end = /startxref\n(\d+)\n%%EOF\n$/.exec(file)
    expect(file.slice(Number(end?.[1])).startsWith('xref\n0 ')).toBe(true)
  })

  test('is A4, in British English, with its title in the window', async () => {
    const { sizesPt, title, language, displaysTitle, createdOn } = await read(full)
    // ISO 216: A4 is 210 × 297 mm; a point is 1/72 inch.
    for (const [width, height] of sizesPt) {
      expect((width / 72) * 25.4).toBeCloseTo(210, 1)
      expect((height / 72) * 25.4).toBeCloseTo(297, 1)
    }
    expect(title).toBe('Safety record: Blue cylinder from the attic')
    expect(language).toBe('en-GB')
    expect(displaysTitle).toBe(true)
    expect(createdOn).toBe('D:20260314000000Z')
  })

  test('is tagged: headings, a table with heads, lists', async () => {
    const { marked, roles } = await read(full)
    const all = roles.flat()
    const count = (role: string): number => all.filter((one) => one === role).length
    expect(marked).toBe(true)
    expect(count('H1')).toBe(1)
    expect(count('H2')).toBe(9)
    expect(count('THead')).toBe(1)
    const rows = full.steps.flatMap((step) => step.readings)
    const filled = rows.flatMap(({ where: _, ...others }) => Object.values(others)).filter((words) => words !== '')
    expect(count('TR')).toBe(1 + full.steps.length + rows.length)
    expect(count('TH')).toBe(6 + full.steps.length + rows.length)
    expect(count('TD')).toBe(filled.length)
    expect(count('LI')).toBe(2 + 2 + 2 + 2 + 2)
  })

  test('a name with signs that XML takes for its own breaks nothing', async () => {
    const { title, xmpTitle, words } = await read({ ...full, machine: { ...full.machine, name: 'Hall & <stairs>' } })
    expect(title).toBe(xmpTitle)
    expect(title).toContain('stairs')
    expect(words).toContain('Hall&<stairs>')
  })

  test('a record without a day is printed all the same', async () => {
    const { createdOn, words } = await read({ ...full, madeOn: 'no check was made' })
    expect(createdOn).toBe('D:19700101000000Z')
    expect(words).toContain('nocheckwasmade')
  })
})

describe('what is printed', () => {
  test('every word of the record', async () => {
    const { words } = await read(full)
    const { verdict, ...rest } = full
    const missing = [...stringsIn(rest), verdict.title, verdict.sentence].filter(
      (one) => !words.includes(squeezed(one)),
    )
    expect(missing).toEqual([])
  })

  test('the signs of the trade, each in the text and none as an empty box', async () => {
    const signs = 'Ω µ ² ≤ ≥ ± − £ € MΩ × – · ° ⌀ é ß ł Ж'
    const { words } = await read({ ...full, overruled: signs })
    expect(words).toContain(squeezed(signs))
    expect(words).not.toContain('\u0000')
  })

  test('lines of a note as lines, and no box for a tab', async () => {
    const { words } = await read({ ...full, overruled: 'first\r\n\tsecond\u0007\nthird' })
    expect(words).toContain('firstsecondthird')
  })

  test('checks in their order', async () => {
    const { words } = await read(full)
    const at = full.steps.map(({ title, state }, i) => words.indexOf(squeezed(`${i + 1}. ${title}: ${state}`)))
    expect(at).toEqual([...at].sort((a, b) => a - b))
    expect(at.every((place) => place >= 0)).toBe(true)
  })

  test('a reason for overruling and what made a proof void, only when there is one', async () => {
    const with_ = await read(full)
    expect(with_.words).toContain(squeezed(`The verdict was overruled, for this reason ${overruled}`))
    expect(with_.words).toContain(squeezed(`An earlier proof is void ${voided}`))
    const without = await read(sampleRecord)
    expect(without.words).not.toMatch(/overruled|void/)
  })

  test.each([
    ['none', []],
    ['one of its own', ['Local rules and a competent person decide. It is no approval.']],
  ])('that local rules and a competent person decide, once, when the remarks have %s', async (_, remarks) => {
    const { words } = await read({ ...full, remarks })
    expect(howOften(words, 'Local rules and a competent person decide')).toBe(1)
  })

  test('says so where nothing is noted', async () => {
    const bare = { ...full, work: [], instruments: [], sources: [], steps: [], madeBy: '' }
    const { words } = await read(bare)
    for (const said of [
      'No work is noted.',
      'No instrument is noted.',
      'No source is named.',
      'Checked by: not noted',
    ]) {
      expect(words).toContain(squeezed(said))
    }
  })

  test('never what would make it look like more than a record', async () => {
    const { pages, title } = await read(full)
    expect(`${String(title)} ${pages.join(' ')}`).not.toMatch(/certif|complian|guarant|approved/i)
  })
})

describe('long records', () => {
  test('60 readings go over pages: the head on each, every row once and in order', async () => {
    const { pages, roles } = await readPdf(await safetyRecordPdf(recordOfReadings(60)))
    const withRows = pages.filter((page) => page.includes('Point '))
    expect(withRows.length).toBeGreaterThan(1)
    for (const page of withRows) expect(page).toContain('Where Read Limit Uncertainty Instrument What it comes to')
    expect(withRows[1].startsWith('Where Read')).toBe(true)
    expect(withRows[1]).toContain('1. Insulation: passed (continued)')
    const points = [...pages.join(' ').matchAll(/Point (\d+) /g)].map(([, number]) => Number(number))
    expect(points).toEqual(Array.from({ length: 60 }, (_, i) => i + 1))
    // What is repeated for the eye is not read out again.
    expect(roles.flat().filter((role) => role === 'THead')).toHaveLength(1)
    expect(roles.flat().filter((role) => role === 'TR')).toHaveLength(62)
  })

  test('each page says which it is, of how many, and of what', async () => {
    const { pages } = await readPdf(await safetyRecordPdf(recordOfReadings(150)))
    expect(pages.length).toBeGreaterThan(3)
    pages.forEach((page, i) =>
      expect(page.endsWith(`Safety record · machine m-17, notes up to 42 Page ${i + 1} of ${pages.length}`)).toBe(true),
    )
  })

  test.each([10, 300, 900, 3000])('loses none of %i words, in a frame, a row or a remark', async (count) => {
    const numbered = (name: string): string => Array.from({ length: count }, (_, i) => `[${name}${i}]`).join(' ')
    const { words } = await read({
      ...full,
      overruled: numbered('f'),
      remarks: [numbered('l')],
      steps: [{ ...full.steps[2], readings: [{ ...full.steps[2].readings[0], sentence: numbered('r') }] }],
    })
    for (const name of ['f', 'l', 'r']) {
      const found = [...words.matchAll(new RegExp(`\\[${name}(\\d+)\\]`, 'g'))].map(([, number]) => Number(number))
      expect(found).toEqual(Array.from({ length: count }, (_, i) => i))
    }
  })

  test('a word that is longer than a line is broken, not lost', async () => {
    const long = 'x'.repeat(2000)
    const { words } = await read({ ...full, overruled: long })
    expect([...words.matchAll(/x{20,}/g)].reduce((sum, [run]) => sum + run.length, 0)).toBe(long.length)
  })
})

describe('the same record', () => {
  test('gives the same bytes, whatever the clock says', async () => {
    const first = await safetyRecordPdf(full)
    vi.useFakeTimers({ toFake: ['Date'], now: new Date('2031-07-01T12:00:00Z') })
    expect(Buffer.compare(await safetyRecordPdf(structuredClone(full)), first)).toBe(0)
  })

  test('is not compressed, for builds of zlib differ in their bytes', async () => {
    expect(Buffer.from(await safetyRecordPdf(full)).includes('FlateDecode')).toBe(false)
  })

  test('another record gives other bytes and another name of the file', async () => {
    const idOf = (bytes: Uint8Array) => /\/ID \[<([0-9a-f]+)>/.exec(Buffer.from(bytes).toString('latin1'))?.[1]
    const [one, other] = [await safetyRecordPdf(full), await safetyRecordPdf({ ...full, reference: 'machine m-18' })]
    expect(idOf(one)).toMatch(/^[0-9a-f]{32}$/)
    expect(idOf(other)).not.toBe(idOf(one))
  })
})
