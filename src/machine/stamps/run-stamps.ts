import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { stampKinds } from '../../facts/date-stamps.ts'
import { buildWindow, type DatedPart, type PartVerdict } from './build-window.ts'
import { dayFromText, dayText } from './calendar.ts'
import { readStamp } from './read-stamp.ts'
import { serialDates, type SerialDate } from './serial-dates.ts'
import { stampsSchema } from './stamp.ts'

type Span = { readonly from: string; readonly to: string }
export type StampsAnswer = {
  readonly window: Span & { readonly enough: boolean }
  readonly parts: readonly {
    readonly part: string
    readonly verdict: PartVerdict
    /** How a stamp of this kind is read. */
    readonly read: string
    readonly candidates: readonly (Span & { readonly weight: number; readonly why: string })[]
  }[]
  readonly serial: readonly (Span & { readonly form: SerialDate['form'] })[]
  readonly remarks: readonly string[]
}

/** Date stamps of one machine, as JSON, to its build window. Refuses stamps that cannot be and parts not named. */
export const runStamps = (input: unknown): Result<StampsAnswer> => {
  const parsed = parse(stampsSchema, input, 'stamps')
  if (parsed.kind === 'refused') return parsed
  const { stamps, parts, serial, plate, earliestYear } = parsed.value
  const today = dayFromText(parsed.value.today)!
  // The last days of December can be in week 1 of the year to come.
  const years = { earliest: earliestYear, latest: Number(dayText(today + 3).slice(0, 4)), today }
  const problems: Problem[] = []
  if (years.earliest > years.latest) {
    problems.push(
      problem('year-out-of-range', 'earliestYear', 'The earliest year is later than today', 'Mend one of them'),
    )
  }
  const dated: DatedPart[] = []
  stamps.forEach((stamp, index) => {
    const where = `stamps[${index}]`
    if (!parts.includes(stamp.part)) {
      problems.push(problem('unknown-part', `${where}.part`, `There is no part “${stamp.part}”`, 'Name it in parts'))
    }
    const read = readStamp(stamp, years, `${where}.seen`)
    if (read.kind === 'refused') problems.push(...read.problems)
    else dated.push({ part: stamp.part, kind: stamp.kind, candidates: read.value })
  })
  if (problems.length > 0) return refused(...problems)
  const window = buildWindow(dated, plate, years)
  const found = serial === undefined ? [] : serialDates(serial, years, window)
  return ok({
    window: { ...span(window), enough: window.enough },
    parts: dated.map((one, i) => ({
      part: one.part,
      read: stampKinds[one.kind].read,
      verdict: window.verdicts[i],
      candidates: one.candidates.map((c) => ({ ...span(c), weight: c.weight, why: c.why })),
    })),
    serial: found.map((date) => ({ ...span(date), form: date.form })),
    remarks: window.remarks,
  })
}

const span = ({ from, to }: { readonly from: number; readonly to: number }): Span => ({
  from: dayText(from),
  to: dayText(to),
})
