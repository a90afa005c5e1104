import { moneyText, type Currency } from '../../base/money.ts'

/** A chance as one would say it at a car-boot sale: `1 time in 4`, `7 times in 10`. */
export const timesText = (chance: number): string => {
  if (chance < 0.01) return 'hardly ever'
  if (chance > 0.99) return 'nearly always'
  if (chance <= 0.4) return `1 time in ${Math.round(1 / chance)}`
  const tenths = Math.round(10 * chance)
  return tenths === 5 ? '1 time in 2' : `${Math.min(9, tenths)} times in 10`
}

/** `Loses money 1 time in 4`. */
export const losesText = (chance: number): string =>
  chance < 0.01 ? 'Hardly ever loses money' : `${chance > 0.99 ? 'Nearly always loses' : 'Loses'} money${chance > 0.99 ? '' : ` ${timesText(chance)}`}` // prettier-ignore

/** What could be paid after an answer: `then up to £12.00`, `then leave it`. */
export const thenText = (ceilingMinor: number, currency: Currency): string =>
  ceilingMinor < 0 ? 'leave it' : `up to ${moneyText(Math.floor(ceilingMinor), currency)}`
