import { readStored, writeStored } from '../stored.ts'
import type { Measures } from '../../facts/test-instruments.ts'

/** What this device remembers of the instruments used on it. */
const lastKey = (measures: Measures): string => `thrum.proof-instrument.${measures}`
const checkedKey = (instrument: string): string => `thrum.instrument-checked.${instrument}`
const ownKey = (measures: Measures): string => `thrum.own-instrument.${measures}`

/** Ids of instruments for this kind of measurement, the one last used first. */
export const lastUsed = (measures: Measures): readonly string[] => listFrom(readStored('local', lastKey(measures)))

export const keepLastUsed = (measures: Measures, instrument: string): void => {
  const others = lastUsed(measures).filter((id) => id !== instrument)
  writeStored('local', lastKey(measures), JSON.stringify([instrument, ...others].slice(0, mostKept)))
}
const mostKept = 10

/** The day an instrument was last checked, as 2026-03-14; empty where it was never said. */
export const lastChecked = (instrument: string): string => readStored('local', checkedKey(instrument)) ?? ''

export const keepLastChecked = (instrument: string, day: string): void =>
  writeStored('local', checkedKey(instrument), day === '' ? null : day)

/** The specification of one's own instrument as it was last written, field by field. */
export const keptOwn = (measures: Measures): Readonly<Record<string, string>> => {
  const parsed = parsedFrom(readStored('local', ownKey(measures)))
  if (typeof parsed !== 'object' || parsed === null) return {}
  return Object.fromEntries(Object.entries(parsed).filter(([, text]) => typeof text === 'string'))
}

export const keepOwn = (measures: Measures, own: Readonly<Record<string, string>>): void =>
  writeStored('local', ownKey(measures), JSON.stringify(own))

const listFrom = (text: string | null): readonly string[] => {
  const parsed = parsedFrom(text)
  return Array.isArray(parsed) ? parsed.filter((one) => typeof one === 'string') : []
}

const parsedFrom = (text: string | null): unknown => {
  try {
    return text === null ? null : (JSON.parse(text) as unknown)
  } catch {
    return null
  }
}
