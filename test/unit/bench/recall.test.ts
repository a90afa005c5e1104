import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkNote } from '../../../src/bench/append.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { noteLines } from '../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { safetyRecordOf } from '../../../src/bench/safety-record.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { regions } from '../../../src/facts/regions.ts'
import { localRulesDecide, secondHandDuties } from '../../../src/facts/second-hand-duties.ts'
import { proofView } from '../../../src/machine/index.ts'
import { proofVerdict } from '../../../src/machine/proof/proof-case.ts'
import { added, content, log } from '../../support/notes.ts'
import { gatesPassedOf } from '../../support/pass-gates.ts'

const upright = blueprintById('commercial-upright')!
const rules: NoteContentInput = { kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' } }
const look = (step: 'visual' | 'polarity' | 'run' | 'recall', good = true, text = ''): NoteContentInput => ({
  kind: 'proof',
  finding: { kind: 'look', step, good, text },
})
const insulated: NoteContentInput = {
  kind: 'proof',
  finding: { kind: 'reading', quantity: 'insulation', value: 50e6, instrument: 'insulation-tester', testVoltageV: 500 },
}
const round = [look('visual'), insulated, look('polarity'), look('run')]
const proved = [...gatesPassedOf(upright), rules, ...round]
const door = { cover: 'bag-door', minutes: 1 } as const
const opened: readonly NoteContentInput[] = [
  { kind: 'opened', ...door },
  { kind: 'closed', ...door },
]

const kept = (notes: readonly NoteContentInput[]) =>
  log([added({ blueprint: upright.id, plate: upright.plate }), ...notes])
const jobAfter = (notes: readonly NoteContentInput[]) => {
  const all = kept(notes)
  return jobOf(foldNotes(all), all, upright)
}
const viewAfter = (notes: readonly NoteContentInput[]) => proofView(jobAfter(notes), 'UK')

describe('the recall check', () => {
  it('not done, stops nothing and is said', () => {
    const view = viewAfter(proved)
    expect(view.verdict.kind).toBe('fit')
    expect(view.recall).toMatchObject({ state: 'not-done', note: null })
    // GOV.UK: recalls of consumer products are kept by the Office for Product Safety and Standards (from memory).
    expect(view.recall.sentence).toMatch(
      /not done\. Look the plate up with the Office for Product Safety and Standards/,
    )
  })

  it('done, leaves every check as it was, and is no check of its own', () => {
    const view = viewAfter([...proved, look('recall', true, 'GOV.UK, 3 March')])
    const before = viewAfter(proved)
    expect(view.verdict).toEqual(before.verdict)
    expect(view.steps).toEqual(before.steps)
    expect(view.recall).toMatchObject({ state: 'in-no-list', text: 'GOV.UK, 3 March' })
    expect(view.recall.sentence).toContain('GOV.UK, 3 March')
  })

  it('proves nothing by itself', () => {
    expect(viewAfter([...gatesPassedOf(upright), rules, look('recall')]).verdict.kind).toBe('not-proven')
  })

  // 15 U.S.C. 2068(a)(2)(B) and (C): unlawful to sell what is subject to a recall; the same is common practice elsewhere.
  it('in a list, is not fit whatever was proved, and asks for a reason at the sale', () => {
    const notes = [...proved, look('recall', false)]
    expect(viewAfter(notes).verdict).toMatchObject({ kind: 'not-fit', title: 'Not fit to sell' })
    expect(viewAfter(notes).verdict.sentence).toMatch(/^Found in a recall list/)
    expect(proofVerdict(jobAfter(notes))?.kind).toBe('not-fit')
  })

  it('counts as it was looked up last', () => {
    expect(viewAfter([...proved, look('recall', false), look('recall')]).verdict.kind).toBe('fit')
    expect(viewAfter([...proved, look('recall'), look('recall', false)]).verdict.kind).toBe('not-fit')
  })

  it('stays when a cover is opened, and is not listed among what that makes void', () => {
    const view = viewAfter([...proved, look('recall'), ...opened])
    expect(view.recall.state).toBe('in-no-list')
    expect(view.voided?.findings).toHaveLength(4)
  })

  it('can be noted with a cover off, and reads in the log as what it is', () => {
    const half = [...gatesPassedOf(upright), rules, opened[0]]
    const next = checkNote(kept(half), content(look('recall')), upright)
    expect(next.kind === 'ok' ? [] : next.problems.map(problemText)).toEqual([])
    const visual = checkNote(kept(half), content(look('visual')), upright)
    expect(visual.kind).toBe('refused')
    const lines = noteLines(kept([...proved, look('recall', false, 'plate AB1')]), upright)
    expect(lines.map(({ text }) => text).join('\n')).toMatch(/recall check: in a recall list, plate AB1/i)
  })
})

describe('a failed finding', () => {
  const failed = [...gatesPassedOf(upright), rules, look('visual'), insulated, look('polarity', false)]

  it('weighs on beside a good one, until it is struck out or the machine was worked on', () => {
    expect(viewAfter([...failed, look('polarity')]).verdict.kind).toBe('not-fit')
  })

  it('weighs no longer once a repair was noted and the checks were made again', () => {
    const repair = upright.repairs.find(({ part }) => part === 'flex')!
    const mended: NoteContentInput = { kind: 'repaired', repair: repair.id, option: 'refit', costMinor: 0, minutes: 5 }
    const view = viewAfter([...failed, mended, look('visual'), insulated, look('polarity')])
    const polarity = view.steps.find(({ id }) => id === 'polarity')!
    expect(polarity.state).toBe('passed')
    expect(polarity.findings).toHaveLength(1)
    expect(view.voided?.findings.filter(({ kind }) => kind === 'fail').map(({ step }) => step)).toEqual(['polarity'])
    expect(view.verdict.kind).not.toBe('not-fit')
  })
})

describe('duties of who sells second-hand', () => {
  it.each(regions)('of %s: a law by name, two sentences with their end, and an official list', (region) => {
    const { law, sentences, sources, recall } = secondHandDuties[region]
    expect(law).not.toBe('')
    for (const one of sentences) expect(one).toMatch(/^[A-Z].*\.$/)
    expect(sources.length).toBeGreaterThan(0)
    expect(recall.authority).toMatch(/^[A-Z]/)
  })

  // The laws as their own official pages cite them: legislation.gov.uk, EUR-Lex, WorkSafe New Zealand, CPSC, Health Canada (retrieved).
  it.each([
    ['UK', /General Product Safety Regulations 2005/],
    ['EU', /Regulation \(EU\) 2023\/988/],
    ['NZ', /Electricity \(Safety\) Regulations 2010, regulation 80/],
    ['US', /Consumer Product Safety Act, section 19/],
    ['CA', /Canada Consumer Product Safety Act/],
  ] as const)('%s by its law', (region, law) => {
    expect(secondHandDuties[region].law).toMatch(law)
  })

  it('go by the rules noted, and stand on the record with the recall check', () => {
    const notes = kept([...proved, look('recall', true, 'GOV.UK')])
    const document = { state: foldNotes(notes), notes, lines: noteLines(notes, upright) }
    const job = jobOf(document.state, notes, upright)
    const record = safetyRecordOf(document, job, { region: 'US', checkedBy: '' })
    expect(record.selling[0]).toContain(secondHandDuties.UK.law)
    expect(record.selling.at(-1)).toBe(localRulesDecide)
    expect(record.recall).toMatch(/done, the plate was found in no list \(GOV\.UK\)/)
    expect(record.sources.join()).toContain('General Product Safety Regulations 2005, regulation 2 (retrieved)')
  })
})
