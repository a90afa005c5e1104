import { resistanceText } from '../base/units.ts'
import type { Blueprint, Check, Cover, MeterCheck } from '../blueprint/schema.ts'
import type { PredictedOhm } from '../engines/belief/index.ts'
import { powerMeter } from '../facts/power-meter.ts'
import type { ExitId } from './view.ts'

/** Names of things as a bench would say them. */
export const exitNames: Readonly<Record<ExitId, string>> = {
  'sell-working': 'Sell working',
  'sell-for-spares': 'Sell for spares or repair',
  'break-for-parts': 'Break for parts',
  scrap: 'Scrap',
}

export const nothingWrong = 'Nothing wrong'

/** A suspect's name: its faults joined, or "Nothing wrong". */
export const suspectName = (blueprint: Blueprint, set: readonly number[]): string =>
  set.length === 0 ? nothingWrong : set.map((index) => blueprint.faults[index].name).join(' + ')

/** Ninety per cent of readings lie in a band this many standard deviations either way. */
const ninety = 1.645

/** What leads and the touch of the probes add on a cheap meter, at most; below this nothing is told apart. Ohm. */
const touchOhm = 0.3

/** What a meter would show, as a band in words: `3.4 to 17 Ω`, `under 0.5 Ω`, `open`. Nine machines in ten lie within. */
export const bandText = ({ resistanceOhm, sdOhm }: PredictedOhm): string => {
  if (!Number.isFinite(resistanceOhm)) return 'open'
  const factor = Math.exp(resistanceOhm > 0 ? (ninety * sdOhm) / resistanceOhm : 0)
  return ohmRangeText(resistanceOhm / factor, resistanceOhm * factor + touchOhm)
}

/** What a meter shows on a capacitor. */
export const chargingText = 'rises, then open'

/** A range of ohms in words. Below about one ohm a cheap meter tells nothing apart, so only the upper end is named. */
export const ohmRangeText = (fromOhm: number, toOhm: number): string => {
  if (!Number.isFinite(toOhm)) return fromOhm > 0 ? `above ${resistanceText(fromOhm)}` : 'a number'
  if (toOhm < 1.2) return `under ${resistanceText(Math.ceil(toOhm * 10) / 10)}`
  const [low, high] = [resistanceText(fromOhm), resistanceText(toOhm)]
  if (low === high) return `about ${low}`
  const [lowNumber, lowUnit] = low.split(' ')
  return lowUnit === high.split(' ')[1] ? `${lowNumber} to ${high}` : `${low} to ${high}`
}

/** What to set before a check, besides taking covers off: plug, controls, connectors. */
export const setUpLines = (blueprint: Blueprint, check: Check): string[] => {
  const isRun = check.kind === 'run' || check.kind === 'air'
  const controls = Object.entries(check.controls ?? {}).map(([id, position]) => {
    const control = blueprint.controls.find((c) => c.id === id)
    return `${control?.name ?? id}: ${position}`
  })
  const plug = isRun ? 'Covers on, RCD socket of 30 mA or less' : 'Plug out of the socket, in sight'
  return [
    plug,
    ...(check.kind !== 'meter' && check.scale !== undefined ? [`${powerMeter.name} between plug and socket`] : []),
    ...(check.kind === 'look' ? [] : controls),
    ...(check.kind === 'meter' ? unplugLines(blueprint, check) : []),
  ]
}

const unplugLines = (blueprint: Blueprint, check: MeterCheck): string[] => {
  const parts = new Set(check.unplug.map((id) => blueprint.circuit.find((element) => element.id === id)?.part ?? id))
  const names = [...parts].map((id) => blueprint.parts.find((part) => part.id === id)?.name ?? id)
  return names.map((name) => `Pull one lead off: ${name.toLowerCase()}`)
}

/** Fixings of a cover: `4 × screw 4 × 16, 2 × clip`; `no fixings` when it just comes off. */
export const fixingsText = (cover: Cover): string =>
  cover.fixings.length === 0 ? 'no fixings' : cover.fixings.map(({ count, kind }) => `${count} × ${kind}`).join(', ')
