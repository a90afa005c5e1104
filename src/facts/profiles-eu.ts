import type { Source } from '../base/source.ts'
import { currentRow, earthRow, insulationRow, retrieved } from './limit-rows.ts'
import type { LimitRule, SafetyProfile } from './safety-limits.ts'

/** Least current through the protective conductor, in ampere. */
const testA = 0.2

const old = retrieved(
  'VDE 0701-0702:2008, table of limits in an instrument’s manual',
  '2008 edition',
  'http://38.142.81.21:8001/manual/gossen-metrawatt/m501c/user-manual-german/page-92.html',
)
const carried: Source = { ...old, clause: '2008 edition; taken to stand in EN 50678:2020 (from memory)' }
const newEarth = retrieved(
  'EN 50678:2020, protective conductor',
  'up to 1.5 mm² by steps; thicker by length over conductivity and area (contacts and conductivity from memory)',
  'https://elektro.net/120122/wiederholungspruefung-fuer-elektrische-geraete',
)
const newTouch = retrieved(
  'EN 50678 and EN 50699, touch current 0.5 mA, in an association’s position',
  '2020 edition',
  'https://gambica.org.uk/resourceLibrary/gambica-position-paper---touch-current-limits---2025-pdf.html',
)
const steps = {
  kind: 'stepped',
  baseOhm: 0.3,
  upToM: 5,
  stepOhm: 0.1,
  stepM: 7.5,
  capOhm: 1,
  thick: null,
} as const satisfies LimitRule
const stepsUpToMm2: LimitRule = {
  ...steps,
  thick: { aboveMm2: 1.5, contactOhm: 0.1, conductivityMPerOhmMm2: 56 },
}
const euInsulation = {
  rule: 'both',
  source: retrieved(
    'Order of the tests of VDE 0701-0702: protective conductor, insulation, leakage',
    '2000 edition and later',
    'https://www.manualslib.de/manual/255662/Fluke-6200.html?page=43',
  ),
} as const

export const eu2008: SafetyProfile = {
  id: 'eu-vde-0701-0702-2008.v1',
  regions: ['EU'],
  name: 'VDE 0701-0702',
  edition: '2008, superseded',
  standing: 'after-repair',
  insulation: euInsulation,
  notes: [],
  limits: [
    earthRow(steps, testA, old),
    insulationRow(['I'], 1, old),
    insulationRow(['II'], 2, old),
    currentRow('protective-conductor-current', 'I', 3.5, old),
    currentRow('touch-current', 'II', 0.5, old),
    currentRow('substitute-leakage', 'I', 3.5, old),
    currentRow('substitute-leakage', 'II', 0.5, old),
  ],
}

export const euRepair: SafetyProfile = {
  ...eu2008,
  id: 'eu-en-50678-2020.v1',
  regions: ['EU', 'UK'],
  name: 'EN 50678, after repair',
  edition: '2020',
  notes: [
    {
      text: 'Tests after repair are for an electrically skilled person.',
      source: retrieved(
        'EN 50678:2020, extract',
        'who may test',
        'https://freestandardsdownload.com/bs-en-50678-2020-pdf-download.html',
      ),
    },
  ],
  limits: [
    earthRow(stepsUpToMm2, testA, newEarth),
    insulationRow(['I'], 1, carried),
    insulationRow(['II'], 2, carried),
    currentRow('protective-conductor-current', 'I', 3.5, carried),
    currentRow('touch-current', 'II', 0.5, newTouch),
    currentRow('substitute-leakage', 'I', 3.5, carried),
    currentRow('substitute-leakage', 'II', 0.5, carried),
  ],
}

export const euRecurrent: SafetyProfile = {
  ...euRepair,
  id: 'eu-en-50699-2020.v1',
  name: 'EN 50699, recurrent test',
  standing: 'in-service',
  notes: [
    {
      text: 'Its methods are not those of every product standard: results may mislead, and a test may do damage.',
      source: retrieved(
        'BS EN 50699:2020, national foreword',
        'foreword',
        'https://scribd.com/document/741268328/BS-EN-50699-032413',
      ),
    },
  ],
}
