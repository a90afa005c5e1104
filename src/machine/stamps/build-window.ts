import { plateClues, windowRule } from '../../facts/date-stamps.ts'
import { addMonths, dayFromText, dayOf, startOfMonth, dayText } from './calendar.ts'
import type { DateCandidate } from './read-stamp.ts'
import type { Stamp, StampsInput } from './stamp.ts'

export type DatedPart = {
  readonly part: string
  readonly kind: Stamp['kind']
  readonly candidates: readonly DateCandidate[]
}
export type PartVerdict = 'original' | 'likely replaced' | 'old stock or donor' | 'not judged'
export type BuildWindow = {
  readonly from: number
  readonly to: number
  readonly enough: boolean
  readonly verdicts: readonly PartVerdict[]
  readonly remarks: readonly string[]
}

/**
 * When the machine was put together, from the dates of its parts and from its plate.
 * From the newest part judged original to six months on; wide, and saying so, with fewer than three dated parts.
 */
export const buildWindow = (
  parts: readonly DatedPart[],
  plate: StampsInput['plate'],
  years: { readonly earliest: number; readonly today: number },
): BuildWindow => {
  const dated = parts.filter(saysItsYear)
  const enough = new Set(dated.map((one) => one.part)).size >= windowRule.partsNeeded
  const spans = parts.map(spanOf)
  const judged = enough ? judge(dated.map(spanOf), plate) : []
  const verdicts = parts.map((one): PartVerdict => judged[dated.indexOf(one)] ?? 'not judged')
  const originals = spans.filter((_, i) => verdicts[i] === 'original')
  const wide = {
    from: Math.min(...parts.flatMap((one) => one.candidates.map((c) => c.from)), years.today),
    to: years.today,
  }
  const bare = { from: dayOf(years.earliest, 1, 1), to: years.today }
  const remarks = enough
    ? []
    : [`Fewer than ${windowRule.partsNeeded} dated parts: the window is wide; date more parts`]
  const apart = enough ? 0 : yearsApart(dated.map(spanOf))
  if (apart > 0) remarks.push(`The dated parts are ${apart} years apart: one of them was changed; a third tells which`)
  if (enough && originals.length === 0) remarks.push('No part is judged original: the window is wide')
  const from = Math.max(...originals.map((one) => one.from))
  const last = Math.max(...originals.map((one) => one.last))
  const few = parts.length === 0 ? bare : wide
  const stamped =
    originals.length === 0 ? few : { from, to: Math.min(addMonths(last, windowRule.upperMonths), years.today) }
  const narrowed = narrow(stamped, plate)
  if (narrowed === null) remarks.push('The plate and the stamps disagree: a part or the plate has been changed')
  return { ...(narrowed ?? stamped), enough, verdicts, remarks }
}

/** Rings without a year fit any year: such a mark dates nothing. Two digits that fit two centuries or decades still do. */
const mostYears = 4
const saysItsYear = ({ candidates }: DatedPart): boolean =>
  new Set(candidates.map(({ from }) => dayText(from).slice(0, 4))).size <= mostYears

/** First and last day that a part's date may begin; candidates in other decades than the likeliest are left out. */
type PartSpan = { readonly likely: number; readonly from: number; readonly last: number }

const spanOf = ({ candidates }: DatedPart): PartSpan => {
  const likely = candidates[0].from
  const near = candidates.filter((one) => one.from > addMonths(likely, -12) && one.from < addMonths(likely, 12))
  return {
    likely,
    from: Math.min(...near.map((one) => one.from)),
    last: Math.max(...near.map((one) => Math.max(one.from, startOfMonth(one.to)))),
  }
}

/** Whole years between the oldest and the newest of a few parts, when that is too much for one machine; otherwise 0. */
const yearsApart = (spans: readonly PartSpan[]): number => {
  if (spans.length < 2) return 0
  const oldest = Math.min(...spans.map((one) => one.last))
  const newest = Math.max(...spans.map((one) => one.from))
  if (newest <= addMonths(oldest, windowRule.donorBeforeMedianMonths)) return 0
  return Number(dayText(newest).slice(0, 4)) - Number(dayText(oldest).slice(0, 4))
}

/** A part is flagged only when every date it may have lies outside. */
const judge = (spans: readonly PartSpan[], plate: StampsInput['plate']): readonly PartVerdict[] => {
  const sorted = spans.map((one) => one.likely).sort((a, b) => a - b)
  const middle = Math.floor((sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2)
  const plateDay = plate?.date === undefined ? null : dayFromText(plate.date)
  const newestByPlate = plateDay === null ? Infinity : addMonths(plateDay, windowRule.replacedAfterPlateMonths)
  const newest = Math.min(newestByPlate, addMonths(middle, windowRule.replacedAfterMedianMonths))
  const oldest = addMonths(middle, -windowRule.donorBeforeMedianMonths)
  return spans.map(({ from, last }) =>
    from > newest ? 'likely replaced' : last < oldest ? 'old stock or donor' : 'original',
  )
}

/** The window cut to what plate and plug allow; null when nothing is left. */
const narrow = (
  window: { from: number; to: number },
  plate: StampsInput['plate'],
): { from: number; to: number } | null => {
  const froms = [window.from]
  const tos = [window.to]
  const day = (text: string): number => dayFromText(text)!
  if (plate?.ukca === true) froms.push(day(plateClues.ukca.from))
  if (plate?.sleevedPins === true) froms.push(day(plateClues.sleevedPins.from))
  if (plate?.dryEuOrUk === true) {
    for (const clue of [plateClues.over1600W, plateClues.over900W]) {
      if ((plate.inputW ?? 0) > clue.limitW) tos.push(day(clue.before) - 1)
    }
  }
  const cut = { from: Math.max(...froms), to: Math.min(...tos) }
  return cut.from <= cut.to ? cut : null
}
