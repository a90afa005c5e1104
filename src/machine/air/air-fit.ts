import { airFaultWeights } from '../../facts/air-faults.ts'
import { openEnd } from '../../facts/air-rig.ts'
import {
  plainPlate,
  usualInstruments,
  type AirCandidate,
  type AirFit,
  type AirReading,
  type Instrument,
  type Plate,
} from '../../engines/airflow/index.ts'
import { airExplanations, airParameters, lowMainsId, soundId, type AirExplanationKind } from './air-explanations.ts'
import { withoutPart, type AirMachine } from './air-machine.ts'
import type { PathOfWay } from './air-paths.ts'
import { setUpText } from './air-text.ts'
import type { GaugeOpening, GaugeReading } from './gauge-reading.ts'
import { standardRoom } from './standard-room.ts'

/** A reading with the note it stands in. */
export type NotedReading = { readonly note: string; readonly reading: GaugeReading }

/** A reading that could be made, with an id and words for it. */
export type GaugeCandidate = {
  readonly id: string
  readonly name: string
  readonly minutes: number
  readonly reading: Omit<GaugeReading, 'read'>
}

/** How likely each explanation is before the readings, by its id. */
export type AirWeights = Readonly<Record<string, number>>

/**
 * What the airflow engine needs to explain gauge readings of one machine: its network, the readings as set-ups of it, and what may be
 * wrong with it. Readings of the motor's pitch become its speed over that of a sound one.
 */
export const airFitOf = (
  machine: AirMachine,
  mainsV: number,
  readings: readonly NotedReading[],
  weights: AirWeights,
  candidates: readonly GaugeCandidate[] = [],
): AirFit => {
  const all = [...readings.map(({ reading }) => reading), ...candidates.map(({ reading }) => reading)]
  const mainsKnown = readings.every(({ reading }) => reading.mainsV !== undefined)
  const explanations = airExplanations(machine, mainsKnown)
  return {
    network: { air: standardRoom, losses: 'local-density', branches: [...machine.branches] },
    leaks: machine.places.map(({ id, name, node }) => ({ id, name, node })),
    bleeds: [],
    plates: platesOf(all),
    instruments: instrumentsOf(all),
    readings: readings.map(({ note, reading }) => readingOf(machine, mainsV, note, reading)),
    candidates: candidates.map(({ id, name, minutes, reading }): AirCandidate => ({
      ...setupOf(machine, mainsV, reading, id),
      name,
      minutes,
      ...measureOf(machine, reading),
    })),
    names: Object.fromEntries(machine.paths.sections.map(({ part, name }) => [part, name])),
    parameters: [...airParameters(machine, mainsKnown)],
    hypotheses: explanations.map((one) => ({ ...hypothesisOf(one), weight: weightOf(one.id, weights) })),
    sampling: null,
  }
}

const hypothesisOf = ({ id, kind, name, priors }: AirExplanationKind) => ({ id, kind, name, priors: { ...priors } })

/** Low mains are no fault of the machine: they come to a share of the sound ones. */
const weightOf = (id: string, weights: AirWeights): number => {
  const { sound } = airFaultWeights
  const low = airFaultWeights['low-mains']
  const ofSound = weights[soundId] ?? 0
  if (id === lowMainsId) return (ofSound * low) / sound
  return weights[id] ?? 0
}

const instrumentsOf = (readings: readonly Pick<GaugeReading, 'instrument'>[]): Instrument[] => {
  const used = new Set(readings.map(({ instrument }) => instrument))
  const known = usualInstruments.filter(({ id }) => used.has(id))
  // An engine without instruments has nothing to read with, even before the first reading.
  return known.length > 0 ? [...known] : [usualInstruments[0]]
}

/** The plate of an opening: one hole is one plate in all readings, so that its error is the same in all. */
export const plateOf = (opening: GaugeOpening): Plate | null => {
  switch (opening.kind) {
    case 'sealed':
      return null
    case 'open':
      return plainPlate('open', openEnd.diameterM, { edgeRadiusM: openEnd.edgeRadiusM, make: openEnd.make })
    case 'hole': {
      const { diameterM, thicknessM, edgeRadiusM, make } = opening
      const id = `${diameterM} ${thicknessM} ${edgeRadiusM} ${make}`
      return plainPlate(id, diameterM, { thicknessM, edgeRadiusM, make })
    }
  }
}

const platesOf = (readings: readonly Pick<GaugeReading, 'opening'>[]): Plate[] => {
  const plates = new Map<string, Plate>()
  for (const { opening } of readings) {
    const plate = plateOf(opening)
    if (plate !== null) plates.set(plate.id, plate)
  }
  return [...plates.values()]
}

/** Whether a reading was made at a way in that this machine has: one read by another blueprint before may have been made elsewhere. */
export const isWayOf = (
  { paths }: AirMachine,
  { way, tapBefore }: Pick<GaugeReading, 'way' | 'tapBefore'>,
): boolean => {
  const found = paths.ways.find((one) => one.way.id === way)
  return found !== undefined && (tapBefore === undefined || tapsOf(found, paths).some(({ part }) => part === tapBefore))
}

/** Parts of a way before which suction can be tapped: from the second that the air loses something in, up to the fan. */
export const tapsOf = ({ parts }: PathOfWay, { sections }: AirMachine['paths']): AirMachine['paths']['sections'] => {
  const inOrder = parts.flatMap((id) => sections.filter(({ part }) => part === id))
  return inOrder.slice(1, inOrder.findIndex(({ section }) => section.kind === 'fan') + 1)
}

/** The way in of a reading. Throws for one that the blueprint does not have: the rules at the door refuse it. */
export const wayOf = ({ paths, blueprint }: AirMachine, id: string): PathOfWay => {
  const found = paths.ways.find(({ way }) => way.id === id)
  if (found === undefined) throw new RangeError(`${blueprint.id} has no way in “${id}”`)
  return found
}

const setupOf = (machine: AirMachine, mainsV: number, reading: Omit<GaugeReading, 'read'>, id: string) => {
  const way = wayOf(machine, reading.way)
  const plate = plateOf(reading.opening)
  return {
    id,
    name: setUpText(reading, machine.blueprint),
    removed: removedBy(machine, way, reading.out),
    openings: plate === null ? [] : [{ node: way.node, plate: plate.id }],
    mainsRatio: reading.mainsV === undefined ? null : reading.mainsV / mainsV,
    air: reading.room === undefined ? null : ({ kind: 'room', ...reading.room } as const),
    instrument: reading.instrument,
  }
}

/** Branches that are not there: sections the way does not go through, parts left out, the free ways of parts left in, leaks of parts that are off. */
export const removedBy = (
  { paths, places, comesOut }: AirMachine,
  way: PathOfWay,
  out: readonly string[],
): string[] => {
  const isOnWay = (part: string): boolean => way.parts.includes(part)
  const onSomeWay = (part: string): boolean => paths.ways.some(({ parts }) => parts.includes(part))
  return [
    ...paths.sections.filter(({ part }) => !isOnWay(part) || out.includes(part)).map(({ part }) => part),
    ...comesOut.filter((part) => !isOnWay(part) || !out.includes(part)).map(withoutPart),
    ...places.filter(({ part }) => onSomeWay(part) && !isOnWay(part)).map(({ id }) => id),
  ]
}

const readingOf = (machine: AirMachine, mainsV: number, note: string, reading: GaugeReading): AirReading => {
  const setup = setupOf(machine, mainsV, reading, note)
  const { read } = reading
  switch (read.measure) {
    case 'suction': {
      const node = nodeOf(machine, reading.way, reading.tapBefore)
      return { ...setup, measure: 'suction', node, against: null, value: read.suctionPa }
    }
    case 'airflow':
      return { ...setup, measure: 'airflow', value: read.airflowM3PerS }
    case 'tone':
      return { ...setup, measure: 'speed', branch: machine.fanPart, value: read.toneHz / read.soundHz }
  }
}

const measureOf = (machine: AirMachine, { way, tapBefore, instrument }: Omit<GaugeReading, 'read'>) => {
  const used = usualInstruments.find(({ id }) => id === instrument)
  switch (used?.measures ?? 'suction') {
    case 'suction':
      return { measure: 'suction', node: nodeOf(machine, way, tapBefore), against: null } as const
    case 'airflow':
      return { measure: 'airflow' } as const
    case 'speed':
      return { measure: 'speed', branch: machine.fanPart } as const
  }
}

const nodeOf = (machine: AirMachine, way: string, tapBefore: string | undefined): string =>
  tapBefore === undefined ? wayOf(machine, way).node : `before ${tapBefore}`
