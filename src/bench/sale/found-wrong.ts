import { inSentence } from '../../base/in-sentence.ts'
import { functionFailures } from '../../facts/function-failures.ts'
import { capital } from '../../machine/air/air-text.ts'
import type { FunctionCheck } from '../../machine/functions/function-check.ts'
import { stateOf } from '../../machine/functions/function-state.ts'
import { functionById, functionsOf } from '../../machine/functions/functions-of.ts'
import { isGraded } from '../../machine/functions/made-check.ts'
import type { Job, JobEvent } from '../../machine/job.ts'
import { passesGate, repairRenews } from '../../machine/running.ts'
import type { Noted } from './noted.ts'

/** Something found not as it should be. `says`: a whole sentence for a buyer. */
export type FoundWrong = {
  readonly note: string
  readonly name: string
  readonly says: string
  readonly text: string
  /** Whether it was mended since, and not tried again. */
  readonly isMended: boolean
}

type Events = Job['events']
type Told = Pick<FoundWrong, 'note' | 'name' | 'says'> & { readonly renewedBy: (repair: string) => boolean }

/**
 * Functions tried or read and bad, and other looks that failed, each by its last result. What a later repair takes away is told
 * apart; what a good run of the whole machine after a repair has shown to be right is left out.
 */
export const foundWrong = (
  job: Job,
  tried: readonly Noted<'tried'>[],
  goodRun: string | null,
): readonly FoundWrong[] => {
  const { events } = job
  const place = new Map(events.map(({ note }, i) => [note, i]))
  const at = (note: string): number => place.get(note) ?? -1
  const isProved = (note: string): boolean =>
    goodRun !== null && repairsAfter(events, at(note)).some((repair) => at(goodRun) > at(repair.note))
  return [...badFunctions(job), ...unknownFunctions(job, tried), ...badLooks(job)]
    .filter(({ note }) => !isProved(note))
    .map(({ note, name, says, renewedBy }) => ({
      note,
      name,
      says,
      text: tried.find((one) => one.note === note)?.text ?? '',
      isMended: repairsAfter(events, at(note)).some(({ repair }) => renewedBy(repair)),
    }))
}

type Repaired = Extract<JobEvent, { kind: 'repaired' }>
const repairsAfter = (events: Events, place: number): readonly Repaired[] =>
  events.slice(place + 1).flatMap((event) => (event.kind === 'repaired' ? [event] : []))

const badFunctions = (job: Job): readonly Told[] =>
  functionsOf(job.blueprint).functions.flatMap((one) => {
    const state = stateOf(job, one)
    if (state.kind === 'to-do') return []
    const { result, note } = state.kind === 'told' ? state.told : state.was
    if (result !== 'bad' || note === null) return []
    return [{ note, name: one.name, says: sentenceOf(job.events, one, note), renewedBy: renewerOf(job, one) }]
  })

/** What was shown, as one says it; what the bench has no words for is told by its name. */
const sentenceOf = (events: Events, { id, name, check }: FunctionCheck, note: string): string => {
  const event = events.find((one) => one.note === note)
  const outcome = event?.kind === 'reading' && event.result.kind === 'grade' ? event.result.outcome : null
  const words = functionFailures[id]
  const shown = check.outcomes.find((one) => one.id === outcome)?.name
  if (words === undefined) return `${name}: ${shown === undefined ? 'not as it should be' : inSentence(shown)}.`
  return words.shown?.[outcome ?? ''] ?? words.bad
}

const renewerOf =
  ({ blueprint }: Job, { parts, touches, check }: FunctionCheck) =>
  (id: string): boolean => {
    const part = blueprint.repairs.find((repair) => repair.id === id)?.part ?? ''
    return parts.some((one) => one.id === part) || touches.includes(part) || repairRenews(blueprint, id, check)
  }

/** Trials under another blueprint, of functions that this one does not have. */
const unknownFunctions = ({ blueprint }: Job, tried: readonly Noted<'tried'>[]): readonly Told[] =>
  tried
    .filter((one) => one.result === 'bad' && functionById(blueprint, one.function) === undefined)
    .map((one) => ({
      note: one.note,
      name: plainName(one.function),
      says: `${capital(plainName(one.function))}: not as it should be.`,
      renewedBy: () => false,
    }))

const plainName = (id: string): string => id.replace(/^control\./, '').replaceAll('-', ' ')

/** Looks and gates of the blueprint that no function stands for. */
const badLooks = ({ blueprint, events }: Job): readonly Told[] => {
  const functions = new Set(functionsOf(blueprint).functions.map(({ check }) => check.id))
  return blueprint.checks
    .filter((check) => !functions.has(check.id) && (isGraded(check) || check.beforeRunning))
    .flatMap((check) => {
      const last = events.findLast(
        (event) => event.kind === 'reading' && event.check === check.id && event.result.kind !== 'cannot-tell',
      )
      if (last?.kind !== 'reading' || passesGate(check, last.result) !== false) return []
      const outcomes = isGraded(check) ? check.outcomes : []
      const { result } = last
      const shown = result.kind === 'grade' ? outcomes.find(({ id }) => id === result.outcome)?.name : undefined
      return [
        {
          note: last.note,
          name: check.name,
          says: `${check.name}: ${shown === undefined ? 'did not pass' : inSentence(shown)}.`,
          renewedBy: (repair: string) => repairRenews(blueprint, repair, check),
        },
      ]
    })
}
