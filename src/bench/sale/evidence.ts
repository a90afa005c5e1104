import type { Blueprint } from '../../blueprint/schema.ts'
import type { Grade } from '../../facts/asking.ts'
import type { Complaint } from '../../facts/complaints.ts'
import type { Region } from '../../facts/regions.ts'
import type { SaleShot } from '../../facts/sale-shots.ts'
import type { Job } from '../../machine/job.ts'
import type { Plate } from '../../machine/plate.ts'
import { proofView } from '../../machine/proof/make-proof-view.ts'
import type { ProofView } from '../../machine/proof/proof-view.ts'
import { readMarks } from '../../machine/stamps/marks.ts'
import type { MachineState } from '../contract.ts'
import { standing } from '../fold.ts'
import { functionName } from '../functions/function-name.ts'
import { dayOf } from '../logs/calendar-day.ts'
import type { Note, NoteContent } from '../note.ts'
import { stripView, type LeftOver } from '../stripping/strip-view.ts'
import { foundWrong, type FoundWrong } from './found-wrong.ts'
import type { Noted, NotedWords } from './noted.ts'
import { cleanOf, type Clean } from './whole-clean.ts'

/** What the notes of a machine have to say for or against what is written of it. */
export type Evidence = {
  readonly state: MachineState
  readonly blueprint: Blueprint
  readonly job: Job
  readonly proof: ProofView
  /** Notes that the proof rests on. */
  readonly proofNotes: readonly string[]
  /** The run that shows it working: since the last repair. */
  readonly run: { readonly kind: 'good' | 'bad' | 'not-made'; readonly notes: readonly string[] }
  readonly repaired: readonly Noted<'repaired'>[]
  readonly cleaned: readonly Noted<'cleaned'>[]
  /** The last trial of each function. */
  readonly tried: readonly (Noted<'tried'> & { readonly name: string })[]
  /** What was found not as it should be. */
  readonly wrong: readonly FoundWrong[]
  /** Fixings left over when pieces went back. */
  readonly leftOver: readonly LeftOver[]
  /** Catches and their like that were not closed then. */
  readonly notClosed: readonly LeftOver[]
  /** What is noted of a clean of the whole machine. */
  readonly clean: Clean
  /** The plate as it was entered: another than its kind's, or the same. */
  readonly plate: 'own' | 'as-its-kind'
  /** The last grade of each part, after cleaning where there is one. */
  readonly graded: readonly Noted<'graded'>[]
  readonly gauge: readonly (Noted<'gauge'> & { readonly sinceRepair: boolean })[]
  /** What was seen wrong since the last repair or cleaning. */
  readonly seenSince: readonly { readonly note: string; readonly complaints: readonly Complaint[] }[]
  /** Confirmed faults that no repair has taken away, by fault id. */
  readonly openFaults: readonly { readonly note: string; readonly fault: string }[]
  readonly shots: ReadonlyMap<SaleShot, string>
  readonly years: {
    readonly from: number
    readonly to: number
    readonly notes: readonly string[]
    readonly bySaying: boolean
  } | null
  readonly looks: { readonly grade: Grade; readonly note: string } | null
  /** Own words of notes; what a seller claimed is none of them. */
  readonly words: readonly NotedWords[]
  readonly opened: readonly string[]
  readonly addedNote: string
  /** Notes that tell of its age and use. */
  readonly historyNotes: readonly string[]
}

/** What the standing notes say. @param region whose rules prove it where no note says so */
export const evidenceOf = (state: MachineState, notes: readonly Note[], job: Job, region: Region): Evidence => {
  const own = standing(notes)
  const of = <Kind extends NoteContent['kind']>(kind: Kind): readonly Noted<Kind>[] =>
    own.flatMap(({ id, content }) =>
      content.kind === kind ? [{ ...(content as Extract<NoteContent, { kind: Kind }>), note: id }] : [],
    )
  const { blueprint } = job
  const repaired = of('repaired')
  const place = new Map(own.map(({ id }, i) => [id, i]))
  const at = (note: string | undefined): number => (note === undefined ? -1 : (place.get(note) ?? -1))
  const lastRepair = at(repaired.at(-1)?.note)
  const lastWork = Math.max(lastRepair, at(of('cleaned').at(-1)?.note))
  const proof = proofView(job, region)
  const run = runOf(blueprint, own.slice(lastRepair + 1), proof)
  const tried = lastOf(of('tried'), (one) => one.function)
  const { leftOver, notClosed } = stripView(notes, blueprint)
  const words = own.flatMap(({ id, content }) =>
    hasWords(content) && content.text !== '' ? [{ note: id, text: content.text ?? '' }] : [],
  )
  return {
    state,
    blueprint,
    job,
    proof,
    proofNotes: [...new Set(proof.steps.flatMap(({ findings }) => findings.flatMap(({ note }) => note ?? [])))],
    run,
    repaired,
    cleaned: of('cleaned'),
    tried: tried.map((one) => ({ ...one, name: functionName(one.function, blueprint) })),
    wrong: foundWrong(job, tried, run.kind === 'good' ? (run.notes[0] ?? null) : null),
    leftOver,
    notClosed,
    clean: cleanOf(blueprint, state, of('cleaned'), words),
    plate: isSamePlate(state.plate, blueprint.plate) ? 'as-its-kind' : 'own',
    graded: lastOf(of('graded'), ({ part }) => part),
    gauge: of('gauge').map((one) => ({ ...one, sinceRepair: at(one.note) > lastRepair })),
    seenSince: of('seen').filter(({ note }) => at(note) > lastWork),
    openFaults: state.confirmed.filter(
      ({ note, fault }) =>
        !repaired.some((one) => at(one.note) > at(note) && removes(blueprint, one.repair).includes(fault)),
    ),
    shots: new Map(of('photo').flatMap(({ shot, note }) => (shot === undefined ? [] : [[shot, note] as const]))),
    years: yearsOf(state, own),
    looks: looksOf(state),
    words,
    opened: of('opened').map(({ note }) => note),
    addedNote: own.find(({ content }) => content.kind === 'added')?.id ?? '',
    historyNotes: of('history').flatMap(({ note, ageYears, wear }) => ((ageYears ?? wear) === undefined ? [] : [note])),
  }
}

/** The weight stands on few plates and is left aside. */
const isSamePlate = (one: Plate, other: Plate): boolean =>
  one.voltageV === other.voltageV &&
  one.frequencyHz === other.frequencyHz &&
  one.powerW === other.powerW &&
  one.protectionClass === other.protectionClass

const removes = (blueprint: Blueprint, repair: string): readonly string[] =>
  blueprint.repairs.find(({ id }) => id === repair)?.removes ?? []

/** Notes whose text is one's own word of what was seen or done. */
const hasWords = (content: NoteContent): content is NoteContent & { readonly text: string } =>
  content.kind !== 'worded' &&
  content.kind !== 'valued' &&
  content.kind !== 'photo' &&
  'text' in content &&
  typeof content.text === 'string'

/** The last of each key, in the order in which the keys first came. */
const lastOf = <T>(all: readonly T[], key: (one: T) => string): readonly T[] => [
  ...new Map(all.map((one) => [key(one), one])).values(),
]

/** The last run that a check of the bench or the checks after repair show. */
const runOf = (blueprint: Blueprint, since: readonly Note[], proof: ProofView): Evidence['run'] => {
  const runs = since.flatMap(({ id, content }) => {
    if (content.kind === 'proof' && content.finding.kind === 'look' && content.finding.step === 'run')
      return [{ note: id, good: content.finding.good }]
    if (content.kind !== 'reading' || content.result.kind !== 'grade') return []
    const check = blueprint.checks.find((one) => one.id === content.check)
    if (check === undefined || check.kind === 'meter' || !check.provesWorking) return []
    return [{ note: id, good: content.result.outcome === check.outcomes[0]?.id }]
  })
  const last = runs.at(-1)
  if (last === undefined) return { kind: 'not-made', notes: [] }
  const failed = proof.steps.some(({ id, state }) => id === 'run' && state === 'failed')
  return { kind: last.good && !failed ? 'good' : 'bad', notes: [last.note] }
}

const yearsOf = (state: MachineState, own: readonly Note[]): Evidence['years'] => {
  const last = own.at(-1)
  if (last === undefined) return null
  const { window } = readMarks(state.marks, state.plate.powerW, dayOf(last.at))
  if (window !== null && window.enough)
    return {
      from: Number(window.from.slice(0, 4)),
      to: Number(window.to.slice(0, 4)),
      notes: state.marks.map(({ note }) => note),
      bySaying: false,
    }
  if (state.ageYears === null) return null
  const made = Math.round(Number(dayOf(state.addedAt).slice(0, 4)) - state.ageYears)
  const said = own.filter(({ content }) => content.kind === 'added' || content.kind === 'history').at(-1)
  return { from: made, to: made, notes: said === undefined ? [] : [said.id], bySaying: true }
}

/** The grade of its looks that it was last offered under. */
const looksOf = ({ listed }: MachineState): Evidence['looks'] => {
  const last = listed.at(-1)
  return last === undefined ? null : { grade: last.grade, note: last.note }
}
