import {
  airPowerPeak,
  explainAir,
  plainPlate,
  plateFlow,
  roomAirOf,
  standardSuctionPa,
  type AirFit,
} from '../../engines/airflow/index.ts'
import { plateOf, removedBy, wayOf, type NotedReading } from './air-fit.ts'
import type { AirMachine } from './air-machine.ts'
import { openingText } from './air-text.ts'
import type { AirBandPoint, AirCurveView, AirFlowPoint, AirPointView } from './air-view.ts'
import { standardRoom } from './standard-room.ts'

const standardAir = roomAirOf(standardRoom)
/** Holes from sealed to as good as open, so that the curve is drawn evenly. */
const holesM = [0.004, 0.006, 0.008, 0.01, 0.012, 0.014, 0.016, 0.018, 0.02, 0.022, 0.025, 0.028, 0.032, 0.038, 0.05]
/** 95 % of a normal distribution. */
const twoSided = 1.959964
/** An instrument as good as exact: what the band shows is what is not known of the machine. */
const exact = { id: 'exact', measures: 'suction', gain: 1e-6, step: 1, repeatability: 1e-6, fullScale: null } as const

/**
 * The curve of the machine at one way in under one explanation: where it would lie at each hole, with limits.
 * @param fit the readings, explained by just this explanation
 */
export const airCurveOf = (
  machine: AirMachine,
  fit: AirFit,
  explanation: string,
  way: string,
  points: readonly AirPointView[],
): AirCurveView => {
  const place = wayOf(machine, way)
  const plates = holesM.map((diameterM) => ({
    ...plainPlate(`curve ${diameterM}`, diameterM, { make: 'machined' }),
    diameterUncertaintyM: 0,
  }))
  const setUp = {
    minutes: 1,
    removed: removedBy(machine, place, []),
    mainsRatio: 1,
    air: standardRoom,
    instrument: exact.id,
    measure: 'suction',
    node: place.node,
    against: null,
  } as const
  const candidates = [null, ...plates].map((plate) => ({
    ...setUp,
    id: plate?.id ?? 'curve sealed',
    name: 'curve',
    openings: plate === null ? [] : [{ node: place.node, plate: plate.id }],
  }))
  const { next } = explainAir({
    ...fit,
    hypotheses: fit.hypotheses?.filter(({ id }) => id === explanation),
    plates: [...fit.plates, ...plates],
    instruments: [...fit.instruments, exact],
    candidates,
  })
  const band = candidates.flatMap(({ id }, at): readonly AirBandPoint[] => {
    const expected = next.find((one) => one.id === id)?.expected[0]
    return expected === undefined ? [] : [bandPoint(plates[at - 1] ?? null, expected)]
  })
  return { way, points, band, peak: airPowerPeak(band.slice(1).map(({ middle }) => middle)) }
}

type HolePlate = ReturnType<typeof plainPlate>

const bandPoint = (
  plate: HolePlate | null,
  { value, sigma }: { readonly value: number; readonly sigma: number },
): AirBandPoint => {
  const at = (suctionPa: number): AirFlowPoint => flowPoint(plate, Math.max(0, suctionPa))
  return {
    diameterM: plate?.diameterM ?? 0,
    low: at(value - twoSided * sigma),
    middle: at(value),
    high: at(value + twoSided * sigma),
  }
}

const flowPoint = (plate: HolePlate | null, suctionPa: number): AirFlowPoint => {
  if (plate === null) return { suctionPa, airflowM3PerS: 0, airPowerW: 0 }
  const { airflowM3PerS, airPowerW } = plateFlow(plate, suctionPa, standardAir)
  return { suctionPa, airflowM3PerS, airPowerW }
}

/** Readings of one way in as points of its curve, in standard air, and at nominal mains where the voltage was read. */
export const curvePoints = (
  readings: readonly NotedReading[],
  way: string,
  nominalV: number,
): readonly AirPointView[] =>
  readings.flatMap(({ reading }): readonly AirPointView[] => {
    const { read, opening, tapBefore, out, mainsV, room } = reading
    if (reading.way !== way || read.measure !== 'suction' || tapBefore !== undefined || out.length > 0) return []
    const { densityKgPerM3 } = roomAirOf(room === undefined ? standardRoom : { kind: 'room', ...room })
    const suctionPa = standardSuctionPa(read.suctionPa, densityKgPerM3, mainsV === undefined ? null : mainsV / nominalV)
    return [{ name: openingText(opening), ...flowPoint(plateOf(opening), suctionPa) }]
  })
