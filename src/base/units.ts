import { problem } from './problem.ts'
import { ok, refused, type Result } from './result.ts'

/** Quantities a bench writes down, each held in one SI-based unit inside the program. */
export type Quantity =
  'resistanceOhm' | 'capacitanceF' | 'voltageV' | 'powerW' | 'currentA' | 'massKg' | 'durationMin' | 'lengthM'

type Unit = { readonly text: string; readonly factor: number }

/** For each quantity the units it may be written in; the first is meant when no unit is written. */
const units: Readonly<Record<Quantity, readonly Unit[]>> = {
  resistanceOhm: prefixed('Ω', { m: 1e-3, '': 1, k: 1e3, M: 1e6 }, ['ohm', 'ohms', 'Ω', 'R']),
  capacitanceF: prefixed('F', { µ: 1e-6, u: 1e-6, n: 1e-9, p: 1e-12 }, []),
  voltageV: prefixed('V', { '': 1, m: 1e-3 }, []),
  powerW: prefixed('W', { '': 1, k: 1e3 }, []),
  currentA: prefixed('A', { '': 1, m: 1e-3, µ: 1e-6, u: 1e-6 }, []),
  massKg: [
    { text: 'kg', factor: 1 },
    { text: 'g', factor: 1e-3 },
    { text: 'lb', factor: 0.45359237 },
  ],
  durationMin: [
    { text: 'min', factor: 1 },
    { text: 's', factor: 1 / 60 },
    { text: 'h', factor: 60 },
  ],
  lengthM: [
    { text: 'm', factor: 1 },
    { text: 'cm', factor: 1e-2 },
    { text: 'mm', factor: 1e-3 },
    { text: 'ft', factor: 0.3048 },
    { text: 'in', factor: 0.0254 },
  ],
}

function prefixed(
  base: string,
  prefixes: Readonly<Record<string, number>>,
  aliases: readonly string[],
): readonly Unit[] {
  const names = [base, ...aliases]
  return Object.entries(prefixes)
    .sort((a, b) => Number(b[1] === 1) - Number(a[1] === 1))
    .flatMap(([prefix, factor]) => names.map((name) => ({ text: `${prefix}${name}`, factor })))
    .concat(
      Object.entries(prefixes).flatMap(([prefix, factor]) =>
        prefix === '' || base !== 'Ω' ? [] : [{ text: prefix, factor }],
      ),
    )
}

/**
 * Reads a number with its unit: `4.7`, `4,7 Ω`, `4.7k`, `220 nF`, `1 h`.
 * Gives the value in the quantity's own unit. Refuses text that is no number, a negative number, and a unit of another quantity.
 */
export const quantityFromText = (text: string, quantity: Quantity, where: string): Result<number> => {
  const match = /^\s*([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(|[^\s\d.,].*?)\s*$/.exec(text)
  const known = units[quantity]
  if (match === null) {
    return refused(
      problem(
        'not-a-number',
        where,
        `“${text}” is not a number`,
        `Write a number with its unit, such as 4.7 ${known[0]?.text ?? ''}`,
      ),
    )
  }
  const [, digits = '', unitText = ''] = match
  const unit = unitText === '' ? known[0] : known.find((candidate) => candidate.text === normalUnit(unitText))
  if (unit === undefined) return refused(wrongUnit(unitText, quantity, where))
  const value = Number(digits.replace(',', '.')) * unit.factor
  if (value < 0) return refused(problem('negative', where, `${text} is negative`, `Write zero or more`))
  return ok(value)
}

const normalUnit = (text: string): string => text.replace('μ', 'µ').replace('Ω', 'Ω')

const wrongUnit = (text: string, quantity: Quantity, where: string) => {
  const other = (Object.keys(units) as Quantity[]).find((name) =>
    units[name].some((unit) => unit.text === normalUnit(text)),
  )
  const wanted = [...new Set(units[quantity].map((unit) => unit.text))].join(', ')
  const what =
    other === undefined
      ? `“${text}” is not a unit known here`
      : `${text} is a unit of ${quantityNames[other]}, and this is ${quantityNames[quantity]}`
  return problem('wrong-unit', where, what, `Use one of ${wanted}`)
}

const quantityNames: Readonly<Record<Quantity, string>> = {
  resistanceOhm: 'resistance',
  capacitanceF: 'capacitance',
  voltageV: 'voltage',
  powerW: 'power',
  currentA: 'current',
  massKg: 'mass',
  durationMin: 'time',
  lengthM: 'length',
}

/** A resistance as a bench would write it: `0.21 Ω`, `4.7 Ω`, `12 kΩ`, `open` for an infinite one. Two significant figures or one decimal. */
export const resistanceText = (resistanceOhm: number): string => {
  if (!Number.isFinite(resistanceOhm)) return 'open'
  if (resistanceOhm >= 1e6) return `${figures(resistanceOhm / 1e6)} MΩ`
  if (resistanceOhm >= 1e3) return `${figures(resistanceOhm / 1e3)} kΩ`
  return `${figures(resistanceOhm)} Ω`
}

const figures = (value: number): string =>
  value < 1 ? value.toFixed(2) : value < 10 ? value.toFixed(1) : value.toFixed(0)
