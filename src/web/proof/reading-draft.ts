import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { quantityFromText } from '../../base/units.ts'
import type { LimitQuantity } from '../../facts/safety-limits.ts'
import type { ProofStepView } from '../../machine/proof/proof-view.ts'
import { keptOwn, lastChecked, lastUsed } from './kept.ts'
import { measuredAs, voltagesOf, withUnit } from './measured.ts'
import { noInstrument, ownInstrumentOf, type OwnInstrument } from './own-instrument.ts'
import type { FindingInput } from './use-finding.ts'

/** `own` stands for an instrument that is none of the listed ones; an empty one has still to be chosen. */
export const ownId = 'own'

/** A reading as it is being entered. */
export type ReadingDraft = {
  readonly quantity: LimitQuantity
  readonly part: string
  readonly shown: 'figure' | 'above' | 'below'
  readonly text: string
  readonly unit: string
  readonly instrument: string
  readonly testVoltageV: number | null
  readonly checkedOn: string
  readonly own: OwnInstrument
}

type Limit = ProofStepView['limits'][number]

/** What stands in the form before anything is typed: the instrument last used for this. */
export const firstDraft = ({ limits }: ProofStepView): ReadingDraft => ({
  ...draftFor(limits[0]),
  shown: 'figure',
  text: '',
})

/** What changes when something else is measured. */
export const draftFor = (limit: Limit | undefined): Omit<ReadingDraft, 'shown' | 'text'> => {
  const quantity = limit?.quantity ?? 'insulation'
  const { usual, measures } = measuredAs(quantity)
  const [instrument = ''] = lastUsed(measures)
  const own = { ...noInstrument, ...keptOwn(measures) }
  return {
    quantity,
    part: quantity === 'touch-current' || quantity === 'insulation' ? 'each metal part' : 'the machine',
    unit: usual,
    own,
    ...instrumentChosen(instrument, own, limit),
  }
}

/** What goes with an instrument: its test voltage, set as the limit asks, and the day it was last checked. */
export const instrumentChosen = (
  instrument: string,
  own: OwnInstrument,
  limit: Limit | undefined,
): Pick<ReadingDraft, 'instrument' | 'testVoltageV' | 'checkedOn'> => {
  const volts = limit === undefined ? [] : voltagesOf(instrument, limit.quantity)
  const asked = volts.find((volt) => volt === limit?.testVoltageV)
  return { instrument, testVoltageV: asked ?? volts[0] ?? null, checkedOn: lastChecked(checkedName(instrument, own)) }
}

/** Under which name the day of its last check is kept. */
export const checkedName = (instrument: string, own: OwnInstrument): string =>
  instrument === ownId ? `${ownId} ${own.name.trim()}` : instrument

type Reading = Extract<FindingInput, { kind: 'reading' }>

/** The reading to note. `beyond`: nothing but that it lies beyond the range. Refused with a problem at each field that is wrong. */
export const readingOf = (draft: ReadingDraft, beyond: boolean, today: string): Result<Reading> => {
  const { quantity, unit, own, checkedOn } = draft
  const value = beyond ? ok(null) : valueOf(draft)
  const used = usedOf(draft, own, unit)
  const problems: Problem[] = [
    ...(draft.part.trim() === '' ? [noPart] : []),
    ...(used.kind === 'refused' ? used.problems : []),
    ...(checkedOn > today ? [inFuture] : []),
    ...(value.kind === 'refused' ? value.problems : []),
  ]
  if (value.kind === 'refused' || used.kind === 'refused' || problems.length > 0) return refused(...problems)
  return ok({
    kind: 'reading',
    quantity,
    part: draft.part.trim(),
    shown: beyond ? 'above' : draft.shown,
    value: value.value,
    checkedOn,
    ...used.value,
  })
}

const usedOf = (
  { instrument, quantity, testVoltageV }: ReadingDraft,
  own: OwnInstrument,
  unit: string,
): Result<Pick<Reading, 'instrument' | 'testVoltageV'>> => {
  if (instrument === '') return refused(noneChosen)
  return instrument === ownId ? ownInstrumentOf(own, quantity, unit) : ok({ instrument, testVoltageV })
}

const where = 'finding.value'

const valueOf = ({ text, unit, quantity }: ReadingDraft): Result<number> => {
  if (text.trim() === '')
    return refused(problem('empty', where, 'Nothing is entered yet', 'Type what the instrument shows'))
  return quantityFromText(withUnit(text, unit), measuredAs(quantity).quantity, where)
}

const noPart = problem('empty', 'finding.part', 'It is not said where it was taken', 'Write it, such as motor housing')
const noneChosen = problem(
  'no-instrument',
  'finding.instrument',
  'It is not said with which instrument',
  'Choose it: what a reading proves depends on it',
)
const inFuture = problem(
  'in-the-future',
  'finding.checkedOn',
  'That day is still to come',
  'Give the day of its last check, or leave it empty where nobody knows',
)
