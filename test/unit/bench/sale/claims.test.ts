import { describe, expect, test } from 'vitest'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { claimsIn } from '../../../../src/bench/sale/claims.ts'
import { cleaningTaskIds, cleaningTasks } from '../../../../src/facts/cleaning-tasks.ts'
import { saleClaims } from '../../../../src/facts/sale-claims.ts'
import { cameIn, documentOf, evidence, gauge, provedSafe, ranBadly, ranWell, repaired, upright } from './sheet-jobs.ts'
import { evidenceOf } from '../../../../src/bench/sale/evidence.ts'
import { jobOf } from '../../../../src/bench/job.ts'

type Verdict = 'supported' | 'unsupported' | 'contradicted'
type Notes = readonly NoteContentInput[]
const photo = 'a'.repeat(64)
const opened: NoteContentInput = { kind: 'opened', cover: upright.covers[0].id, minutes: 2 }
const seen = (complaint: 'smell' | 'noise' | 'weak-suction' | 'dead'): NoteContentInput => ({
  kind: 'seen',
  complaints: [complaint],
})
const cleaned: NoteContentInput = { kind: 'cleaned', task: 'wash-casing', text: '' }
/** Every task that belongs to the machine and adds to a clean one. */
const fullyCleaned = cleaningTaskIds
  .filter((id) => cleaningTasks[id].adds.kind === 'improvement' && !id.startsWith('new-'))
  .map((task): NoteContentInput => ({ kind: 'cleaned', task }))
const listed = (grade: 'A' | 'B' | 'C'): NoteContentInput => ({ kind: 'listed', priceMinor: 4500, where: '', grade })
const tried = (name: string, result: 'good' | 'bad'): NoteContentInput => ({ kind: 'tried', function: name, result })
const said = (text: string): NoteContentInput => ({ kind: 'said', text })
const fault = upright.faults[0].id
const gone = upright.parts.find(({ id }) => id.includes('hose'))!.id

/**
 * Each claim with notes that bear it out, that say nothing, and that say the contrary. Wordings are those of second-hand adverts as the
 * trade writes them (common practice); what each must rest on: src/facts/sale-claims.ts, sources beside.
 */
const cases: readonly (readonly [claim: string, words: string, verdict: Verdict, notes: Notes])[] = [
  ['safety-tested', 'PAT tested', 'supported', provedSafe],
  ['safety-tested', 'Safety tested and sold', 'unsupported', [ranWell]],
  ['safety-tested', 'PAT passed', 'contradicted', [...provedSafe, opened]],
  ['safe', 'perfectly safe to use', 'supported', provedSafe],
  ['safe', 'It is safe', 'unsupported', []],
  [
    'safe',
    'It is safe',
    'contradicted',
    [...provedSafe.slice(0, 1), { kind: 'proof', finding: { kind: 'look', step: 'visual', good: false } }],
  ],
  ['insulation', 'Insulation tested', 'supported', provedSafe],
  ['insulation', 'The insulation is sound', 'unsupported', []],
  [
    'insulation',
    'insulation tested',
    'contradicted',
    [
      ...provedSafe.slice(0, 2),
      {
        kind: 'proof',
        finding: {
          kind: 'reading',
          quantity: 'insulation',
          value: 2e4,
          testVoltageV: 500,
          instrument: 'insulation-tester',
        },
      },
    ],
  ],
  ['working', 'Fully working', 'supported', [ranWell]],
  ['working', 'In good working order', 'unsupported', []],
  ['working', 'works well', 'unsupported', [ranWell, repaired('belt', 'new')]],
  ['working', 'runs well', 'contradicted', [ranBadly]],
  ['working', 'works', 'contradicted', [ranWell, tried('height', 'bad')]],
  ['working', 'works', 'contradicted', [ranWell, seen('dead')]],
  ['tested', 'Fully tested', 'supported', [ranWell]],
  ['tested', 'tested', 'unsupported', []],
  ['tested', 'tested', 'contradicted', [...provedSafe, opened]],
  ['no-fault', 'No known faults', 'supported', [ranWell]],
  ['no-fault', 'nothing wrong with it', 'unsupported', []],
  ['no-fault', 'fault-free', 'contradicted', [{ kind: 'confirmed', fault }, ranWell]],
  ['new-belt', 'Fitted with a new belt', 'supported', [repaired('belt', 'new')]],
  ['new-belt', 'belt replaced', 'supported', [said('New belt fitted')]],
  ['new-belt', 'new drive belt', 'unsupported', [ranWell]],
  ['new-hose', 'new hose', 'contradicted', [repaired('hose', 'salvaged')]],
  [
    'new-filter',
    'new filter',
    'supported',
    [
      { kind: 'spent', costMinor: 600, text: 'Cleaned, new bag and filters' },
      { kind: 'cleaned', task: 'new-motor-filter' },
    ],
  ],
  ['new-filter', 'New filters', 'unsupported', []],
  ['new-bag', 'new bag', 'supported', [{ kind: 'spent', costMinor: 600, text: 'new bag and filters' }]],
  ['new-bag', 'New bag', 'unsupported', [said('No new bag was to be had')]],
  ['serviced', 'Fully serviced', 'supported', [cleaned, repaired('belt', 'new')]],
  ['serviced', 'recently serviced', 'unsupported', [cleaned]],
  ['cleaned', 'Deep cleaned', 'supported', fullyCleaned],
  ['cleaned', 'Fully cleaned', 'supported', [said('Deep cleaned, inside and out')]],
  ['cleaned', 'cleaned', 'unsupported', [cleaned]],
  ['cleaned', 'cleaned', 'unsupported', [...fullyCleaned, { kind: 'cleaned', task: 'wash-filter', dryHours: 24 }]],
  ['cleaned-casing', 'Casing cleaned', 'supported', [cleaned]],
  ['cleaned', 'cleaned', 'unsupported', []],
  ['cleaned', 'cleaned', 'unsupported', [{ kind: 'cleaned', task: 'new-bag' }]],
  ['new-bag', 'new bag', 'supported', [{ kind: 'cleaned', task: 'new-bag' }]],
  ['new-filter', 'new filter', 'unsupported', [{ kind: 'cleaned', task: 'wash-filter', text: 'fitted back dry' }]],
  ['cleaned', 'spotless', 'contradicted', [{ kind: 'graded', part: gone, when: 'before', grade: 'D' }]],
  // A clean-air upright gives about 20 kPa sealed: see the class in src/facts/suction-classes.ts, source beside.
  ['strong-suction', 'Strong suction', 'supported', [gauge(30)]],
  ['strong-suction', 'strong suction', 'unsupported', [ranWell]],
  ['strong-suction', 'very powerful suction', 'contradicted', [gauge(3)]],
  ['strong-suction', 'great suction', 'contradicted', [gauge(30), seen('weak-suction')]],
  ['suction-figure', '19.4 kPa', 'supported', [gauge(19.3)]],
  ['suction-figure', '194 mbar', 'supported', [gauge(19.4)]],
  ['suction-figure', '24 kPa', 'contradicted', [gauge(19.4)]],
  ['suction-figure', '24 kPa', 'unsupported', []],
  ['no-smell', 'No smells', 'supported', [tried('smell', 'good')]],
  ['no-smell', 'odour free', 'unsupported', [cleaned]],
  ['no-smell', 'no bad smell', 'contradicted', [cleaned, seen('smell')]],
  ['quiet', 'quiet', 'supported', [said('Runs quiet after the new bearings')]],
  ['quiet', 'very quiet', 'unsupported', []],
  ['quiet', 'quiet', 'contradicted', [seen('noise')]],
  ['complete', 'with all tools', 'supported', [{ kind: 'photo', photo, shot: 'tools', when: 'after' }]],
  ['complete', 'complete', 'unsupported', []],
  ['complete', 'Comes with all the tools', 'contradicted', [{ kind: 'taken-out', part: gone }]],
  ['warranty', '30 day warranty', 'supported', [said('Thirty days of warranty, parts and work')]],
  ['warranty', 'Guaranteed', 'unsupported', []],
  ['year', 'made in 2019', 'supported', [{ kind: 'history', ageYears: 7 }]],
  ['year', '2024 model', 'contradicted', [{ kind: 'history', ageYears: 12 }]],
  ['year', 'made in 2019', 'unsupported', []],
  ['all-original', 'all original', 'contradicted', [repaired('belt', 'new')]],
  ['all-original', 'never opened', 'contradicted', [opened]],
  ['all-original', 'untouched', 'unsupported', []],
  ['original', 'original tools', 'supported', [said('The tools are the original ones')]],
  ['original', 'genuine filter', 'unsupported', []],
  ['hepa', 'HEPA filter', 'supported', [said('Printed on the filter: HEPA H13')]],
  ['hepa', 'HEPA', 'unsupported', [said('No HEPA on this one')]],
  ['allergy', 'allergy friendly', 'unsupported', []],
  ['allergy', 'Allergy approved', 'supported', [said('Label of an allergy foundation on the lid')]],
  ['looks', 'like new', 'supported', [listed('A')]],
  ['looks', 'Immaculate', 'contradicted', [listed('C')]],
  ['looks', 'no scratches', 'unsupported', []],
  ['little-used', 'Hardly used', 'supported', [{ kind: 'history', wear: 'light' }]],
  ['little-used', 'one careful owner', 'contradicted', [{ kind: 'history', wear: 'heavy' }]],
  ['little-used', 'little used', 'unsupported', []],
  ['power', `${upright.plate.powerW} W`, 'supported', []],
  ['power', '2400 W', 'contradicted', []],
  ['voltage', '230 V', 'supported', []],
  ['voltage', '120 V', 'contradicted', []],
  ['class-two', 'double insulated', 'supported', []],
  ['earthed', 'earthed', 'contradicted', []],
]

describe('a claim of a seller against the notes', () => {
  test.each(cases)('%s: “%s” is %s', (claim, words, verdict, notes) => {
    const marks = claimsIn(words, evidence(notes))
    expect(marks.map((mark) => [mark.claim, mark.verdict])).toContainEqual([claim, verdict])
  })

  test('each claim of the table is looked at', () => {
    const seenHere = new Set(cases.map(([claim]) => claim))
    expect(saleClaims.map(({ id }) => id).filter((id) => !seenHere.has(id))).toEqual([])
  })

  test('what bears it out is named by its note', () => {
    const [mark] = claimsIn('Fitted with a new belt', evidence([repaired('belt', 'new')]))
    expect(mark?.notes).toEqual(['n2'])
    expect(mark?.words).toBe('new belt')
  })

  test.each([
    'Not tested.',
    'Untested',
    'It has no warranty',
    'not proven to be safe',
    'Needs a new belt',
    'No new filter',
    'without a guarantee',
  ])('“%s” claims nothing', (words) => expect(claimsIn(words, evidence([]))).toEqual([]))

  test('a claim taken back in one clause stands in the next', () => {
    const marks = claimsIn('Not pretty, fully working', evidence([ranWell]))
    expect(marks.map(({ claim }) => claim)).toEqual(['working'])
  })

  test('one that left for spares does not work, whatever ran before', () => {
    const { state, notes } = documentOf([
      cameIn(),
      ranWell,
      { kind: 'left', exit: 'sell-for-spares', receivedMinor: 900 },
    ])
    const [mark] = claimsIn('Fully working', evidenceOf(state, notes, jobOf(state, notes, upright), 'UK'))
    expect(mark?.verdict).toBe('contradicted')
  })
})

/** Wordings of second-hand adverts as the trade writes them (common practice); a machine of grade A that ran well. */
describe('what a claim is said of', () => {
  const proven = evidence([...fullyCleaned, listed('A'), ranWell, { kind: 'graded', part: gone, when: 'after', grade: 'A' }]) // prettier-ignore
  const verdicts = (words: string) => claimsIn(words, proven).map(({ verdict }) => verdict)

  test.each([
    ['Strap as new.', 'Strap'],
    ['The shoulder strap is like new', 'strap'],
    ['Green upright with a holder as new', 'holder'],
    ['Strap: as new', 'Strap'],
    ['Leaflet, immaculate. Runs well.', 'Leaflet'],
    ['As new strap', 'strap'],
    ['Comes in its pristine box', 'box'],
    ['Strap for the trolley as new', 'Strap'],
    ['The remote works', 'remote'],
    ['Dock: fully working', 'Dock'],
    ['Carry case cleaned', 'case'],
    ['Charger tested', 'Charger'],
    ['Qwertle as new', 'Qwertle'],
  ])('“%s”: nothing noted can be held against it, and it is shown', (words, stranger) => {
    const mark = claimsIn(words, proven).find(({ verdict }) => verdict !== 'supported')
    expect(mark?.verdict).toBe('not-placed')
    expect(mark?.why).toContain(`“${stranger}”`)
  })

  test.each([
    'As new',
    'It is as new.',
    'The machine is like new',
    'Upright as new',
    'Looks almost as new',
    'Mint condition',
    'Really lovely, immaculate example',
    'Green machine, as new',
    'In as new condition throughout',
    'Condition: as new',
    'Fully working',
    'Everything works',
    'Sold as fully working',
    'Cleaned, tested and like new',
    'As new, in its box',
    'Deep cleaned and working well',
  ])('“%s” is of the whole, and borne out', (words) => {
    expect(verdicts(words).length).toBeGreaterThan(0)
    expect(verdicts(words).every((verdict) => verdict === 'supported'), JSON.stringify(claimsIn(words, proven))).toBe(true) // prettier-ignore
  })

  test('a word is known where the machine goes by it', () => {
    const { state, notes } = documentOf([cameIn({ model: 'Qwertle 200' }), listed('A')])
    const named = evidenceOf(state, notes, jobOf(state, notes, upright), 'UK')
    expect(claimsIn('Qwertle as new', named).map(({ verdict }) => verdict)).toEqual(['supported'])
  })
})
