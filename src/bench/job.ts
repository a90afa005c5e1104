import type { Blueprint } from '../blueprint/schema.ts'
import type { Grade } from '../facts/asking.ts'
import type { Attitude } from '../facts/attitudes.ts'
import type { Costs } from '../machine/costs.ts'
import type { Job, JobEvent } from '../machine/job.ts'
import type { MachineState } from './contract.ts'
import { standing } from './fold.ts'
import { fittedTo } from './fitted.ts'
import type { Note } from './note.ts'
import { defaultSettings } from './settings.ts'

/**
 * The machine as the engines need to know it: blueprint, plate, claims, and the events in order without those struck out.
 * @param attitude what the settings say of risk
 * @param costs what things cost by the settings
 */
export const jobOf = (
  given: MachineState,
  notes: readonly Note[],
  blueprint: Blueprint,
  attitude: Attitude = defaultSettings.attitude,
  costs?: Costs,
): Job => {
  const state = fittedTo(given, blueprint)
  const first = notes.find(({ content }) => content.kind === 'added')?.content
  return {
    ...(first?.kind === 'added' ? { claims: first.claims, answers: first.answers, condition: first.condition } : {}),
    blueprint,
    plate: state.plate,
    history: { ageYears: state.ageYears ?? undefined, wear: state.wear ?? undefined },
    complaints: state.claimed.complaints,
    partLooks: partLooks(notes),
    missing: state.missing,
    events: standing(notes).flatMap(eventsOf),
    off: state.off,
    hourMinor: state.hourMinor,
    hourSetAt: state.hourSetAt,
    prices: state.prices,
    attitude,
    costs,
    rules: state.rules,
    lead: state.lead,
    putInMinor: state.paidMinor + state.spentMinor + state.feesMinor - state.toShelfMinor - state.receivedMinor,
  }
}

/** The last grade of each part, after the cleaning where there is one. */
const partLooks = (notes: readonly Note[]): readonly Grade[] => {
  const graded = standing(notes).flatMap(({ content }) => (content.kind === 'graded' ? [content] : []))
  const last = new Map<string, Grade>()
  for (const when of ['before', 'after'] as const)
    for (const one of graded.filter((each) => each.when === when)) last.set(one.part, one.grade)
  return [...last.values()]
}

const eventsOf = ({ id, content }: Note): readonly JobEvent[] => {
  switch (content.kind) {
    case 'reading':
      return [
        { kind: 'reading', note: id, check: content.check, result: content.result, instrument: content.instrument },
      ]
    case 'gauge':
      return [{ kind: 'gauge', note: id, reading: content.reading }]
    case 'proof':
      return [{ kind: 'proof', note: id, finding: content.finding }]
    case 'repaired':
      return [{ kind: 'repaired', note: id, repair: content.repair, option: content.option }]
    case 'confirmed':
      return [{ kind: 'confirmed', note: id, fault: content.fault }]
    case 'seen':
      // Words alone tell the engines nothing; a complaint seen does.
      return content.complaints.length === 0 ? [] : [{ kind: 'seen', note: id, complaints: content.complaints }]
    case 'opened':
    case 'closed':
      return [{ kind: content.kind, note: id, cover: content.cover }]
    case 'taken-out':
    case 'put-in':
      return [{ kind: content.kind, note: id, part: content.part }]
    case 'tried':
      return [{ kind: 'tried', note: id, function: content.function, result: content.result }]
    case 'added':
    case 'described-by':
    case 'history':
    case 'rules':
    case 'stamp':
    case 'valued':
    case 'listed':
    case 'spent':
    case 'cleaned':
    case 'dried':
    case 'graded':
    case 'worded':
    case 'camera':
    case 'took-off':
    case 'photo':
    case 'came-back':
    case 'said':
    case 'struck':
    case 'left':
      return []
  }
}
