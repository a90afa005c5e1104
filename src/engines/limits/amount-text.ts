import type { LimitQuantity } from '../../facts/safety-limits.ts'

/** What is measured: a limit's quantity, or the plain resistance of a cable. */
export type Measurand = LimitQuantity | 'resistance'
export type UnitName = 'ohm' | 'ampere' | 'volt'

/** The unit in which a quantity is held. */
export const unitOf = (quantity: Measurand): UnitName => {
  switch (quantity) {
    case 'earth-continuity':
    case 'insulation':
    case 'resistance':
      return 'ohm'
    case 'protective-conductor-current':
    case 'touch-current':
    case 'substitute-leakage':
      return 'ampere'
    case 'plug-pin-voltage':
      return 'volt'
  }
}

/** What a person at the bench calls it. */
export const quantityNames: Readonly<Record<Measurand, string>> = {
  'earth-continuity': 'protective conductor',
  insulation: 'insulation',
  resistance: 'resistance',
  'protective-conductor-current': 'protective conductor current',
  'touch-current': 'touch current',
  'substitute-leakage': 'substitute leakage',
  'plug-pin-voltage': 'voltage between the pins',
}

/** An amount as a bench would write it: `0.42 Ω`, `2.5 MΩ`, `0.28 mA`, `34 V`. Three figures at most, no noughts at the end. */
export const amountText = (value: number, unit: UnitName): string => {
  const sign = value < 0 ? '−' : ''
  const size = Math.abs(value)
  switch (unit) {
    case 'ohm':
      if (size >= 1e6) return `${sign}${figures(size / 1e6)} MΩ`
      if (size >= 1e3) return `${sign}${figures(size / 1e3)} kΩ`
      return `${sign}${figures(size)} Ω`
    case 'ampere':
      return size < 1 ? `${sign}${figures(size * 1000)} mA` : `${sign}${figures(size)} A`
    case 'volt':
      return `${sign}${figures(size)} V`
  }
}

/** Three significant figures, but nothing below a thousandth; no exponent and no trailing noughts. */
export const figures = (value: number): string => {
  if (value === 0) return '0'
  const places = Math.max(0, Math.min(3, 2 - Math.floor(Math.log10(Math.abs(value)))))
  return String(Number(value.toFixed(places)))
}
