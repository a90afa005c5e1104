import { bytesOf, openSheet, printable, type Sheet } from './safety-pdf.ts'
import { drawTable, type TableColumn, type TableGroup } from './safety-pdf-table.ts'
import { field, frame, heading, largeLine, list, numberPages, paragraph } from './safety-pdf-text.ts'
import { type SafetyRecord, type SafetyRecordStep } from './safety-record.ts'

const a4 = { widthPt: 595.28, heightPt: 841.89 } as const
const marginPt = 42
const whatItIs =
  'What was looked at and measured on one machine, on the day, by the person named here. It promises nothing beyond that.'
const whoDecides = 'Local rules and a competent person decide'

const columns: readonly TableColumn[] = [
  { head: 'Where', widthPt: 104 },
  { head: 'Read', widthPt: 62 },
  { head: 'Limit', widthPt: 68 },
  { head: 'Uncertainty', widthPt: 64 },
  { head: 'Instrument', widthPt: 82 },
  { head: 'What it comes to', widthPt: a4.widthPt - 2 * marginPt - 380 },
]

/**
 * The safety record as a PDF of A4 pages, black on white: tagged, with selectable text, in British English.
 * The same record gives the same bytes, on any machine and any day.
 */
export const safetyRecordPdf = (given: SafetyRecord): Promise<Uint8Array> => {
  const record = printable(given)
  const sheet = openSheet({
    ...a4,
    marginPt,
    footPt: 18,
    title: `Safety record: ${record.machine.name}`,
    author: record.madeBy,
    subject: record.reference,
    madeOn: record.madeOn,
  })
  heading(sheet, 'H1', 'Safety record')
  paragraph(sheet, whatItIs)
  drawMachine(sheet, record)
  drawVerdict(sheet, record)
  drawRules(sheet, record)
  heading(sheet, 'H2', 'Checks, in their order')
  drawTable(sheet, columns, record.steps.map(groupOf))
  drawRest(sheet, record)
  numberPages(sheet, `Safety record · ${record.reference}`)
  return bytesOf(sheet)
}

const drawMachine = (sheet: Sheet, { machine }: SafetyRecord): void => {
  heading(sheet, 'H2', 'Machine')
  field(sheet, 'Name', machine.name)
  field(sheet, 'Kind', machine.architecture)
  field(sheet, 'Plate', machine.plate)
  field(sheet, 'Lead', machine.lead)
}

const drawVerdict = (sheet: Sheet, { verdict, recall, voided, overruled, madeBy, madeOn }: SafetyRecord): void => {
  heading(sheet, 'H2', 'Verdict')
  largeLine(sheet, verdict.title)
  paragraph(sheet, verdict.sentence)
  paragraph(sheet, recall)
  if (voided !== null) frame(sheet, 'An earlier proof is void', voided)
  if (overruled !== null) frame(sheet, 'The verdict was overruled, for this reason', overruled)
  field(sheet, 'Checked by', madeBy)
  field(sheet, 'Last check', madeOn)
}

const drawRules = (sheet: Sheet, { rules, decisionRule }: SafetyRecord): void => {
  heading(sheet, 'H2', 'Rules')
  field(sheet, 'Region', rules.region)
  field(sheet, 'Judged by', `${rules.name}, ${rules.edition}`)
  field(sheet, 'Table of limits', rules.id)
  field(sheet, 'Decision rule', decisionRule)
}

const groupOf = ({ title, state, why, readings }: SafetyRecordStep, i: number): TableGroup => ({
  title: `${i + 1}. ${title}: ${state}`,
  note: why,
  rows: readings.map((reading) => [
    reading.where,
    reading.read,
    reading.limit,
    reading.uncertainty,
    reading.instrument,
    reading.sentence,
  ]),
})

const drawRest = (sheet: Sheet, record: SafetyRecord): void => {
  heading(sheet, 'H2', 'Work done')
  list(sheet, record.work, 'No work is noted.')
  heading(sheet, 'H2', 'Instruments')
  list(
    sheet,
    record.instruments.map(({ name, checkedOn }) => `${name}: last check ${checkedOn}`),
    'No instrument is noted.',
  )
  heading(sheet, 'H2', 'What it does and does not prove')
  list(sheet, withWhoDecides(record.remarks), '')
  heading(sheet, 'H2', 'Selling it second-hand')
  list(sheet, record.selling, 'Nothing is noted.')
  heading(sheet, 'H2', 'Sources of the limits and of the law')
  list(sheet, record.sources, 'No source is named.')
}

/** No record goes out without that sentence, whoever wrote the remarks. */
const withWhoDecides = (remarks: readonly string[]): readonly string[] =>
  remarks.some((remark) => remark.includes(whoDecides)) ? remarks : [...remarks, `${whoDecides}.`]
