import decodeQr from 'qr/decode.js'
import { describe, expect, test } from 'vitest'
import { safetyLabelPdf } from '../../../src/report/safety-label-pdf.ts'
import { type SafetyRecord } from '../../../src/report/safety-record.ts'
import { paintPage, readPdf } from './safety-pdf-reader.ts'
import { sampleRecord } from './safety-sample-record.ts'

const address = 'http://192.168.1.20:4170/machines/m-17/proof'
const dotsPerInch = 203
const read = async (record: SafetyRecord) => readPdf(await safetyLabelPdf(record, address))

describe('the code, read back by another library from the painted page at 203 dots per inch, as label printers have', () => {
  test.each([
    address,
    'https://thrum.example/m/1',
    'https://bench-in-the-shed.local:4170/benches/main/machines/01981f0e-6d5c-7c43-9f6a-3f7b0f9d2c11/proof?region=uk&note=42',
  ])('%s', async (leadsTo) => {
    const picture = await paintPage(await safetyLabelPdf(sampleRecord, leadsTo), dotsPerInch / 72)
    expect(decodeQr(picture, { timeLimit: 5000 })).toBe(leadsTo)
  })

  test('an address that would make it too fine is refused', () => {
    expect(() => safetyLabelPdf(sampleRecord, `https://thrum.example/${'a'.repeat(600)}`)).toThrow(
      /too long for a code/,
    )
  })
})

describe('the label', () => {
  test('is one page of 62 × 29 mm', async () => {
    const { sizesPt } = await read(sampleRecord)
    expect(sizesPt).toHaveLength(1)
    expect((sizesPt[0][0] / 72) * 25.4).toBeCloseTo(62, 2)
    expect((sizesPt[0][1] / 72) * 25.4).toBeCloseTo(29, 2)
  })

  test('says what, verdict, day, who and by which rules', async () => {
    const [words] = (await read(sampleRecord)).pages
    const { machine, verdict, madeOn, madeBy, rules } = sampleRecord
    for (const said of [machine.name, verdict.title, madeOn, madeBy, `${rules.name}, ${rules.edition}`]) {
      expect(words).toContain(said)
    }
    expect(words).not.toMatch(/certif|complian|overruled|void/i)
  })

  test('does not keep quiet about an overruled verdict or a void proof', async () => {
    const [words] = (await read({ ...sampleRecord, overruled: 'a reason', voided: 'a cover' })).pages
    expect(words).toContain('See the record: earlier proof void, verdict overruled')
  })

  test('cuts a long name, never the verdict, and stays on its page', async () => {
    const verdict = { ...sampleRecord.verdict, title: 'Not fit to sell as it stands' }
    const machine = { ...sampleRecord.machine, name: 'a very long name of a machine '.repeat(9) }
    const { pages } = await read({ ...sampleRecord, machine, verdict, overruled: 'a reason', voided: 'a cover' })
    expect(pages).toHaveLength(1)
    expect(pages[0]).toContain('…')
    expect(pages[0].replace(/\s+/g, ' ')).toContain(verdict.title)
  })

  test('is tagged and gives its code in words', async () => {
    const bytes = await safetyLabelPdf(sampleRecord, address)
    const { marked, language, roles } = await readPdf(bytes)
    expect(marked).toBe(true)
    expect(language).toBe('en-GB')
    expect(roles[0]).toContain('Figure')
    expect(Buffer.from(bytes).toString('latin1')).toContain(`(QR code that leads to ${address})`)
  })

  test('comes out the same twice', async () => {
    const [one, two] = await Promise.all([safetyLabelPdf(sampleRecord, address), safetyLabelPdf(sampleRecord, address)])
    expect(Buffer.compare(one, two)).toBe(0)
  })
})
