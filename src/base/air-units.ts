import { problem } from './problem.ts'
import { ok, refused, type Result } from './result.ts'
import { quantityFromText } from './units.ts'

/** Quantities of an air check, each held in one SI-based unit inside the program. */
export type AirQuantity = 'pressurePa' | 'airflowM3PerS' | 'temperatureC' | 'areaM2' | 'lengthM' | 'voltageV'

/** SI value = number × factor + offset. The first text of each unit is the one shown. */
type AirUnit = { readonly texts: readonly string[]; readonly factor: number; readonly offset?: number }

/** The international foot, cubed, in one minute. */
const cubicFootPerMinute = 0.3048 ** 3 / 60
/** Conventional water and mercury: 1 mm of water is 9.80665 Pa exactly, so an inch of it 249.089 Pa; mercury at 0 °C 133.322 Pa. */
const waterMm = 9.80665
const mercuryMm = 133.322387415

const airUnits: Readonly<Record<Exclude<AirQuantity, 'lengthM' | 'voltageV'>, readonly AirUnit[]>> = {
  pressurePa: [
    { texts: ['kPa'], factor: 1000 },
    { texts: ['mbar', 'hPa'], factor: 100 },
    { texts: ['inH2O', 'inwc', 'inw', '"H2O'], factor: 25.4 * waterMm },
    { texts: ['mmH2O', 'mmwc'], factor: waterMm },
    { texts: ['cmH2O'], factor: 10 * waterMm },
    { texts: ['inHg', '"Hg'], factor: 25.4 * mercuryMm },
    { texts: ['mmHg', 'torr'], factor: mercuryMm },
    { texts: ['psi'], factor: 6894.757293168 },
    { texts: ['bar'], factor: 1e5 },
    { texts: ['Pa'], factor: 1 },
  ],
  airflowM3PerS: [
    { texts: ['L/s', 'dm3/s'], factor: 1e-3 },
    { texts: ['cfm', 'ft3/min'], factor: cubicFootPerMinute },
    { texts: ['m3/h'], factor: 1 / 3600 },
    { texts: ['m3/min'], factor: 1 / 60 },
    { texts: ['m3/s'], factor: 1 },
    { texts: ['L/min'], factor: 1e-3 / 60 },
  ],
  temperatureC: [
    { texts: ['°C', 'C', 'degC'], factor: 1 },
    { texts: ['°F', 'F', 'degF'], factor: 5 / 9, offset: (-32 * 5) / 9 },
    { texts: ['K'], factor: 1, offset: -273.15 },
  ],
  areaM2: [
    { texts: ['mm2'], factor: 1e-6 },
    { texts: ['cm2'], factor: 1e-4 },
    { texts: ['in2'], factor: 0.0254 ** 2 },
    { texts: ['m2'], factor: 1 },
  ],
}

const examples: Readonly<Record<AirQuantity, string>> = {
  pressurePa: '19.4 kPa',
  airflowM3PerS: '30 L/s',
  temperatureC: '20 °C',
  areaM2: '50 mm2',
  lengthM: '19 mm',
  voltageV: '231 V',
}

/**
 * Reads a number with its unit: `78 inH2O`, `9,6 kPa`, `76 cfm`, `68 °F`. Gives Pa, m³/s, °C, m², m or V.
 * Refuses text that is no number, a number without a unit, and a unit of another quantity. Signs are kept: what may be negative
 * is for the reader of the value to say.
 */
export const airQuantityFromText = (text: string, quantity: AirQuantity, where: string): Result<number> => {
  const match = /^\s*([+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/.exec(text)
  const example = `Write a number with its unit, such as ${examples[quantity]}`
  if (match === null) return refused(problem('not-a-number', where, `“${text}” is not a number`, example))
  const [, digits = '', unitText = ''] = match
  if (unitText === '') return refused(problem('unit-missing', where, `“${text.trim()}” has no unit`, example))
  if (quantity === 'lengthM' || quantity === 'voltageV') return quantityFromText(text, quantity, where)
  const unit = unitNamed(quantity, unitText)
  if (unit === undefined) {
    const known = airUnits[quantity].map(({ texts: [shown] }) => shown).join(', ')
    const what = `“${unitText}” is not a unit known here for ${quantityNames[quantity]}`
    return refused(problem('wrong-unit', where, what, `Use one of ${known}`))
  }
  return ok(Number(digits.replace(',', '.').replace('−', '-')) * unit.factor + (unit.offset ?? 0))
}

/** A value held in the program's unit, in another one: `inAirUnit(9574, 'pressurePa', 'inH2O')`. Throws for a unit that is not known. */
export const inAirUnit = (value: number, quantity: keyof typeof airUnits, unitText: string): number => {
  const unit = unitNamed(quantity, unitText)
  if (unit === undefined) throw new RangeError(`${unitText} is no unit of ${quantity}`)
  return (value - (unit.offset ?? 0)) / unit.factor
}

const quantityNames: Readonly<Record<keyof typeof airUnits, string>> = {
  pressurePa: 'a pressure',
  airflowM3PerS: 'an airflow',
  temperatureC: 'a temperature',
  areaM2: 'an area',
}

const unitNamed = (quantity: keyof typeof airUnits, text: string): AirUnit | undefined =>
  airUnits[quantity].find(({ texts }) => texts.some((one) => plain(one) === plain(text)))

/** Case, spaces, raised and lowered figures and a sign of degree make no difference. */
const plain = (text: string): string =>
  text.replace(/[\s°]/g, '').replace('₂', '2').replace('²', '2').replace('³', '3').toLowerCase()
