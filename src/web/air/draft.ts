import { airQuantityFromText, type AirQuantity } from '../../base/air-units.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { quantityFromText, type Quantity } from '../../base/units.ts'
import { toneGauge, vaneGauge } from '../../facts/gauges.ts'
import type { holeMakes } from '../../facts/orifice.ts'
import type { GaugeReading } from '../../machine/air/gauge-reading.ts'
import type { AirflowUnit, SuctionUnit } from './gauge-units.ts'
import type { Measure, Place, SetUp } from './place.ts'

export type HoleMake = keyof typeof holeMakes

/** What is written once and holds for the readings that follow. All as written. */
export type Kept = {
  readonly gauge: string
  readonly thicknessMm: string
  readonly edgeMm: string
  readonly make: HoleMake
  readonly mains: string
  readonly watts: string
  readonly barometer: string
  readonly temperature: string
  readonly humidity: string
  /** Pitch of a sound motor. */
  readonly sound: string
}

/** What the gauge showed, as written. */
export type Shown = { readonly text: string; readonly suctionUnit: SuctionUnit; readonly airflowUnit: AirflowUnit }

/** A text with a letter or a sign for its unit keeps it; a bare number gets the one chosen. */
const withUnit = (text: string, unit: string): string => (/[^\d\s.,+\-−]/.test(text) ? text : `${text} ${unit}`)

/** Reads the fields of a form one after another and collects what is wrong with them. */
const makeReader = () => {
  const problems: Problem[] = []
  const take = (read: Result<number>): number => {
    if (read.kind === 'ok') return read.value
    problems.push(...read.problems)
    return 0
  }
  return {
    problems,
    air: (text: string, unit: string, quantity: AirQuantity, where: string): number =>
      take(airQuantityFromText(withUnit(text, unit), quantity, where)),
    plain: (text: string, unit: string, quantity: Quantity, where: string): number =>
      take(quantityFromText(withUnit(text, unit), quantity, where)),
    refuse: (one: Problem): number => {
      problems.push(one)
      return 0
    },
  }
}
type Reader = ReturnType<typeof makeReader>

const isBlank = (text: string): boolean => text.trim() === ''

/** The set-up of a reading from what was chosen and written. Refused with a problem at each field that is none. */
export const setUpOf = (place: Place, kept: Kept): Result<SetUp> => {
  const reader = makeReader()
  const setUp: SetUp = {
    way: place.way,
    opening: openingOf(place, kept, reader),
    ...(place.tapBefore === '' ? {} : { tapBefore: place.tapBefore }),
    out: [...place.out],
    instrument: instrumentOf(place.measure, kept),
    ...(isBlank(kept.mains) ? {} : { mainsV: reader.plain(kept.mains, 'V', 'voltageV', 'reading.mainsV') }),
    ...(isBlank(kept.watts) ? {} : { inputW: reader.plain(kept.watts, 'W', 'powerW', 'reading.inputW') }),
    ...roomOf(kept, reader),
  }
  return reader.problems.length === 0 ? ok(setUp) : refused(...reader.problems)
}

const instrumentOf = (measure: Measure, { gauge }: Kept): string => {
  switch (measure) {
    case 'suction':
      return gauge
    case 'airflow':
      return vaneGauge
    case 'tone':
      return toneGauge
  }
}

/** A plate of which nothing is said. */
const usualThicknessM = 0.001

const openingOf = (place: Place, kept: Kept, { air, refuse }: Reader): GaugeReading['opening'] => {
  if (place.opening === 'sealed' || place.opening === 'open') return { kind: place.opening }
  const diameterM = isBlank(place.holeMm)
    ? refuse(noHole)
    : air(place.holeMm, 'mm', 'lengthM', 'reading.opening.diameterM')
  return {
    kind: 'hole',
    diameterM,
    thicknessM: isBlank(kept.thicknessMm)
      ? usualThicknessM
      : air(kept.thicknessMm, 'mm', 'lengthM', 'reading.opening.thicknessM'),
    edgeRadiusM: isBlank(kept.edgeMm) ? 0 : air(kept.edgeMm, 'mm', 'lengthM', 'reading.opening.edgeRadiusM'),
    make: kept.make,
  }
}

const noHole = problem(
  'empty',
  'reading.opening.diameterM',
  'How wide the hole is has not been written',
  'Write its diameter, such as 19 mm',
)

const usualHumidity = 0.5

/** The air of the shed: only a barometer and a thermometer together give its density. */
const roomOf = (kept: Kept, { air, refuse }: Reader): Pick<SetUp, 'room'> => {
  const { barometer, temperature, humidity } = kept
  if ([barometer, temperature, humidity].every(isBlank)) return {}
  const barometerPa = isBlank(barometer)
    ? refuse(half('reading.room.barometerPa', 'barometer', '1013 mbar'))
    : air(barometer, 'mbar', 'pressurePa', 'reading.room.barometerPa')
  const temperatureC = isBlank(temperature)
    ? refuse(half('reading.room.temperatureC', 'temperature', '18 °C'))
    : air(temperature, '°C', 'temperatureC', 'reading.room.temperatureC')
  const relativeHumidity = isBlank(humidity) ? usualHumidity : percentOf(humidity, refuse)
  return { room: { barometerPa, temperatureC, relativeHumidity } }
}

const half = (where: string, what: string, example: string): Problem =>
  problem(
    'half-a-room',
    where,
    `Of the room's air the ${what} is missing`,
    `Write it, such as ${example}, or leave barometer, temperature and humidity all empty`,
  )

const percentOf = (text: string, refuse: Reader['refuse']): number => {
  const value = Number(text.replace('%', '').replace(',', '.').trim())
  if (value >= 0 && value <= 100) return value / 100
  const what = `“${text.trim()}” is not a relative humidity`
  return refuse(problem('not-a-number', 'reading.room.relativeHumidity', what, 'Write it in per cent, from 0 to 100'))
}

/** The whole reading. Refused with a problem at each field that is none. */
export const readingOf = (place: Place, kept: Kept, shown: Shown): Result<GaugeReading> => {
  const setUp = setUpOf(place, kept)
  const reader = makeReader()
  const read = readOf(place.measure, kept, shown, reader)
  const problems = [...reader.problems, ...(setUp.kind === 'refused' ? setUp.problems : [])]
  return setUp.kind === 'ok' && problems.length === 0 ? ok({ ...setUp.value, read }) : refused(...problems)
}

const readOf = (measure: Measure, kept: Kept, shown: Shown, reader: Reader): GaugeReading['read'] => {
  const where = 'reading.read'
  switch (measure) {
    case 'suction':
      return { measure, suctionPa: shownValue(shown.text, shown.suctionUnit, 'pressurePa', reader) }
    case 'airflow':
      return { measure, airflowM3PerS: shownValue(shown.text, shown.airflowUnit, 'airflowM3PerS', reader) }
    case 'tone':
      return {
        measure,
        toneHz: hertzOf(shown.text, where, reader),
        soundHz: hertzOf(kept.sound, `${where}.soundHz`, reader),
      }
  }
}

const nothingShown = problem('empty', 'reading.read', 'Nothing is entered yet', 'Type what it shows')

const shownValue = (text: string, unit: string, quantity: AirQuantity, { air, refuse }: Reader): number => {
  if (isBlank(text)) return refuse(nothingShown)
  const value = air(text, unit, quantity, 'reading.read')
  if (value >= 0) return value
  const what = `“${text.trim()}” is below zero, and suction is written without a sign`
  return refuse(problem('negative', 'reading.read', what, 'Write how far below the room it is, such as 9.6 kPa'))
}

const hertzOf = (text: string, where: string, { refuse }: Reader): number => {
  const value = Number(text.replace(/hz/i, '').replace(',', '.').trim())
  if (!isBlank(text) && value > 0) return value
  const what = isBlank(text) ? 'A pitch is missing' : `“${text.trim()}” is not a pitch`
  return refuse(problem('not-a-number', where, what, 'Write it in Hz, such as 640, of the same tone of both machines'))
}
