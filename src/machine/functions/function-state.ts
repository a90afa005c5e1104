import { inSentence } from '../../base/in-sentence.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Job, JobEvent } from '../job.ts'
import { repairRenews } from '../running.ts'
import type { FunctionCheck } from './function-check.ts'
import { mainPart } from './tried-evidence.ts'
import { triedName, type TriedResult } from './tried-result.ts'

/** What trying a function told; `note` is null where the part was missing from the beginning. */
export type Told = { readonly result: TriedResult; readonly text: string; readonly note: string | null }

/** How a function stands: not tried, told, or told before later work that may have changed it. */
export type FunctionState =
  | { readonly kind: 'to-do' }
  | { readonly kind: 'told'; readonly told: Told }
  | { readonly kind: 'again'; readonly was: Told; readonly why: string }

/** How a function stands after the events of a job: its last result that told something, unless work came after it. */
export const stateOf = (job: Pick<Job, 'blueprint' | 'events' | 'missing'>, one: FunctionCheck): FunctionState => {
  const missing = mainPart(one)
  if (missing !== null && job.missing.includes(missing.id)) return { kind: 'told', told: notThere(job.events, one) }
  let state: FunctionState = { kind: 'to-do' }
  for (const event of job.events) state = next(job.blueprint, one, state, event)
  return state
}

const notThere = (events: readonly JobEvent[], one: FunctionCheck): Told => {
  const note = events.findLast(
    (event) => event.kind === 'tried' && event.function === one.id && event.result === 'not-there',
  )
  return { result: 'not-there', text: triedName['not-there'], note: note?.note ?? null }
}

const next = (blueprint: Blueprint, one: FunctionCheck, state: FunctionState, event: JobEvent): FunctionState => {
  const told = toldBy(one, event)
  if (told !== null) return told.result === 'cannot-tell' && state.kind === 'told' ? state : { kind: 'told', told }
  if (state.kind !== 'told') return state
  const why = workedOn(blueprint, one, event)
  return why === null ? state : { kind: 'again', was: state.told, why }
}

/** What an event tells of a function: a trial of it, or a reading of the check that it is. */
const toldBy = (one: FunctionCheck, event: JobEvent): Told | null => {
  if (event.kind === 'tried' && event.function === one.id)
    return { result: event.result, text: triedName[event.result], note: event.note }
  if (event.kind !== 'reading' || !one.isReading || event.check !== one.check.id) return null
  if (event.result.kind === 'cannot-tell')
    return { result: 'cannot-tell', text: triedName['cannot-tell'], note: event.note }
  if (event.result.kind !== 'grade') return null
  const { outcome } = event.result
  const place = one.check.outcomes.findIndex(({ id }) => id === outcome)
  return place < 0
    ? null
    : { result: place === 0 ? 'good' : 'bad', text: one.check.outcomes[place]?.name ?? outcome, note: event.note }
}

/** Why an event makes a result out of date, or null. */
const workedOn = (blueprint: Blueprint, one: FunctionCheck, event: JobEvent): string | null => {
  if (event.kind === 'repaired') return repairedSince(blueprint, one, event.repair)
  if (event.kind === 'opened') return openedSince(blueprint, one, event.cover)
  if (event.kind !== 'put-in' || !isOfIt(one, event.part)) return null
  return `${partName(blueprint, event.part)} was out of the machine since`
}

const repairedSince = (blueprint: Blueprint, one: FunctionCheck, id: string): string | null => {
  const repair = blueprint.repairs.find((each) => each.id === id)
  if (repair === undefined) return null
  return isOfIt(one, repair.part) || repairRenews(blueprint, id, one.check)
    ? `Since then: ${inSentence(repair.name)}`
    : null
}

/** Opening a cover stands against what is behind it, and against the run of the whole machine whatever was opened. */
const openedSince = ({ covers, parts }: Blueprint, one: FunctionCheck, id: string): string | null => {
  const isBehind = parts.some((part) => part.behind === id && one.parts.some((each) => each.id === part.id))
  if (!isBehind && !one.check.provesWorking) return null
  return `The ${inSentence(covers.find((cover) => cover.id === id)?.name ?? id)} was off since`
}

const isOfIt = ({ parts, touches }: FunctionCheck, part: string): boolean =>
  parts.some(({ id }) => id === part) || touches.includes(part)

const partName = ({ parts }: Blueprint, id: string): string => parts.find((part) => part.id === id)?.name ?? id
