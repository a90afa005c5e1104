import { seededRandom, type Random } from '../../base/random.ts'
import { airPowerPeak } from './air-power.ts'
import { roomAirOf } from './compile.ts'
import { standardSuctionPa } from './corrections.ts'
import type { Instrument } from './fit-schema.ts'
import { readingSigma } from './hypothesis-fit.ts'
import { plateFlow, plateUncertainty, type Plate } from './plate.ts'
import { standardRoom, type AirSpec } from './schema.ts'

/** Suction through one plate, or sealed where there is none. */
export type PlateReading = { readonly plate: string | null; readonly suctionPa: number; readonly instrument: string }

export type AirSession = {
  readonly air: AirSpec
  /** Mains voltage over nominal; null when it was not measured, and then nothing is corrected for it. */
  readonly mainsRatio: number | null
  readonly readings: readonly PlateReading[]
}

export type BeforeAfter = {
  readonly plates: readonly Plate[]
  readonly instruments: readonly Instrument[]
  readonly before: AirSession
  readonly after: AirSession
  readonly seed: number
}

/** A ratio of after to before, with its relative standard uncertainty, and what that would be if the rig's errors did not cancel. */
export type Ratio = { readonly ratio: number; readonly uncertainty: number; readonly uncertaintyOtherRig: number }

export type PlateRatio = {
  readonly plate: string | null
  readonly suction: Ratio
  /** Null where the place was sealed. */
  readonly airflow: Ratio | null
  readonly airPower: Ratio | null
}

/**
 * What a repair did to the air. `peak` is null where one of the two sessions shows no summit; low and high are its 95 % limits.
 * `correctedFor` says what both sessions were brought to.
 */
export type BeforeAfterRatio = {
  readonly plates: readonly PlateRatio[]
  /** Mean of the plates' air power ratios, weighted by their uncertainties; null when no plate was read both times. */
  readonly airPower: Ratio | null
  readonly peak: { readonly ratio: number; readonly low: number; readonly high: number; readonly seed: number } | null
  readonly correctedFor: readonly ('density' | 'mains')[]
}

const draws = 1000
const logStep = 1e-4

/** Suctions brought to standard air, and to nominal mains where both sessions measured it. */
const corrected = (session: AirSession, mains: boolean): readonly PlateReading[] => {
  const { densityKgPerM3 } = roomAirOf(session.air)
  return session.readings.map((reading) => ({
    ...reading,
    suctionPa: standardSuctionPa(reading.suctionPa, densityKgPerM3, mains ? session.mainsRatio : null),
  }))
}

/** Readings of one plate with one instrument as their mean, and how many there were. */
type Repeated = PlateReading & { readonly count: number }

const repeated = (readings: readonly PlateReading[]): readonly Repeated[] => {
  const keyOf = ({ plate, instrument: used }: PlateReading): string => JSON.stringify([plate, used])
  return [...new Set(readings.map(keyOf))].map((key) => {
    const same = readings.filter((reading) => keyOf(reading) === key)
    const suctionPa = same.reduce((sum, one) => sum + one.suctionPa, 0) / same.length
    return { ...same[0], suctionPa, count: same.length }
  })
}

/** Flow and power are taken in standard air. */
const standardAir = roomAirOf(standardRoom)

/**
 * Ratio of after to before, reading by reading and at the peak. The same plate has the same hole and the same coefficient both times, and
 * the same gauge the same gain, so those errors divide out: what is left is how well a reading repeats. Where the gauge was changed,
 * its gain counts twice.
 */
export const beforeAfterRatio = (problem: BeforeAfter): BeforeAfterRatio => {
  const mains = problem.before.mainsRatio !== null && problem.after.mainsRatio !== null
  const before = corrected(problem.before, mains)
  const after = corrected(problem.after, mains)
  const plates = pairs(repeated(before), repeated(after)).map(([first, second]) => plateRatio(problem, first, second))
  return {
    plates,
    airPower: meanRatio(plates.flatMap(({ airPower }) => airPower ?? [])),
    peak: peakRatio(problem, before, after),
    correctedFor: mains ? ['density', 'mains'] : ['density'],
  }
}

/** Each plate once: with the same instrument both times where that was done, else with whichever were used. */
const pairs = (before: readonly Repeated[], after: readonly Repeated[]): readonly (readonly [Repeated, Repeated])[] =>
  [...new Set(before.map(({ plate }) => plate))].flatMap((plate) => {
    const [first, second] = [before, after].map((list) => list.filter((one) => one.plate === plate))
    const same = first.flatMap((one) => {
      const other = second.find((two) => two.instrument === one.instrument)
      return other === undefined ? [] : [[one, other] as const]
    })
    if (same.length > 0) return [same[0]]
    return first.length > 0 && second.length > 0 ? [[first[0], second[0]] as const] : []
  })

const plateRatio = (problem: BeforeAfter, first: Repeated, second: Repeated): PlateRatio => {
  const plate = problem.plates.find(({ id }) => id === first.plate)
  const ofPlate = plate === undefined ? 0 : plateUncertainty(plate)
  const gains = [first, second].map((one) => instrument(problem, one).gain)
  const noise = [first, second].map(
    (one) => readingSigma(instrument(problem, one), one.suctionPa) / one.suctionPa / Math.sqrt(one.count),
  )
  const ratioOf = (quantity: (suctionPa: number) => number, plateCounts: number): Ratio => {
    const powers = [first, second].map(({ suctionPa }) => steepness(quantity, suctionPa))
    const own = Math.hypot(powers[0] * noise[0], powers[1] * noise[1])
    const otherGains = Math.hypot(powers[0] * gains[0], powers[1] * gains[1])
    // One gauge: its gain moves both readings alike, and what does not divide out is only the difference of the two steepnesses.
    const sameGauge = first.instrument === second.instrument
    const gain = sameGauge ? Math.abs(powers[1] - powers[0]) * gains[0] : otherGains
    return {
      ratio: quantity(second.suctionPa) / quantity(first.suctionPa),
      uncertainty: Math.hypot(own, gain),
      uncertaintyOtherRig: Math.hypot(own, otherGains, plateCounts * Math.SQRT2 * ofPlate),
    }
  }
  const suction = ratioOf((suctionPa) => suctionPa, 0)
  if (plate === undefined) return { plate: null, suction, airflow: null, airPower: null }
  return {
    plate: plate.id,
    suction,
    airflow: ratioOf((suctionPa) => plateFlow(plate, suctionPa, standardAir).airflowM3PerS, 1),
    airPower: ratioOf((suctionPa) => plateFlow(plate, suctionPa, standardAir).airPowerW, 1),
  }
}

/** Derivative of the logarithm by the logarithm: 1.5 for air power, less what the air's expansion takes. */
const steepness = (quantity: (suctionPa: number) => number, suctionPa: number): number =>
  Math.log(quantity(suctionPa * Math.exp(logStep)) / quantity(suctionPa * Math.exp(-logStep))) / (2 * logStep)

const instrument = ({ instruments }: BeforeAfter, reading: PlateReading): Instrument => {
  const found = instruments.find(({ id }) => id === reading.instrument)
  if (found === undefined) throw new RangeError(`no instrument ${reading.instrument}`)
  return found
}

const meanRatio = (ratios: readonly Ratio[]): Ratio | null => {
  if (ratios.length === 0) return null
  const weights = ratios.map(({ uncertainty }) => Math.max(uncertainty, 1e-9) ** -2)
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const log = ratios.reduce((sum, { ratio }, i) => sum + weights[i] * Math.log(ratio), 0) / total
  const otherRig = Math.min(...ratios.map(({ uncertaintyOtherRig }) => uncertaintyOtherRig))
  return { ratio: Math.exp(log), uncertainty: total ** -0.5, uncertaintyOtherRig: otherRig }
}

/** Seeded draws: one factor for each plate and gauge in both sessions, and noise of its own for each reading. */
const peakRatio = (
  problem: BeforeAfter,
  before: readonly PlateReading[],
  after: readonly PlateReading[],
): BeforeAfterRatio['peak'] => {
  const random = seededRandom(problem.seed)
  const peaks = [before, after].map((readings) => peakW(problem, readings, null))
  if (peaks[0] === null || peaks[1] === null) return null
  const logs: number[] = []
  for (let n = 0; n < draws; n++) {
    const rig = drawRig(problem, random)
    const [first, second] = [before, after].map((readings) => peakW(problem, readings, { rig, random }))
    if (first !== null && second !== null) logs.push(Math.log(second / first))
  }
  logs.sort((a, b) => a - b)
  const at = (share: number): number => Math.exp(logs[Math.floor(share * (logs.length - 1))])
  return { ratio: peaks[1] / peaks[0], low: at(0.025), high: at(0.975), seed: problem.seed }
}

type Rig = { readonly plates: ReadonlyMap<string, number>; readonly gains: ReadonlyMap<string, number> }

const drawRig = ({ plates, instruments }: BeforeAfter, random: Random): Rig => ({
  plates: new Map(plates.map((plate) => [plate.id, Math.exp(plateUncertainty(plate) * random.normal())])),
  gains: new Map(instruments.map(({ id, gain }) => [id, Math.exp(gain * random.normal())])),
})

const peakW = (
  problem: BeforeAfter,
  readings: readonly PlateReading[],
  drawn: { readonly rig: Rig; readonly random: Random } | null,
): number | null => {
  const points = readings.flatMap((reading) => {
    const plate = problem.plates.find(({ id }) => id === reading.plate)
    if (plate === undefined) return []
    const noise =
      drawn === null ? 0 : readingSigma(instrument(problem, reading), reading.suctionPa) * drawn.random.normal()
    const suctionPa = Math.max(1, reading.suctionPa * (drawn?.rig.gains.get(reading.instrument) ?? 1) + noise)
    const { airflowM3PerS } = plateFlow(plate, suctionPa, standardAir)
    return [{ suctionPa, airflowM3PerS: airflowM3PerS * (drawn?.rig.plates.get(plate.id) ?? 1) }]
  })
  const peak = airPowerPeak(points)
  return peak.kind === 'peak' ? peak.airPowerW : null
}
