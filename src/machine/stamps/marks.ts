import { earliestBuildYear } from '../../facts/date-stamps.ts'
import { dayFromText } from './calendar.ts'
import { runStamps, type StampsAnswer } from './run-stamps.ts'
import type { MarkReading, StampsInput } from './stamp.ts'

/** One mark of a machine as it stands in its notes. */
export type DateMark = { readonly note: string; readonly part: string; readonly reading: MarkReading }

/** What the marks of one machine say together. Days are `YYYY-MM-DD`. */
export type MarksAnswer = {
  /** When it was put together; null while nothing is marked. */
  readonly window: { readonly from: string; readonly to: string; readonly enough: boolean } | null
  /** The window in words, as `Mar to Sep 2009`. */
  readonly windowText: string | null
  /** Whole years from the middle of the window to today, where the window is narrow enough to say; else null. */
  readonly ageYears: number | null
  /** In the order of the marks: what each says, and a flag on one stamped well after or well before the others. */
  readonly marks: readonly {
    readonly note: string
    readonly seen: string
    readonly says: readonly string[]
    readonly flag: string | null
  }[]
  readonly remarks: readonly string[]
}

const nothing: MarksAnswer = { window: null, windowText: null, ageYears: null, marks: [], remarks: [] }

/** A window wider than this says no age. Years. */
const widestWindowYears = 6
const daysInYear = 365.25

/**
 * Date marks to a build window and an age. A mark that can mean no day up to today says so and counts for nothing.
 * @param today `YYYY-MM-DD`
 */
export const readMarks = (marks: readonly DateMark[], inputW: number, today: string): MarksAnswer => {
  if (marks.length === 0) return nothing
  const stamped = marks.filter(isStamp)
  const possible = stamped.filter((mark) => runStamps(inputOf([mark], marks, inputW, today)).kind === 'ok')
  const answer = runStamps(inputOf(possible, marks, inputW, today))
  if (answer.kind === 'refused') return { ...nothing, remarks: answer.problems.map(({ what }) => what) }
  const { window, parts, remarks } = answer.value
  return {
    window,
    windowText: spanText(window),
    ageYears: ageOf(window, today),
    marks: marks.map((mark) => {
      const part = parts[possible.findIndex(({ note }) => note === mark.note)]
      return {
        note: mark.note,
        seen: markText(mark.reading),
        says: saysOf(mark, part, answer.value),
        flag: flagOf(part),
      }
    }),
    remarks,
  }
}

type StampMark = DateMark & { readonly reading: Exclude<MarkReading, { kind: 'serial' | 'plate' }> }

const isStamp = (mark: DateMark): mark is StampMark => mark.reading.kind !== 'serial' && mark.reading.kind !== 'plate'

const inputOf = (
  stamped: readonly StampMark[],
  marks: readonly DateMark[],
  inputW: number,
  today: string,
): StampsInput => {
  const serial = marks.flatMap(({ reading }) => (reading.kind === 'serial' ? [reading.seen.number] : [])).at(-1)
  const clues = marks.flatMap(({ reading }) => (reading.kind === 'plate' ? [reading.seen] : []))
  return {
    today,
    earliestYear: earliestBuildYear,
    parts: [...new Set(marks.map(({ part }) => part))],
    stamps: stamped.map(({ part, reading }) => ({ part, ...reading })),
    ...(serial === undefined ? {} : { serial }),
    ...(clues.length === 0 ? {} : { plate: { ...clues.reduce((all, clue) => ({ ...all, ...clue }), {}), inputW } }),
  }
}

const saysOf = (mark: DateMark, part: StampsAnswer['parts'][number] | undefined, answer: StampsAnswer): string[] => {
  if (mark.reading.kind === 'plate') return ['narrows the window']
  if (mark.reading.kind === 'serial')
    return answer.serial.length === 0
      ? ['no date in it']
      : answer.serial.slice(0, 3).map((date) => `${spanText(date)} if read as ${date.form}`)
  if (part === undefined) return ['no such date up to today: look again']
  return part.candidates.slice(0, 3).map((candidate) => spanText(candidate))
}

const flagOf = (part: StampsAnswer['parts'][number] | undefined): string | null => {
  if (part?.verdict === 'likely replaced') return 'Later than the others: likely a replacement'
  return part?.verdict === 'old stock or donor' ? 'Earlier than the others: old stock, or from a donor' : null
}

const ageOf = (window: { from: string; to: string; enough: boolean }, today: string): number | null => {
  const [from, to, now] = [window.from, window.to, today].map((text) => dayFromText(text) ?? 0)
  if (to - from > widestWindowYears * daysInYear) return null
  return Math.max(0, Math.floor((now - (from + to) / 2) / daysInYear))
}

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
const monthText = (day: string): string => `${monthNames[Number(day.slice(5, 7)) - 1] ?? ''} ${day.slice(0, 4)}`

/** Days as `Mar 2009`, `Mar to Sep 2009` or `Nov 2008 to May 2009`. */
export const spanText = ({ from, to }: { readonly from: string; readonly to: string }): string => {
  const [first, last] = [monthText(from), monthText(to)]
  if (first === last) return first
  return from.slice(0, 4) === to.slice(0, 4) ? `${first.slice(0, 3)} to ${last}` : `${first} to ${last}`
}

/** What was seen, in words, as it stands in the log. */
export const markText = (reading: MarkReading): string => {
  switch (reading.kind) {
    case 'one-ring': {
      const { left, right, month, coveredMonth } = reading.seen
      const arrow = month === undefined ? '' : `, arrow at ${month}`
      return `one ring, ${left} and ${right}${arrow}${coveredMonth === undefined ? '' : `, ${coveredMonth} missing`}`
    }
    case 'two-rings':
      return `two rings, month ${reading.seen.month}, year ${yearText(reading.seen.year)}`
    case 'three-rings': {
      const { day, month, year } = reading.seen
      const read = typeof day === 'number' ? day : day.tens * 10 + day.units
      return `three rings, day ${read}, month ${month}${year === undefined ? '' : `, year ${yearText(year)}`}`
    }
    case 'dots':
      return `${reading.seen.dots} dots, year ${yearText(reading.seen.year)}`
    case 'week':
      return `week ${reading.seen.week}, year ${yearText(reading.seen.year)}`
    case 'written': {
      const { year, month, day } = reading.seen
      return `written ${[day, month, yearText(year)].filter((one) => one !== undefined).join('/')}`
    }
    case 'serial':
      return `serial number ${reading.seen.number}`
    case 'plate':
      return `plate: ${clueTexts(reading.seen).join(', ')}`
  }
}

const yearText = (year: number): string => String(year).padStart(2, '0')

const clueTexts = (seen: Extract<MarkReading, { kind: 'plate' }>['seen']): string[] => [
  ...(seen.date === undefined ? [] : [`date ${seen.date}`]),
  ...(seen.ukca === true ? ['UKCA mark'] : []),
  ...(seen.sleevedPins === true ? ['sleeved pins'] : []),
  ...(seen.dryEuOrUk === true ? ['dry machine with an EU or UK label'] : []),
]
