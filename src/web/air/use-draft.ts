import { useState } from 'react'
import { usualGauge } from '../../facts/gauges.ts'
import type { MachineDocument } from '../../bench/contract.ts'
import type { NextGaugeView } from '../../machine/air/air-view.ts'
import type { GaugeReading } from '../../machine/air/gauge-reading.ts'
import { readStored, writeStored } from '../stored.ts'
import { useAirSheet } from './air-sheet.ts'
import type { Kept } from './draft.ts'
import { isPlaceOf, placeOf, widthMm, type Place } from './place.ts'

/** The reading being set up. */
export type Draft = {
  readonly place: Place
  readonly kept: Kept
  /** The reading of the view that this place stands for, or null: the page then knows no more of it. */
  readonly known: NextGaugeView | null
  readonly isBest: boolean
  /** Something else than the best was chosen. */
  readonly isChosen: boolean
  readonly setPlace: (change: Partial<Place>) => void
  readonly setKept: (change: Partial<Kept>) => void
  /** Keeps the place on the card although another becomes the best, so that what is being typed stays with it. */
  readonly hold: () => void
  /** Back to the best reading. */
  readonly release: () => void
}

const gaugeKey = 'thrum.gauge'

export const useDraft = (): Draft => {
  const { air, document, rig } = useAirSheet()
  const [chosen, setChosen] = useState<Place | null>(null)
  const [kept, setAllKept] = useState(() => keptFrom(document))
  const best = air.next[0]
  const place =
    chosen ??
    (best === undefined
      ? firstPlace(air.ways[0]?.id ?? '', middleOf(rig?.holes ?? [])?.diameterMm)
      : placeOf(best.reading))
  return {
    place,
    kept,
    known: air.next.find(({ reading }) => isPlaceOf(place, reading)) ?? null,
    isChosen: chosen !== null,
    isBest: best !== undefined && isPlaceOf(place, best.reading),
    setPlace: (change) => setChosen({ ...place, ...change }),
    setKept: (change) => {
      if (change.gauge !== undefined) writeStored('local', gaugeKey, change.gauge)
      setAllKept((before) => ({ ...before, ...change }))
    },
    hold: () => setChosen(place),
    release: () => setChosen(null),
  }
}

const middleOf = <T>(all: readonly T[]): T | undefined => all[Math.floor(all.length / 2)]

/** Where to begin when no reading is more telling than another. */
const firstPlace = (way: string, holeMm: number | undefined): Place => ({
  way,
  opening: holeMm === undefined ? 'sealed' : 'hole',
  holeMm: holeMm === undefined ? '' : String(holeMm),
  tapBefore: '',
  out: [],
  measure: 'suction',
})

/** Mains and weather of a reading older than this are those of another day at the bench. */
const sittingMs = 3 * 3_600_000

/** What the last reading was made with, as far as it can still hold. */
const keptFrom = ({ notes, state }: MachineDocument): Kept => {
  const last = notes.findLast(({ id, content }) => content.kind === 'gauge' && !state.struck.includes(id))
  const reading = last?.content.kind === 'gauge' ? last.content.reading : null
  const sameSitting = last !== undefined && Date.now() - Date.parse(last.at) < sittingMs
  return {
    gauge: gaugeOf(reading),
    ...plateOf(reading),
    ...(sameSitting && reading !== null ? roomOf(reading) : noRoom),
    watts: '',
    sound: reading?.read.measure === 'tone' ? String(reading.read.soundHz) : '',
  }
}

const gaugeOf = (reading: GaugeReading | null): string =>
  (reading?.read.measure === 'suction' ? reading.instrument : readStored('local', gaugeKey)) ?? usualGauge

const plateOf = (reading: GaugeReading | null): Pick<Kept, 'thicknessMm' | 'edgeMm' | 'make'> => {
  if (reading?.opening.kind !== 'hole') return { thicknessMm: '', edgeMm: '', make: 'drilled-sheet' }
  const { thicknessM, edgeRadiusM, make } = reading.opening
  return {
    thicknessMm: String(widthMm(thicknessM)),
    edgeMm: edgeRadiusM === 0 ? '' : String(widthMm(edgeRadiusM)),
    make,
  }
}

type RoomKept = Pick<Kept, 'mains' | 'barometer' | 'temperature' | 'humidity'>
const noRoom: RoomKept = { mains: '', barometer: '', temperature: '', humidity: '' }

const roomOf = ({ mainsV, room }: GaugeReading): RoomKept => ({
  mains: mainsV === undefined ? '' : String(mainsV),
  barometer: room === undefined ? '' : String(Math.round(room.barometerPa / 100)),
  temperature: room === undefined ? '' : String(Math.round(room.temperatureC * 10) / 10),
  humidity: room === undefined ? '' : String(Math.round(room.relativeHumidity * 100)),
})
