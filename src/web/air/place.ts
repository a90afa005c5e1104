import type { GaugeReading } from '../../machine/air/gauge-reading.ts'

/** Everything of a reading but what was read. */
export type SetUp = Omit<GaugeReading, 'read'>
export type Measure = GaugeReading['read']['measure']

/** Where the rig sits and what the machine breathes through, as chosen. It follows the next reading until something is chosen. */
export type Place = {
  readonly way: string
  readonly opening: 'sealed' | 'hole' | 'other-hole' | 'open'
  /** Width of the hole as written, mm. */
  readonly holeMm: string
  /** Part before which the path is tapped; empty when the rig itself is. */
  readonly tapBefore: string
  readonly out: readonly string[]
  readonly measure: Measure
}

/** Whether a reading was, or would be, made in just this place. */
export const isPlaceOf = (place: Place, reading: SetUp): boolean => {
  const { opening } = reading
  const sameOpening =
    opening.kind === 'hole'
      ? place.opening.endsWith('hole') && Number(place.holeMm) === widthMm(opening.diameterM)
      : place.opening === opening.kind
  return (
    sameOpening &&
    place.measure === 'suction' &&
    place.way === reading.way &&
    place.tapBefore === (reading.tapBefore ?? '') &&
    [...place.out].sort().join() === [...reading.out].sort().join()
  )
}

/** The place of a reading. */
export const placeOf = ({ way, opening, tapBefore, out }: SetUp): Place => ({
  way,
  opening: opening.kind,
  holeMm: opening.kind === 'hole' ? String(widthMm(opening.diameterM)) : '',
  tapBefore: tapBefore ?? '',
  out,
  measure: 'suction',
})

/** Width of a hole in mm, to a tenth. */
export const widthMm = (diameterM: number): number => Math.round(diameterM * 10_000) / 10

/** Holes written in one line, m: `13, 19 and 25.4`. Those that are no width of a test hole are left out. */
export const holesFromText = (text: string): readonly number[] => {
  const found = (text.match(/\d+(?:\.\d+)?/g) ?? []).map((mm) => Number(mm) / 1000)
  return [...new Set(found)].filter((hole) => hole > 0 && hole <= widestHoleM).sort((a, b) => a - b)
}

const widestHoleM = 0.3
