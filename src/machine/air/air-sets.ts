import type { JobEvent } from '../job.ts'
import type { NotedReading } from './air-fit.ts'

/** Gauge readings of one state of the machine: those between two repairs. */
export type AirSet = {
  readonly readings: readonly NotedReading[]
  /** How many repairs came before it. */
  readonly repairs: number
}

/** The gauge readings of a job in sets, in their order; a repair ends a set. Sets without a reading are left out. */
export const airSetsOf = (events: readonly JobEvent[]): readonly AirSet[] => {
  const sets: AirSet[] = []
  let repairs = 0
  for (const event of events) {
    if (event.kind === 'repaired') repairs += 1
    if (event.kind !== 'gauge') continue
    const noted = { note: event.note, reading: event.reading }
    const last = sets.at(-1)
    if (last !== undefined && last.repairs === repairs)
      sets[sets.length - 1] = { ...last, readings: [...last.readings, noted] }
    else sets.push({ readings: [noted], repairs })
  }
  return sets
}
