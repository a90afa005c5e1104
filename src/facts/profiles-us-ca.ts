import { currentRow, earthRow, fromMemory, retrieved, tenthAndCord } from './limit-rows.ts'
import type { SafetyProfile } from './safety-limits.ts'

const ground = retrieved(
  'UL 1086, continuity of the grounding circuit; UL 1017 taken to agree (from memory)',
  '34.1: 0.1 Ω from the point of connection at or within the appliance, so from the plug the cord comes on top; 34.2: by any convenient method',
  'https://manualshive.com/en/manual/century/ul-1086/2583156?page=56',
)
const leakageUs = retrieved(
  'Leakage of portable appliances in a like UL standard; UL 1017 itself from memory',
  '0.5 mA',
  'http://www.cgets.net/bbs/read-htm-tid-1275.html',
)
const hipot = {
  text: 'The type test asks for 1000 V at 60 Hz for a minute. That is for a laboratory, never for a bench.',
  source: retrieved('A like motor standard', 'dielectric strength', 'http://bbs4.angui.org/archiver/tid-28369.html'),
}

export const us: SafetyProfile = {
  id: 'us-reference.v1',
  regions: ['US'],
  name: 'Figures of the UL type tests, for want of a scheme of tests after repair',
  edition: 'UL 1017 and like standards',
  standing: 'after-repair',
  insulation: { rule: 'leakage-only', source: fromMemory('UL type tests', 'no insulation resistance is asked for') },
  notes: [
    {
      text: 'No routine scheme exists. At work, damaged equipment is taken out of use until it is repaired and tested as needed to make it safe.',
      source: retrieved(
        '29 CFR 1910.334(a)(2)',
        'use of equipment',
        'https://www.law.cornell.edu/regulations/washington/WAC-296-24-985',
      ),
    },
    hipot,
  ],
  limits: [
    earthRow(tenthAndCord, null, ground),
    currentRow('protective-conductor-current', 'I', 0.5, leakageUs),
    currentRow('touch-current', 'II', 0.5, leakageUs),
  ],
}

export const canada: SafetyProfile = {
  ...us,
  id: 'ca-reference.v1',
  regions: ['CA'],
  name: 'Figures of the CSA and UL type tests, for want of a scheme of tests after repair',
  edition: 'CSA C22.2 No. 243 with UL 1017 (from memory)',
  notes: [hipot],
  limits: us.limits.map((limit) => ({
    ...limit,
    source: { ...limit.source, title: `${limit.source.title}; taken for CSA C22.2 No. 243`, evidence: 'from memory' },
  })),
}
