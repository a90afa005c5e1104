import { recallCheckId, recallCheckTitle, recallHow } from '../../facts/recall-check.ts'
import { secondHandDuties } from '../../facts/second-hand-duties.ts'
import type { Region } from '../../facts/regions.ts'
import type { SafetyVerdict } from '../../engines/limits/index.ts'
import type { Job } from '../job.ts'

/** A look-up in the recall list: the last one counts, for lists grow. */
type RecallCheck = { readonly note: string; readonly inNoList: boolean; readonly text: string }

/** How the recall check of a machine stands, in words. Not done, it stops nothing and is said everywhere. */
export type RecallView = {
  readonly state: 'not-done' | 'in-no-list' | 'in-a-list'
  readonly title: string
  readonly stateText: string
  readonly sentence: string
  /** `Office for Product Safety and Standards: Product Recalls and Alerts (GOV.UK)`. */
  readonly list: string
  readonly how: readonly string[]
  /** The note of the look-up that counts; null where none was made. */
  readonly note: string | null
  /** What was written with it. */
  readonly text: string
}

/** The look-up that counts; null where none is noted. */
export const lastRecallCheck = ({ events }: Pick<Job, 'events'>): RecallCheck | null => {
  const last = events.findLast(
    (event) => event.kind === 'proof' && event.finding.kind === 'look' && event.finding.step === recallCheckId,
  )
  if (last?.kind !== 'proof' || last.finding.kind !== 'look') return null
  return { note: last.note, inNoList: last.finding.good, text: last.finding.text }
}

/** A hit makes a machine not fit, for a recalled one is not sold before its remedy; anything else leaves the verdict as it is. */
export const withRecall = (verdict: SafetyVerdict, check: RecallCheck | null): SafetyVerdict => {
  if (check === null || check.inNoList) return verdict
  const others = verdict.kind === 'not-fit' ? ` ${verdict.sentence}` : ' Local rules and a competent person decide.'
  const sentence = `Found in a recall list: not to be sold before what the recall asks for has been done.${others}`
  return { ...verdict, kind: 'not-fit', sentence }
}

const stateTexts: Readonly<Record<RecallView['state'], string>> = {
  'not-done': 'not done',
  'in-no-list': 'done, in no list',
  'in-a-list': 'done, in a recall list',
}

/** The recall check of a job, with the list of the region. */
export const recallView = (job: Pick<Job, 'events'>, region: Region): RecallView => {
  const check = lastRecallCheck(job)
  const state = check === null ? 'not-done' : check.inNoList ? 'in-no-list' : 'in-a-list'
  const { authority, list } = secondHandDuties[region].recall
  return {
    state,
    title: recallCheckTitle,
    stateText: stateTexts[state],
    sentence: sentenceOf(state, authority, check?.text ?? ''),
    list: `${authority}: ${list}`,
    how: recallHow,
    note: check?.note ?? null,
    text: check?.text ?? '',
  }
}

const sentenceOf = (state: RecallView['state'], authority: string, text: string): string => {
  const where = text === '' ? '' : ` (${text})`
  switch (state) {
    case 'not-done':
      return `Recall check: not done. Look the plate up with the ${authority} before it is sold; the checks do not wait for it.`
    case 'in-no-list':
      return `Recall check: done, the plate was found in no list${where}.`
    case 'in-a-list':
      return `Recall check: done, and the plate was found in a list${where}. What the recall asks for comes first.`
  }
}
