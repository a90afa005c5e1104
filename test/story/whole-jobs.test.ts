import { describe, expect, it } from 'vitest'
import { adverts } from '../../src/bench/adverts/adverts.ts'
import { buyAdvert } from '../../src/bench/adverts/buy-advert.ts'
import { guessOf } from '../../src/bench/adverts/guess-of.ts'
import { cleaningTaskDone } from '../../src/bench/cleaning/task-name.ts'
import type { CommandDeps } from '../../src/bench/commands.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { openDataFile } from '../../src/bench/open-data/export-records.ts'
import { sheetPaper, type SheetPaper } from '../../src/bench/sale/sheet-paper.ts'
import { saleSheetView, type SaleSheetView } from '../../src/bench/sale/sheet-view.ts'
import { shelf } from '../../src/bench/shelf/shelf-commands.ts'
import { takeOff, takeOffSchema } from '../../src/bench/shelf/take-off.ts'
import { stripView } from '../../src/bench/stripping/strip-view.ts'
import { cleaningTaskIds, cleaningTasks } from '../../src/facts/cleaning-tasks.ts'
import { complaints } from '../../src/facts/complaints.ts'
import { buyingView } from '../../src/machine/buying/index.ts'
import { partsOfTask } from '../../src/machine/cleaning/task-parts.ts'
import { saleSheetText } from '../../src/report/sale-sheet-text.ts'
import { advertOf, termsOf } from '../support/adverts.ts'
import { BenchJob, upright } from './bench-job.ts'
import { wholeJobs } from './jobs.ts'
import { emptyBench, useCaseWriter } from './use-case-writer.ts'

describe.each(wholeJobs.map((job) => [job.name, job] as const))('%s', (_name, { tells, intake, run }) => {
  it(tells, async () => run(await BenchJob.begin(useCaseWriter(), intake)))
})

/** All that a clean machine takes, by the table of the trade, where it has such a part. */
const wholeClean = cleaningTaskIds.filter((id) => {
  const { adds } = cleaningTasks[id]
  return (
    adds.kind === 'improvement' &&
    adds.improvement === 'cleaned' &&
    partsOfTask(cleaningTasks[id], upright, []) !== null
  )
})

/** What fetching it took, in pence. */
const travelMinor = 240

/** A job that begins with an advert, weighed and bought. */
const boughtFrom = async (deps: CommandDeps, paidMinor: number): Promise<BenchJob> => {
  const advert = advertOf(upright, { words: 'just stopped, dead', complaints: undefined, askingMinor: 1000 })
  const guess = guessOf(buyingView(advert, termsOf(upright, { effort: 0.1 })))
  const weighed = await adverts.begin(deps, { kind: 'weighed', name: 'Green upright', advert, guess })
  if (weighed.kind !== 'done') throw new Error(weighed.kind)
  const bought = await buyAdvert(deps, weighed.document.state.id, {
    version: 1,
    paidMinor,
    source: 'classified',
    travelMinor,
  })
  if (bought.kind !== 'done') throw new Error(bought.kind)
  return BenchJob.begin({ ...useCaseWriter(deps), begin: () => Promise.resolve(bought.machine) }, {})
}

const sheetOf = ({ document, job }: BenchJob): SaleSheetView =>
  saleSheetView(document, { job, region: 'UK', asking: null })

const linesOf = (paper: SheetPaper, name: string): string =>
  paper.sections.find((section) => section.name === name)?.lines.join('\n') ?? ''

const partName = (id: string): string => upright.parts.find((part) => part.id === id)!.name
const faultName = (id: string): string => upright.faults.find((fault) => fault.id === id)!.name

/** The one row of the bench's open data, by column. */
const openRow = async (deps: CommandDeps): Promise<Readonly<Record<string, unknown>>> => {
  const { header, stretches } = await openDataFile(deps, { provider: 'A bench' })
  const rows: (readonly unknown[])[] = []
  for await (const stretch of stretches) rows.push(...stretch)
  expect(rows).toHaveLength(1)
  return Object.fromEntries(header.map((column, at) => [column, rows[0][at]]))
}

const look = (step: 'visual' | 'polarity' | 'run'): NoteContentInput => ({
  kind: 'proof',
  finding: { kind: 'look', step, good: true },
})

const measured = (
  quantity: 'insulation' | 'touch-current',
  value: number,
  instrument: 'insulation-tester' | 'leakage-tester',
): NoteContentInput => ({
  kind: 'proof',
  finding: {
    kind: 'reading',
    quantity,
    part: 'motor housing',
    value,
    instrument,
    ...(quantity === 'insulation' ? { testVoltageV: 500 } : {}),
  },
})

/** What a sound machine of class II with an electronic control shows. */
const proved: readonly NoteContentInput[] = [
  { kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' } },
  look('visual'),
  measured('insulation', 120e6, 'insulation-tester'),
  measured('touch-current', 5e-5, 'leakage-tester'),
  look('polarity'),
  look('run'),
]

describe('from an advert to a sold machine with its sale sheet', () => {
  it('says of it what the notes say, claims what they bear out, and leaves a record of open data', async () => {
    const deps = emptyBench()
    const job = await boughtFrom(deps, 800)
    const write = async (...notes: readonly NoteContentInput[]): Promise<void> => {
      for (const note of notes) await job.note(note)
    }
    const lastNote = (): string => job.document.notes.at(-1)!.id
    expect(job.document.state.claimed.complaints).toContain('dead')

    // Found at the handle, its cover off with every screw counted.
    const screws = [{ count: 4, kind: 'TX15 plastic 3.5 × 16', place: 'pot 1' }]
    await job.open('pins-on')
    await write({ kind: 'opened', cover: 'handle-cover', minutes: 5, fixings: screws })
    await write({ kind: 'photo', photo: 'a'.repeat(64), about: { kind: 'note', note: lastNote() } })
    await job.open('line-pin-to-entry')
    await write({ kind: 'confirmed', fault: 'flex-entry-line-open' })
    expect(sheetOf(job).standing).toBe('not-shown')
    await job.repair('flex-shorten-entry', 'refit', 20, 0)
    await write({ kind: 'closed', cover: 'handle-cover', minutes: 4, fixings: screws })
    expect(stripView(job.document.notes, upright).leftOver).toEqual([])

    await write(
      { kind: 'graded', part: 'casing', when: 'before', grade: 'C' },
      { kind: 'cleaned', task: 'wash-casing', minutes: 15, costMinor: 30 },
      ...wholeClean.map((task): NoteContentInput => ({ kind: 'cleaned', task })),
      { kind: 'cleaned', task: 'wash-filter', minutes: 5, dryHours: 24 },
    )
    const wet = lastNote()
    expect(job.document.state.drying.map(({ note }) => note)).toEqual([wet])
    await write(
      { kind: 'dried', note: wet },
      { kind: 'cleaned', task: 'new-bag', minutes: 1, costMinor: 100 },
      { kind: 'graded', part: 'casing', when: 'after', grade: 'B' },
    )
    await job.passGates()
    await job.grade('run-first', 'runs')
    await job.grade('run-full', 'works')
    await write(
      { kind: 'tried', function: 'tools', result: 'good' },
      { kind: 'photo', photo: 'b'.repeat(64), when: 'after', shot: 'tools' },
      ...proved,
      { kind: 'listed', priceMinor: 8500, where: '', grade: 'B' },
    )

    const paper = sheetPaper(sheetOf(job))
    expect(paper.title).toMatch(/working, repaired, cleaned, safety checks passed$/)
    expect(paper.price).toBe('£85.00')
    expect(linesOf(paper, 'What was wrong').toLowerCase()).toContain(faultName('flex-entry-line-open').toLowerCase())
    expect(linesOf(paper, 'What was wrong').toLowerCase()).toContain(complaints.dead.toLowerCase())
    const repair = upright.repairs.find(({ id }) => id === 'flex-shorten-entry')!
    expect(linesOf(paper, 'What was done')).toContain(repair.name)
    for (const task of ['wash-casing', 'wash-filter', 'new-bag'])
      expect(linesOf(paper, 'What was done').toLowerCase()).toContain(cleaningTaskDone(task).toLowerCase())
    for (const figure of ['120 MΩ', '0.05 mA', 'Run after the last repair: it ran as it should.'])
      expect(linesOf(paper, 'What was tested')).toContain(figure)
    expect(linesOf(paper, 'What comes with it')).toContain('laid out on a photograph')
    expect(paper.condition).toHaveLength(1)
    expect(paper.condition[0]).toMatch(new RegExp(`^${partName('casing')}: B, `))
    expect(paper.photos.map(({ photo }) => photo)).toEqual(['b'.repeat(64)])
    expect(paper.daggerWords).toBe('')

    // Own words: those that a note bears out go out as they are, the one that none does bears a dagger.
    const bold = 'Safety tested and working, cleaned, with a new bag. New belt.'
    await write({ kind: 'worded', section: 'opening', text: bold })
    const claims = sheetOf(job).sections.find(({ section }) => section === 'opening')!.claims
    expect(claims.filter(({ verdict }) => verdict !== 'supported').map(({ words }) => words)).toEqual(['New belt'])
    expect(linesOf(sheetPaper(sheetOf(job)), 'What it is')).toBe(bold.replace('New belt', 'New belt †'))
    await write({ kind: 'worded', section: 'opening', text: bold.replace(' New belt.', '') })
    expect(sheetOf(job).unsupported).toBe(0)

    const { state } = await job.note({ kind: 'left', exit: 'sell-working', receivedMinor: 8200, feeMinor: 500 })
    expect(state.left).toMatchObject({ exit: 'sell-working', profitMinor: 8200 - 500 - 800 - travelMinor - 30 - 100 })
    const text = saleSheetText(sheetPaper(sheetOf(job)))
    for (const words of ['Safety tested and working', '120 MΩ', repair.name, 'Its safety record comes with it'])
      expect(text).toContain(words)
    expect(text).not.toContain('†')

    const row = await openRow(deps)
    // Open Repair Data Standard 0.3 (retrieved): a repaired product is “Fixed”; category 34 is “Vacuum”; no barrier unless end of life.
    expect(row).toMatchObject({
      id: state.id,
      data_provider: 'A bench',
      country: 'GBR',
      product_category: 'Vacuum',
      product_category_id: 34,
      repair_status: 'Fixed',
      repair_barrier_if_end_of_life: null,
      event_date: state.left!.at.slice(0, 10),
    })
    const problem = String(row['problem']).toLowerCase()
    for (const words of ['just stopped', faultName('flex-entry-line-open'), repair.name])
      expect(problem).toContain(words.toLowerCase())
  })
})

describe('from an advert to parts on the shelf', () => {
  it('lists the rest as what it is, shares the cost out to the penny, and is end of life in open data', async () => {
    const deps = emptyBench()
    const job = await boughtFrom(deps, 901)
    await job.off('bag-door', 'back-cover')
    await job.note({ kind: 'confirmed', fault: 'armature-shorted', text: 'varnish smell, black bars' })
    await job.note({
      kind: 'worded',
      section: 'closing',
      text: 'A motor that works would bring it back. Fully working.',
    })
    const { id, version } = job.document.state
    const taken = ['hose', 'flex', 'pre-motor-filter']
    const asked = takeOffSchema.parse({
      version,
      taken: taken.map((part) => ({ part })),
      breaks: { receivedMinor: 150 },
    })
    const outcome = await takeOff(deps, id, asked)
    if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome.problems))
    const { document } = outcome
    const left = BenchJob.begin({ ...useCaseWriter(deps), begin: () => Promise.resolve(document) }, {})
    const view = sheetOf(await left)
    const paper = sheetPaper(view)
    expect(view.standing).toBe('spares')
    expect(paper.title).toMatch(/for spares or repair$/)
    expect(linesOf(paper, 'What was wrong')).toContain('Not mended')
    for (const part of taken)
      expect(linesOf(paper, 'What comes with it').toLowerCase()).toContain(partName(part).toLowerCase())
    expect(linesOf(paper, 'Last words')).toContain('Fully working †')
    expect(paper.daggerWords).not.toBe('')

    const { notes, state } = document
    const shelfParts = notes.flatMap(({ content }) => (content.kind === 'took-off' ? [content.shelfPart] : []))
    const parts = await Promise.all(shelfParts.map(async (one) => (await shelf.document(deps, one))!.state))
    expect(parts.map(({ name }) => name)).toEqual(taken.map(partName))
    // What came in for the rest is the machine's; what it cost went with the parts.
    expect(parts.reduce((sum, { costMinor }) => sum + costMinor, 0)).toBe(901 + travelMinor)
    expect(state.left).toMatchObject({ exit: 'break-for-parts', receivedMinor: 150, profitMinor: 150 })

    const row = await openRow(deps)
    expect(row).toMatchObject({ repair_status: 'End of life', event_date: state.left!.at.slice(0, 10) })
    expect(String(row['problem']).toLowerCase()).toContain(faultName('armature-shorted').toLowerCase())
    expect(String(row['problem'])).not.toContain('Done:')
  })
})
