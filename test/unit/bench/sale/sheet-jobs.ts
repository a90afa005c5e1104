import type { MachineDocument } from '../../../../src/bench/contract.ts'
import { foldNotes } from '../../../../src/bench/fold.ts'
import { jobOf } from '../../../../src/bench/job.ts'
import { noteLines } from '../../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { evidenceOf, type Evidence } from '../../../../src/bench/sale/evidence.ts'
import { saleSheetView, type SaleSheetView } from '../../../../src/bench/sale/sheet-view.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import type { Blueprint } from '../../../../src/blueprint/schema.ts'
import { log } from '../../../support/notes.ts'

/** A bagged upright with one motor: it has a belt, a bag, filters, a hose. */
export const upright: Blueprint = blueprints.find(({ id }) => id === 'bagged-upright-one-motor')!

export const cameIn = (over: Partial<Extract<NoteContentInput, { kind: 'added' }>> = {}): NoteContentInput => ({
  kind: 'added',
  name: 'Heather grey upright',
  blueprint: upright.id,
  plate: upright.plate,
  paidMinor: 500,
  currency: 'GBP',
  complaints: ['dead'],
  ...over,
})

const provesWorking = upright.checks.find((check) => check.kind !== 'meter' && check.provesWorking)!
const outcomeOf = (place: 0 | -1): string =>
  provesWorking.kind === 'meter' ? '' : (provesWorking.outcomes.at(place)?.id ?? '')

export const ranWell: NoteContentInput = {
  kind: 'reading',
  check: provesWorking.id,
  result: { kind: 'grade', outcome: outcomeOf(0) },
  minutes: 2,
}
export const ranBadly: NoteContentInput = { ...ranWell, result: { kind: 'grade', outcome: outcomeOf(-1) } }

/** A repair of a part whose id holds the word, by the way named. */
export const repaired = (word: string, option: 'new' | 'salvaged' | 'clean', text = ''): NoteContentInput => {
  const found = upright.repairs.find(
    ({ part, options }) => part.includes(word) && options.some(({ id }) => id === option),
  )
  if (found === undefined) throw new Error(`the blueprint has no repair of a ${word} by ${option}`)
  return { kind: 'repaired', repair: found.id, option, minutes: 5, costMinor: 300, text }
}

/** The checks after repair of a class II machine by the usual rules, with what a sound one shows. */
export const provedSafe: readonly NoteContentInput[] = [
  { kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' } },
  { kind: 'proof', finding: { kind: 'look', step: 'visual', good: true }, minutes: 2 },
  {
    kind: 'proof',
    minutes: 3,
    finding: {
      kind: 'reading',
      quantity: 'insulation',
      part: 'motor housing',
      value: 120e6,
      testVoltageV: 500,
      instrument: 'insulation-tester',
      checkedOn: '2026-01-10',
    },
  },
  {
    kind: 'proof',
    minutes: 3,
    finding: {
      kind: 'reading',
      quantity: 'touch-current',
      part: 'motor housing',
      value: 5e-5,
      instrument: 'leakage-tester',
      checkedOn: '2026-01-10',
    },
  },
  { kind: 'proof', finding: { kind: 'look', step: 'polarity', good: true }, minutes: 1 },
  { kind: 'proof', finding: { kind: 'look', step: 'run', good: true }, minutes: 3 },
]

export const gauge = (kPa: number): NoteContentInput => ({
  kind: 'gauge',
  minutes: 1,
  reading: {
    way: upright.airWays[0].id,
    opening: { kind: 'sealed' },
    read: { measure: 'suction', suctionPa: kPa * 1000 },
    instrument: 'dial-40kpa',
  },
})

export const documentOf = (contents: readonly NoteContentInput[], blueprint = upright): MachineDocument => {
  const notes = log(contents)
  return { state: foldNotes(notes), notes, lines: noteLines(notes, blueprint) }
}

export const evidence = (contents: readonly NoteContentInput[]): Evidence => {
  const { state, notes } = documentOf([cameIn(), ...contents])
  return evidenceOf(state, notes, jobOf(state, notes, upright), 'UK')
}

export const sheetOf = (document: MachineDocument, blueprint = upright): SaleSheetView =>
  saleSheetView(document, { job: jobOf(document.state, document.notes, blueprint), region: 'UK', asking: null })
