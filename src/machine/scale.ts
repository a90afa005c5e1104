import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { Check, GradedCheck } from '../blueprint/schema.ts'
import { powerMeter } from '../facts/power-meter.ts'
import type { ReadingResult } from './result.ts'

type Scale = NonNullable<GradedCheck['scale']>

/** The watts that count as one outcome under a plate: from `fromW` up to, but not including, `toW`; null where there is no end. */
export type WattBand = { readonly outcome: string; readonly fromW: number; readonly toW: number | null }

/** The bands of a scale in watts for a plate of this power, from low to high. */
export const wattBands = ({ edges, order }: Scale, powerW: number): readonly WattBand[] =>
  order.map((outcome, i) => ({
    outcome,
    fromW: i === 0 ? 0 : edges[i - 1] * powerW,
    toW: edges[i] === undefined ? null : edges[i] * powerW,
  }))

/** The outcome that a number of watts stands for under a plate of this power. */
export const outcomeOfWatts = (scale: Scale, powerW: number, watts: number): string =>
  wattBands(scale, powerW).findLast(({ fromW }) => watts >= fromW)?.outcome ?? scale.order[0]

/** A band in words, to the ten watts: `840 to 1,380 W`, `under 20 W`, `1,380 W or more`. */
export const wattBandText = ({ fromW, toW }: WattBand): string => {
  if (toW === null) return `${wattsNumber(fromW)} W or more`
  return fromW === 0 ? `under ${wattsNumber(toW)} W` : `${wattsNumber(fromW)} to ${wattsNumber(toW)} W`
}

const wattsNumber = (watts: number): string => {
  const step = watts >= 100 ? 10 : 1
  return thousands(Math.round(watts / step) * step)
}

const thousands = (whole: number): string => String(whole).replace(/\B(?=(\d{3})+$)/g, ',')

/** A number of watts in words: `1,100 W`. */
export const wattsText = (watts: number): string => `${thousands(Math.round(watts))} W`

/** The result that goes with a number of watts. Refused where the check has no scale in watts. */
export const resultOfWatts = (
  check: Pick<GradedCheck, 'id' | 'name' | 'scale'>,
  powerW: number,
  watts: number,
): Result<ReadingResult> =>
  check.scale === undefined
    ? refused(
        problem(
          'no-watts',
          `reading of ${check.id}`,
          `“${check.name}” is not read in watts`,
          'Enter one of its results',
        ),
      )
    : ok({ kind: 'grade', outcome: outcomeOfWatts(check.scale, powerW, watts), watts })

/** The instrument a check is made with where it is not the bench's own multimeter; undefined where it is. */
export const instrumentFor = (check: Check): string | undefined =>
  check.kind !== 'meter' && check.scale !== undefined ? powerMeter.id : undefined
