import { currentRow, earthRow, fromMemory, insulationRow, retrieved } from './limit-rows.ts'
import type { SafetyProfile } from './safety-limits.ts'

/** Least current of the low-energy test, in ampere. From memory. */
const lowEnergyA = 0.1

const au = retrieved(
  'AS/NZS 3760:2003, earthing and insulation, in a testing firm’s summary',
  '1 Ω and 1 MΩ; a test current of 100 mA or more from memory',
  'http://www.allsafett.com.au/AS3760_test_and_tag.html',
)
const auLeakage = fromMemory('AS/NZS 3760, leakage', 'Table 1; a public draft of 2010 agrees')
const auLimits = [
  earthRow({ kind: 'fixed', value: 1 }, lowEnergyA, au),
  insulationRow(['I', 'II'], 1, au),
  currentRow('protective-conductor-current', 'I', 5, auLeakage),
  currentRow('touch-current', 'II', 1, auLeakage),
]
const auInsulation = {
  rule: 'either',
  source: retrieved(
    'AS/NZS 3760: leakage current or insulation resistance; leakage where a switch must be live to close',
    'as summarised by an instrument maker in 2005',
    'http://www.stewartsgroup.co.nz/19/news/8.html',
  ),
} as const

export const auService: SafetyProfile = {
  id: 'au-nz-3760.v1',
  regions: ['AU', 'NZ'],
  name: 'AS/NZS 3760, in service',
  edition: '2003 and 2010 draft',
  standing: 'in-service',
  insulation: auInsulation,
  notes: [],
  limits: auLimits,
}

export const auRepair: SafetyProfile = {
  ...auService,
  id: 'au-nz-5762.v1',
  name: 'AS/NZS 5762, after repair',
  edition: '2005',
  standing: 'after-repair',
  notes: [
    {
      text: 'The tests are those of AS/NZS 3760, with a look for mechanical harm and a tag.',
      source: retrieved(
        'AS/NZS 5762:2005, as summarised',
        'tests and tag',
        'https://healthsafety.com.au/as-nzs57622005-in-service-safety-inspection-and-testing-repaired-electrical-equipment-standard/',
      ),
    },
    {
      text: 'One voice in New Zealand asks for 0.5 Ω of earth after repair. A sound lead and joint stay below that.',
      source: retrieved(
        'Contractors’ forum on AS/NZS 3760',
        'advice, against 1 Ω in the summary',
        'http://www.electrical-contractor.net/forums/ubbthreads.php/posts/147737.html',
      ),
    },
  ],
}
