/** Money is an integer number of minor units (pence, cents) of one currency. Sums never leave the integers. */
export type Currency = 'GBP' | 'EUR' | 'USD' | 'AUD' | 'CAD' | 'NZD'

const minorPerMajor = 100
const symbols: Readonly<Record<Currency, string>> = {
  GBP: '£',
  EUR: '€',
  USD: '$',
  AUD: 'A$',
  CAD: 'C$',
  NZD: 'NZ$',
}

export const currencies = Object.keys(symbols) as readonly Currency[]

/** `1250, 'GBP'` → `£12.50`. Rounds to whole minor units; a minus sign stands before the symbol. */
export const moneyText = (minor: number, currency: Currency): string => {
  const rounded = Math.round(minor)
  const sign = rounded < 0 ? '−' : ''
  return `${sign}${symbols[currency]}${(Math.abs(rounded) / minorPerMajor).toFixed(2)}`
}

/** No amount is longer; a field of a file may be, and would be gone through sign by sign. */
const longestAmount = 60

/** `'12.50'`, `'£12.5'` or `'12'` → 1250. Returns null when the text is not an amount of money with at most two decimals. */
export const moneyFromText = (text: string): number | null => {
  if (text.length > longestAmount) return null
  const match = /^\s*(?:[A-Z]{0,2}[£€$])?\s*(\d{1,7})(?:[.,](\d{1,2}))?\s*$/.exec(text)
  if (match === null) return null
  const [, whole = '0', part = ''] = match
  return Number(whole) * minorPerMajor + Number(part.padEnd(2, '0'))
}
