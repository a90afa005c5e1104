import { pulledPlug } from './capacitors.ts'
import { currentRow, earthRow, fromMemory, pinVoltageRow, retrieved, tenthAndCord } from './limit-rows.ts'
import type { SafetyProfile } from './safety-limits.ts'

const routine = retrieved(
  'EN 50106, routine tests: 0.2 Ω, or 0.1 Ω and the cord (the larger of the two is our reading)',
  'protective conductor',
  'https://std-ol.cys.org.cy/safety-of-household-and-similar-electrical-appliances-particular-rules-for-routine-tests-referring-to-appliances-under-the-scope-of-en-60335-1',
)
const typeTest = retrieved(
  'IEC 60335-1, leakage in the type test',
  '13.2',
  'http://bbs2.angui.org/thread-68598-1-1.html',
)
const noInsulation = {
  rule: 'leakage-only',
  source: fromMemory('Type tests', 'no insulation resistance is asked for'),
} as const

export const routineTest: SafetyProfile = {
  id: 'eu-en-50106.v1',
  regions: ['EU', 'UK'],
  name: 'EN 50106, routine test at the end of the line',
  edition: 'not stated in the text',
  standing: 'reference',
  insulation: noInsulation,
  notes: [],
  limits: [earthRow({ kind: 'with-cord', allowanceOhm: 0.1, atLeastOhm: 0.2 }, 10, routine)],
}

export const typeTests: SafetyProfile = {
  id: 'type-iec-60335-1.v1',
  regions: ['EU', 'UK', 'AU', 'NZ'],
  name: 'IEC 60335-1, type test',
  edition: 'not stated in the text',
  standing: 'reference',
  insulation: noInsulation,
  notes: [],
  limits: [
    earthRow(tenthAndCord, 25, fromMemory('IEC 60335-1, protective conductor without the cord, 25 A', '27.5')),
    currentRow('protective-conductor-current', 'I', 0.75, typeTest, true),
    currentRow('protective-conductor-current', 'I', 3.5, typeTest, false),
    currentRow('touch-current', 'II', 0.25, typeTest),
    pinVoltageRow(pulledPlug.voltageV, pulledPlug.source),
  ],
}
