const format = new Intl.NumberFormat('en-GB', { maximumSignificantDigits: 4 })

/** `1200, 'W'` → `1,200 W`; a figure without a unit stands alone. Four figures at most. */
export const figureText = (value: number, unit: string): string =>
  unit === '' ? format.format(value) : `${format.format(value)} ${unit}`
