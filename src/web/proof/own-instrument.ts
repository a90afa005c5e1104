import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { quantityFromText, type Quantity } from '../../base/units.ts'
import type { LimitQuantity } from '../../facts/safety-limits.ts'
import { measuredAs, withUnit } from './measured.ts'
import type { FindingInput } from './use-finding.ts'

/** The specification of an instrument that is none of the listed ones, as written. */
export type OwnInstrument = {
  readonly name: string
  readonly percent: string
  readonly digits: string
  readonly range: string
  readonly resolution: string
  readonly testVoltage: string
  readonly testCurrent: string
}
export const noInstrument: OwnInstrument = {
  name: '',
  percent: '',
  digits: '',
  range: '',
  resolution: '',
  testVoltage: '',
  testCurrent: '',
}

type Specified = Exclude<Extract<FindingInput, { kind: 'reading' }>['instrument'], string>
/** An instrument, and the DC volts it puts on insulation where it was said. */
type Read = { readonly instrument: Specified; readonly testVoltageV: number | null }

/** Reads the specification. Refused with a problem at each field that is missing or is none. */
export const ownInstrumentOf = (own: OwnInstrument, quantity: LimitQuantity, unit: string): Result<Read> => {
  const { measures, quantity: written } = measuredAs(quantity)
  const problems: Problem[] = []
  const take = (read: Result<number>): number => {
    if (read.kind === 'ok') return read.value
    problems.push(...read.problems)
    return 0
  }
  const percent = take(numberOf(own.percent, 'own.percent', 'per cent of the reading', '3'))
  const digits = take(numberOf(own.digits, 'own.digits', 'digits', '5'))
  const maximum = take(amountOf(own.range, unit, written, 'own.range'))
  const resolution = take(amountOf(own.resolution, unit, written, 'own.resolution'))
  const testVoltageV =
    quantity === 'insulation' ? take(amountOf(own.testVoltage, 'V', 'voltageV', 'own.testVoltage')) : null
  const testCurrentA =
    quantity === 'earth-continuity' ? take(amountOf(own.testCurrent, 'mA', 'currentA', 'own.testCurrent')) : null
  if (own.name.trim() === '') problems.unshift(noName)
  if (problems.length === 0 && resolution >= maximum) problems.push(coarse)
  if (problems.length > 0) return refused(...problems)
  const accuracy = { kind: 'specification', percent, digits } as const
  const used = { measures, accuracy, ranges: [{ maximum, resolution }], testVoltageV, testCurrentA }
  return ok({ instrument: { name: own.name.trim(), functions: [used] }, testVoltageV })
}

const noName = problem('empty', 'own.name', 'The instrument has no name', 'Write make and type, or what it is')
const coarse = problem(
  'last-place-too-large',
  'own.resolution',
  'The last place is not smaller than the range',
  'Write the smallest step the display makes on that range, such as 0.01',
)

const numberOf = (text: string, where: string, what: string, example: string): Result<number> => {
  const value = Number(text.replace('%', '').replace(',', '.').trim())
  if (text.trim() !== '' && value >= 0) return ok(value)
  const mend = `Write the ${what} as in the manual, such as ${example}`
  const missing = 'Its accuracy is not whole, and no reading can be judged without it'
  return text.trim() === ''
    ? refused(problem('empty', where, missing, mend))
    : refused(problem('not-a-number', where, `“${text.trim()}” is not a number`, mend))
}

const amountOf = (text: string, unit: string, quantity: Quantity, where: string): Result<number> => {
  if (text.trim() === '') return refused(problem('empty', where, 'This is missing', 'Write it as in the manual'))
  const read = quantityFromText(withUnit(text, unit), quantity, where)
  if (read.kind === 'refused' || read.value > 0) return read
  return refused(problem('zero', where, 'This cannot be zero', 'Write it as in the manual'))
}
