import { type SafetyRecord, type SafetyRecordReading } from '../../../src/report/safety-record.ts'

/** An invented record with every kind of line in it; the figures are only there to be printed. */
export const sampleRecord: SafetyRecord = {
  machine: {
    name: 'Blue cylinder from the attic',
    architecture: 'Bagged cylinder, mechanical switch',
    plate: '230 V, 50 Hz, 1200 W, class II, 6 kg',
    lead: 'H05VV-F, 2 × 0.75 mm², 6 m, fuse 13 A',
  },
  work: [
    '12 March 2026: flex replaced, H05VV-F 2 × 0.75 mm², 6 m, bought new for £8.40',
    '13 March 2026: carbon brushes replaced, 11 × 6 × 32 mm; commutator 180 µm under its mark',
  ],
  rules: {
    region: 'United Kingdom',
    name: 'Code of practice for in-service inspection and testing',
    edition: '5th edition',
    id: 'uk-5, version 3',
  },
  steps: [
    {
      title: 'Looked over',
      state: 'passed',
      why: '',
      readings: [reading('Flex, plug, case', 'sound', 'no damage', '', 'eyes', 'Nothing found.')],
    },
    {
      title: 'Protective conductor',
      state: 'does not apply',
      why: 'Class II has none. This is not a pass.',
      readings: [],
    },
    {
      title: 'Insulation',
      state: 'not proven',
      why: 'The switch was on. A multimeter never proves insulation.',
      readings: [
        reading(
          'Live and neutral to the screw of the case',
          '≥ 40 MΩ',
          '≥ 2 MΩ',
          '± 2 %',
          'Meter A',
          'Not proven: the meter reads at 3 V − not at 500 V.',
        ),
        reading(
          'Live and neutral to the pipe',
          '8.2 MΩ',
          '≥ 2 MΩ',
          '±0.4 MΩ',
          'Tester B',
          'Passed, with 5.8 MΩ to spare.',
        ),
      ],
    },
    {
      title: 'Leakage',
      state: 'passed',
      why: '',
      readings: [reading('Metal pipe', '0.03 mA', '≤ 0.25 mA', '±0.01 mA', 'Tester B', 'Passed.')],
    },
    { title: 'First run behind an RCD', state: 'not done', why: 'Asked for before it is sold.', readings: [] },
  ],
  instruments: [
    { name: 'Meter A, cheap multimeter', checkedOn: '1 March 2026 against 10 Ω ± 1 %' },
    { name: 'Tester B', checkedOn: '4 January 2026' },
  ],
  verdict: {
    kind: 'not-proven',
    title: 'Not proven',
    sentence: 'Nothing failed, but insulation to the case is not proved. A test at 500 V would prove it.',
  },
  recall: 'Recall check: not done. Look the plate up before it is sold.',
  overruled: null,
  voided: null,
  decisionRule: 'Simple acceptance with the uncertainty (k = 2) taken off the limit once.',
  madeBy: 'A. Bencher',
  madeOn: '14 March 2026',
  remarks: ['It shows what was measured on that day and nothing of the time after.'],
  selling: ['In the United Kingdom: General Product Safety Regulations 2005.', 'Local rules decide.'],
  sources: [
    'Code of practice for in-service inspection and testing, 5th edition, table 15.1 (retrieved)',
    'Prices in £ and €: the bench',
  ],
  reference: 'machine m-17, notes up to 42',
}

function reading(
  where: string,
  read: string,
  limit: string,
  uncertainty: string,
  instrument: string,
  sentence: string,
): SafetyRecordReading {
  return { where, read, limit, uncertainty, instrument, sentence }
}

/** The sample with one check of so many readings, the first of them `Point 1`. */
export const recordOfReadings = (count: number): SafetyRecord => ({
  ...sampleRecord,
  steps: [
    {
      title: 'Insulation',
      state: 'passed',
      why: '',
      readings: Array.from({ length: count }, (_, i) =>
        reading(`Point ${i + 1}`, `${(5 + i / 10).toFixed(1)} MΩ`, '≥ 2 MΩ', '±0.4 MΩ', 'Tester B', 'Passed.'),
      ),
    },
  ],
})
