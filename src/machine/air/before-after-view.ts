import {
  beforeAfterRatio,
  usualInstruments,
  type AirSession,
  type Plate,
  type Ratio,
} from '../../engines/airflow/index.ts'
import { plateOf, type NotedReading } from './air-fit.ts'
import type { AirSet } from './air-sets.ts'
import { openingText } from './air-text.ts'
import type { BeforeAfterView } from './air-view.ts'
import { standardRoom } from './standard-room.ts'

/** The seed of the draws for the ratio of the peaks: kept, so that the same readings give the same limits. */
const seed = 1
/** Coverage of a stated uncertainty: 95 %. */
const coverage = 2

/**
 * What the work did to the air: the last set over the first, at the same holes of the same way in. Null where there is only one set,
 * or no hole was read both times.
 */
export const beforeAfterOf = (
  sets: readonly AirSet[],
  names: readonly string[],
  way: string,
  nominalV: number,
): BeforeAfterView | null => {
  const [first, last] = [sets[0], sets.at(-1)]
  if (first === undefined || last === undefined || first === last) return null
  const sessions = [first, last].map(({ readings }) => sessionOf(plainAt(readings, way), nominalV))
  const found = beforeAfterRatio({
    plates: platesOf([...plainAt(first.readings, way), ...plainAt(last.readings, way)]),
    instruments: [...usualInstruments],
    before: sessions[0],
    after: sessions[1],
    seed,
  })
  if (found.plates.length === 0) return null
  const plateNames = new Map(
    [...first.readings, ...last.readings].map(({ reading: { opening } }) => [
      plateOf(opening)?.id ?? null,
      openingText(opening),
    ]),
  )
  const { airPower } = found
  return {
    before: names[0] ?? '',
    after: names.at(-1) ?? '',
    plates: found.plates.map(({ plate, suction, airPower: power }) => ({
      name: plateNames.get(plate) ?? 'sealed',
      suction,
      airPower: power,
    })),
    airPower,
    peak: found.peak,
    text: summary(found.plates.length, airPower, found.plates[0].suction, found.correctedFor),
  }
}

/** Suction readings at the way in, with nothing tapped or left out: those that can be set beside each other. */
const plainAt = (readings: readonly NotedReading[], way: string): readonly NotedReading[] =>
  readings.filter(
    ({ reading }) =>
      reading.way === way &&
      reading.read.measure === 'suction' &&
      reading.tapBefore === undefined &&
      reading.out.length === 0,
  )

/** Air and mains of a session are those of its first reading that has them; mains count only where every reading has them. */
const sessionOf = (readings: readonly NotedReading[], nominalV: number): AirSession => {
  const room = readings.find(({ reading }) => reading.room !== undefined)?.reading.room
  const volts = readings.flatMap(({ reading }) => reading.mainsV ?? [])
  const allMeasured = volts.length > 0 && volts.length === readings.length
  return {
    air: room === undefined ? standardRoom : { kind: 'room', ...room },
    mainsRatio: allMeasured ? volts.reduce((sum, v) => sum + v, 0) / volts.length / nominalV : null,
    readings: readings.flatMap(({ reading: { opening, read, instrument } }) =>
      read.measure === 'suction'
        ? [{ plate: plateOf(opening)?.id ?? null, suctionPa: read.suctionPa, instrument }]
        : [],
    ),
  }
}

const platesOf = (readings: readonly NotedReading[]): readonly Plate[] => {
  const plates = readings.flatMap(({ reading }) => plateOf(reading.opening) ?? [])
  return plates.filter(({ id }, at) => plates.findIndex((one) => one.id === id) === at)
}

const timesText = ({ ratio, uncertainty }: Ratio): string => {
  const limits = [1 - coverage * uncertainty, 1 + coverage * uncertainty].map((factor) => (ratio * factor).toFixed(2))
  return `${ratio.toFixed(2)} times (${limits.join(' to ')} in 95 of 100 cases)`
}

const summary = (
  plates: number,
  airPower: Ratio | null,
  suction: Ratio,
  correctedFor: readonly ('density' | 'mains')[],
): string => {
  const what =
    airPower === null
      ? `Suction when sealed is ${timesText(suction)} what it was`
      : `Air power is ${timesText(airPower)} what it was`
  const how = correctedFor.includes('mains')
    ? 'brought to standard air and nominal mains'
    : 'brought to standard air; mains not measured'
  return `${what}, at ${plates} opening${plates === 1 ? '' : 's'} read both times, ${how}.`
}
