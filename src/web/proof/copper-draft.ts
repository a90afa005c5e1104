import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { flexibleConductors } from '../../facts/conductors.ts'
import type { MeasuredCopper } from '../../machine/proof/cable-copper.ts'
import { lastUsed } from './kept.ts'
import { withUnit } from './measured.ts'

/** A measured cable as it is being written. */
export type CopperDraft = {
  readonly size: string
  readonly length: string
  readonly resistance: string
  readonly temperature: string
  readonly instrument: string
  readonly hasContacts: boolean
}

/** What stands in the form at first: the size of the machine's lead, a room at 20 °C, the meter last used. */
export const copperDraftOf = (size: string | undefined): CopperDraft => ({
  size: size ?? `${flexibleConductors[0].areaMm2} mm2`,
  length: '',
  resistance: '',
  temperature: '20',
  instrument: lastUsed('resistance').find((id) => id !== 'own') ?? 'budget-multimeter',
  hasContacts: false,
})

/** The cable as it was measured; refused where a field is empty or the temperature is none. The engines read the amounts. */
export const measuredCopper = (draft: CopperDraft): Result<MeasuredCopper> => {
  const { size, length, resistance, temperature, instrument, hasContacts } = draft
  const temperatureC = Number(temperature.replace(',', '.').replace('−', '-').trim())
  const problems = [
    ...(length.trim() === '' ? [empty('lengthM', 'Measure it from end to end, such as 8')] : []),
    ...(resistance.trim() === '' ? [empty('reading', 'Type what the meter shows, such as 0.21')] : []),
    ...(temperature.trim() === '' || !Number.isFinite(temperatureC) ? [noTemperature(temperature)] : []),
  ]
  if (problems.length > 0) return refused(...problems)
  const amounts = { length: withUnit(length, 'm'), resistance: withUnit(resistance, 'Ω') }
  return ok({ size, ...amounts, instrument, conductors: 1, temperatureC, hasContacts })
}

const empty = (where: string, mend: string) => problem('empty', where, 'This is missing', mend)
const noTemperature = (text: string) =>
  problem('not-a-temperature', 'temperatureC', `“${text}” is not a temperature`, 'Write degrees Celsius, such as 12')
