import { sourceText } from '../../base/source-text.ts'
import { gradesSource, grades, improvements, type Grade } from '../../facts/asking.ts'
import { cleaningCautions } from '../../facts/cleaning-cautions.ts'
import type { CleaningTask, Drying } from '../../facts/cleaning-task.ts'
import { cleaningCostMinor, cleaningTask, cleaningTaskIds } from '../../facts/cleaning-tasks.ts'
import { improvementsFor, usuallyDone, type AskingChoices } from '../asking-choices.ts'
import { advertPrice, priceAt, type AskingView } from '../asking.ts'
import type { Job } from '../job.ts'
import { hasFlatBelt, hasWashableFilter, partsOfTask } from './task-parts.ts'

type Named = { readonly id: string; readonly name: string }

/** One thing to clean on this machine. Money in minor units of its currency. */
export type CleaningTaskView = {
  readonly id: string
  readonly name: string
  readonly how: string
  /** What it is done to; none where it is the whole machine. */
  readonly parts: readonly Named[]
  readonly minutes: number
  readonly costMinor: number
  readonly dries: Drying | null
  /** Why it is done whatever it brings; null where money decides. */
  readonly must: string | null
  /** Only where this is found; null where it is always there to do. */
  readonly when: string | null
  /** How much dearer the machine can be offered with it than without it. */
  readonly gainMinor: number
  /** The gain less materials, for each minute of own time. */
  readonly perMinuteMinor: number
  /** Whether a minute of it brings at least what a minute of own time is worth. */
  readonly isWorthIt: boolean
  /** What the gain is a share of, in words. */
  readonly adds: string
  /** Covers that are on and hide it; opening them is not in the minutes. */
  readonly behind: readonly string[]
  readonly cautions: readonly { readonly id: string; readonly text: string; readonly source: string }[]
  /** What can be done in its place. */
  readonly instead: CleaningTaskView | null
  readonly source: string
}

/** What is worth cleaning on a machine, each list without what is done. */
export type CleaningPlan = {
  /** The looks that the figures go by. */
  readonly grade: Grade
  /** What to ask for it cleaned, with bag and filters new, in these looks; rounded as in an advert. */
  readonly askMinor: number
  readonly hourMinor: number
  /** Done whatever it brings, in the order of work. */
  readonly first: readonly CleaningTaskView[]
  /** By money for each minute, most first. */
  readonly ranked: readonly CleaningTaskView[]
  /** Only where something is found. */
  readonly ifFound: readonly CleaningTaskView[]
}

/** A cleaning noted: the task, and the part where one was named. */
export type CleaningDone = { readonly task: string; readonly part?: string | undefined }

type Asked = {
  readonly job: Job
  /** What to ask for the machine, worked out before for whatever choices. */
  readonly asking: Pick<AskingView, 'curve' | 'stateShare' | 'choices' | 'currency'>
  /** How it looks now. */
  readonly grade: Grade
  readonly done: readonly CleaningDone[]
}

/**
 * What is worth cleaning, by money for each minute. What a task brings is its share of what the price to ask gains by the
 * improvement that it belongs to, or by a better grade; there is no second rule of prices. What must be done stands first.
 */
export const cleaningPlan = (asked: Asked): CleaningPlan => {
  const { job, done } = asked
  const own = cleaningTaskIds.flatMap((id) => ownTask(id, job))
  const open = own.filter((one) => !isDone(one, own, done))
  const alternatives = open.filter(({ task }) => task.insteadOf !== undefined)
  const views = open
    .filter(({ task }) => task.insteadOf === undefined)
    .map((one) => {
      const other = alternatives.find(({ task }) => task.insteadOf === one.id)
      return other === undefined ? viewOf(one, own, asked) : eitherOf(one, other, own, asked)
    })
    .filter((view) => isOffered(view, asked))
  const always = views.filter(({ when }) => when === null)
  return {
    grade: asked.grade,
    askMinor: advertPrice(priceAt(job, asked.asking, usualChoices(asked))),
    hourMinor: job.hourMinor,
    first: always.filter(({ must }) => must !== null),
    ranked: always
      .filter(({ must }) => must === null)
      .toSorted((a, b) => b.perMinuteMinor - a.perMinuteMinor || a.minutes - b.minutes),
    ifFound: views.filter(({ when }) => when !== null),
  }
}

/** Two ways to do the same; washing comes first where the kind says that the part is washable. */
const eitherOf = (one: OwnTask, other: OwnTask, own: readonly OwnTask[], asked: Asked): CleaningTaskView => {
  const [usual, wash] = [viewOf(one, own, asked), viewOf(other, own, asked)]
  return other.id === 'wash-filter' && hasWashableFilter(asked.job.blueprint)
    ? { ...wash, must: usual.must, instead: { ...usual, must: null } }
    : { ...usual, instead: wash }
}

type OwnTask = { readonly id: string; readonly task: CleaningTask; readonly parts: readonly Named[] }

const ownTask = (id: string, { blueprint, missing }: Job): readonly OwnTask[] => {
  const task = cleaningTask(id)
  const parts = task === undefined ? null : partsOfTask(task, blueprint, missing)
  return task === undefined || parts === null
    ? []
    : [{ id, task, parts: parts.map(({ id: part, name }) => ({ id: part, name })) }]
}

/** Done when noted for the whole, or for each of its parts; a task done in the place of another ends both. */
const isDone = (one: OwnTask, own: readonly OwnTask[], done: readonly CleaningDone[]): boolean => {
  const group = own.filter(({ id, task }) => id === one.id || id === one.task.insteadOf || task.insteadOf === one.id)
  return group.some(({ id, parts }) => {
    const notes = done.filter(({ task }) => task === id)
    const whole = notes.some(({ part }) => part === undefined)
    return whole || (parts.length > 0 && parts.every((each) => notes.some(({ part }) => part === each.id)))
  })
}

/** Looks that no polish lifts are no task. */
const isOffered = ({ id }: CleaningTaskView, { grade }: Asked): boolean => {
  const adds = cleaningTask(id)?.adds
  return adds?.kind !== 'grade' || adds.from.includes(grade)
}

const viewOf = (one: OwnTask, own: readonly OwnTask[], asked: Asked): CleaningTaskView => {
  const { id, task, parts } = one
  const { job, asking } = asked
  const costMinor = cleaningCostMinor(task, asking.currency)
  const gainMinor = Math.round(gainOf(one, own, asked))
  const perMinuteMinor = (gainMinor - costMinor) / task.minutes
  return {
    id,
    name: task.name,
    how: task.how,
    parts,
    minutes: task.minutes,
    costMinor,
    dries: task.dries ?? null,
    must: mustOf(task, job),
    when: task.when ?? null,
    gainMinor,
    perMinuteMinor,
    // To the penny, as both are shown.
    isWorthIt: Math.round(perMinuteMinor) >= Math.round(job.hourMinor / 60),
    adds: addsText(task, asked.grade),
    behind: coversOver(parts, job),
    cautions: task.cautions.map((caution) => {
      const { text, source } = cleaningCautions[caution]
      return { id: caution, text, source: sourceText(source) }
    }),
    instead: null,
    source: sourceText(task.source),
  }
}

const mustOf = ({ must }: CleaningTask, { blueprint }: Job): string | null =>
  must === undefined || (must.only === 'flat-belt' && !hasFlatBelt(blueprint)) ? null : must.why

/** The machine as it is sold as a rule: what is usual is done, nothing that is missing is found. */
const usualChoices = ({ job, asking, grade }: Asked): AskingChoices => {
  const possible = improvementsFor(job.blueprint)
  return { ...asking.choices, grade, found: [], done: usuallyDone.filter((id) => possible.includes(id)) }
}

const gainOf = ({ task }: OwnTask, own: readonly OwnTask[], asked: Asked): number => {
  const { adds } = task
  const usual = usualChoices(asked)
  const price = (choices: AskingChoices): number => priceAt(asked.job, asked.asking, choices)
  if (adds.kind === 'nothing') return 0
  if (adds.kind === 'grade') {
    const better = adds.from.includes(asked.grade) ? gradeAbove(asked.grade) : asked.grade
    return Math.max(0, price({ ...usual, grade: better }) - price(usual))
  }
  const { improvement, weight } = adds
  const without = usual.done.filter((id) => id !== improvement)
  const gain = price({ ...usual, done: [...without, improvement] }) - price({ ...usual, done: without })
  return (Math.max(0, gain) * weight) / weightOf(improvement, own)
}

const weightOf = (improvement: string, own: readonly OwnTask[]): number =>
  own.reduce(
    (sum, { task: { adds } }) =>
      adds.kind === 'improvement' && adds.improvement === improvement ? sum + adds.weight : sum,
    0,
  )

const gradeAbove = (grade: Grade): Grade => grades[grades.indexOf(grade) - 1] ?? grade

const addsText = ({ adds }: CleaningTask, grade: Grade): string => {
  if (adds.kind === 'nothing') return 'Nothing that a buyer pays for by itself'
  if (adds.kind === 'grade') return `Looks from ${grade} to ${gradeAbove(grade)}; ${sourceText(gradesSource)}`
  const { name, source } = improvements[adds.improvement]
  return `Its share of “${name}” (how much of it is judged); ${sourceText(source)}`
}

/** Names of the covers that are on over all its parts: where one part lies open, work can begin. */
const coversOver = (parts: readonly Named[], { blueprint, off }: Job): readonly string[] => {
  const over = parts.map(({ id }) => blueprint.parts.find((part) => part.id === id)?.behind)
  if (over.some((cover) => cover === undefined || off.includes(cover))) return []
  return [...new Set(over)].map((cover) => blueprint.covers.find(({ id }) => id === cover)?.name ?? cover ?? '')
}
