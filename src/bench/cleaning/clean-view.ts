import type { Grade } from '../../facts/asking.ts'
import { driesAfter } from '../../facts/cleaning-tasks.ts'
import type { AskingView } from '../../machine/asking.ts'
import { cleaningPlan, type CleaningPlan } from '../../machine/cleaning/cleaning-plan.ts'
import { provesWorking } from '../../machine/functions/made-check.ts'
import type { Job } from '../../machine/job.ts'
import { looksOfWhole, type WholeLooks } from '../../machine/whole-looks.ts'
import type { Drying, MachineState } from '../contract.ts'
import { standing } from '../fold.ts'
import type { Note } from '../note.ts'
import { dryingCalendar } from './drying-calendar.ts'
import { cleaningTaskName } from './task-name.ts'

/** A cleaning that was noted. Money in minor units. */
export type CleanedLine = {
  readonly note: string
  readonly at: string
  readonly task: string
  readonly name: string
  readonly part: string | null
  readonly minutes: number
  readonly costMinor: number
  readonly text: string
}

/** Something washed. Moments are ISO 8601 in UTC; a page shows them in the reader's own time. */
export type DryingLine = Drying & {
  /** What dries, in words. */
  readonly name: string
  /** `due`: its time is up and nobody has felt it yet. */
  readonly state: 'drying' | 'due'
}

/** How a part looked before the cleaning and looks after it; null where nobody said. */
export type GradeLine = {
  readonly part: string
  readonly name: string
  readonly before: Grade | null
  readonly after: Grade | null
}

/** The cleaning of one machine: what is worth doing, what is done, what dries, and how it looks. */
export type CleanView = {
  readonly plan: CleaningPlan
  /** Newest first. */
  readonly done: readonly CleanedLine[]
  readonly minutes: number
  readonly costMinor: number
  /** What is ready first, first. */
  readonly drying: readonly DryingLine[]
  /** Found dry, newest first. */
  readonly dry: readonly { readonly note: string; readonly at: string; readonly name: string }[]
  readonly grades: readonly GradeLine[]
  /** What the looks that the figures go by rest on. */
  readonly looksBy: WholeLooks['by']
  /** Whether a run since the last repair shows it working. */
  readonly isShownToWork: boolean
  /** What is drying, for the calendar of a phone (RFC 5545); null where nothing is. */
  readonly calendar: string | null
}

type Given = {
  readonly state: MachineState
  readonly notes: readonly Note[]
  readonly job: Job
  /** What to ask for the machine, worked out before for whatever choices. */
  readonly asking: Pick<AskingView, 'curve' | 'stateShare' | 'choices' | 'currency'>
  /** ISO 8601. */
  readonly now: string
}

/** The cleaning of one machine at a moment. */
export const cleanView = ({ state, notes, job, asking, now }: Given): CleanView => {
  const own = standing(notes)
  const done = own.flatMap(cleanedLine)
  const lines = gradeLines(own, job)
  const looks = looksOfWhole(state.listed.at(-1)?.grade, job.condition, job.partLooks ?? [])
  const drying = dryingLines(state, job, now)
  return {
    plan: cleaningPlan({
      job,
      asking,
      grade: looks.grade,
      done: done.map(({ task, part }) => ({ task, part: part ?? undefined })),
    }),
    done: done.toReversed(),
    minutes: done.reduce((sum, { minutes }) => sum + minutes, 0),
    costMinor: done.reduce((sum, { costMinor }) => sum + costMinor, 0),
    drying,
    dry: own
      .flatMap(({ at, content }) => {
        if (content.kind !== 'dried') return []
        const washed = done.find(({ note }) => note === content.note)
        return washed === undefined ? [] : [{ note: content.note, at, name: nameOf(washed.task, washed.part, job) }]
      })
      .toReversed(),
    grades: lines,
    looksBy: looks.by,
    isShownToWork: isShownToWork(job),
    calendar: drying.length === 0 ? null : dryingCalendar(state.name, drying, now),
  }
}

const cleanedLine = ({ id, at, content }: Note): readonly CleanedLine[] => {
  if (content.kind !== 'cleaned') return []
  const { task, part = null, minutes, costMinor, text } = content
  return [{ note: id, at, task, name: cleaningTaskName(task), part, minutes, costMinor, text }]
}

const dryingLines = ({ drying }: MachineState, job: Job, now: string): readonly DryingLine[] =>
  drying
    .map((one) => ({
      ...one,
      name: nameOf(one.task, one.part, job),
      state: Date.parse(one.readyAt) <= Date.parse(now) ? ('due' as const) : ('drying' as const),
    }))
    .toSorted((a, b) => Date.parse(a.readyAt) - Date.parse(b.readyAt))

const nameOf = (task: string, part: string | null, { blueprint }: Job): string =>
  blueprint.parts.find(({ id }) => id === part)?.name ?? driesAfter(task)

/** Each part that was graded, in the order of the blueprint; the last word on it stands. */
const gradeLines = (own: readonly Note[], { blueprint }: Job): readonly GradeLine[] => {
  const graded = own.flatMap(({ content }) => (content.kind === 'graded' ? [content] : []))
  const last = (part: string, when: 'before' | 'after'): Grade | null =>
    graded.findLast((one) => one.part === part && one.when === when)?.grade ?? null
  return blueprint.parts
    .filter(({ id }) => graded.some(({ part }) => part === id))
    .map(({ id, name }) => ({ part: id, name, before: last(id, 'before'), after: last(id, 'after') }))
}

const isShownToWork = ({ events, blueprint }: Job): boolean => {
  const proving = blueprint.checks.filter(provesWorking)
  return events.reduce((works, event) => {
    if (event.kind === 'repaired' || event.kind === 'confirmed') return false
    if (event.kind !== 'reading' || event.result.kind !== 'grade') return works
    const { check, result } = event
    const proves = proving.find(({ id }) => id === check)
    return proves === undefined ? works : proves.outcomes[0]?.id === result.outcome
  }, false)
}
