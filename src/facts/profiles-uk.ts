import { currentRow, earthRow, fromMemory, insulationRow, retrieved, tenthAndCord } from './limit-rows.ts'
import type { SafetyProfile } from './safety-limits.ts'

/** Least current of the gentle test of the code, in ampere. */
const gentleTestA = 0.02

const codeTitle = 'Code of practice for in-service inspection and testing of electrical equipment'
const code4 = retrieved(codeTitle, '4th edition 2012, quoted', 'http://www.pat-testing.info/test.htm')
const code4Insulation = retrieved(
  codeTitle,
  '4th edition 2012, quoted',
  'http://pswservices.co.uk/electrical-tests.asp',
)
const codeChange = retrieved(
  codeTitle,
  '4th against 5th edition, leakage',
  'https://www.pat-testing-training.net/articles/iet-code-of-practice-5th-edition.php',
)
const code5Earth = retrieved(
  codeTitle,
  '5th edition 2020, earth: 0.1 + R',
  'https://www.seaward.com/gb/support/pat-testing/faqs/89534-how-do-you-pat-test-a-long-extension-lead/',
)
const code5Insulation = retrieved(
  codeTitle,
  'insulation; edition not stated in the text',
  'https://www.patinfo.co.uk/insulation-resistance',
)
const ukInsulation = {
  rule: 'insulation-unless-unsuitable',
  source: fromMemory(codeTitle, 'leakage in place of insulation where the insulation test is unsuitable'),
} as const
export const ukCode4: SafetyProfile = {
  id: 'uk-cop-4.v1',
  regions: ['UK'],
  name: 'Code of practice, 4th edition',
  edition: '2012, superseded',
  standing: 'in-service',
  insulation: ukInsulation,
  notes: [],
  limits: [
    earthRow(tenthAndCord, gentleTestA, code4),
    insulationRow(['I'], 1, code4Insulation),
    insulationRow(['II'], 2, code4Insulation),
    currentRow('protective-conductor-current', 'I', 0.75, codeChange, true),
    currentRow('protective-conductor-current', 'I', 3.5, codeChange, false),
    currentRow('touch-current', 'II', 0.25, codeChange),
  ],
}

export const ukCode5: SafetyProfile = {
  ...ukCode4,
  id: 'uk-cop-5.v1',
  name: 'Code of practice, 5th edition',
  edition: '2020',
  notes: [
    {
      text: 'This edition allows 5 mA of touch current. EN 50678 and EN 50699 allow 0.5 mA, below which nobody starts.',
      source: retrieved(
        'Position of an instrument makers’ association on limits of touch current',
        '2025',
        'https://gambica.org.uk/resourceLibrary/gambica-position-paper---touch-current-limits---2025-pdf.html',
      ),
    },
  ],
  limits: [
    earthRow(tenthAndCord, gentleTestA, code5Earth),
    insulationRow(['I'], 1, code5Insulation),
    insulationRow(['II'], 2, code5Insulation),
    currentRow('protective-conductor-current', 'I', 5, codeChange),
    currentRow('touch-current', 'II', 5, codeChange),
  ],
}
