import { moneyText, type Currency } from './money.ts'

/** One factor of an amount. A share is of nothing but itself: `0.85`, sound. */
export type Factor =
  | { readonly kind: 'money'; readonly minor: number }
  | { readonly kind: 'time'; readonly minutes: number; readonly hourMinor: number }
  | { readonly kind: 'share'; readonly share: number; readonly name: string }

/** How an amount comes about; `rest` is what remains of a figure that is known as a whole. */
export type Basis =
  | { readonly kind: 'product'; readonly factors: readonly Factor[] }
  | { readonly kind: 'difference'; readonly minor: number; readonly lessMinor: number }
  | { readonly kind: 'rest' }

/** One line of a sum: its amount in minor units, how it comes about, and which of the sum's sources it rests on (from 0). */
export type MoneyLine = {
  readonly name: string
  readonly minor: number
  readonly basis: Basis
  readonly sources: readonly number[]
}

/** A figure with its grounds: the lines add up to it. */
export type MoneySum = {
  readonly name: string
  readonly minor: number
  readonly lines: readonly MoneyLine[]
  readonly sources: readonly string[]
}

/** The value of a factor: minor units for money and time, 0 to 1 for a share. */
export const factorValue = (factor: Factor): number => {
  switch (factor.kind) {
    case 'money':
      return factor.minor
    case 'time':
      return (factor.minutes * factor.hourMinor) / 60
    case 'share':
      return factor.share
  }
}

/** How a line comes about in words: `£12.00 × 85 % sound × 48 % sell`, `40 min × £8.00 an hour`; empty where that says nothing new. */
export const basisText = (basis: Basis, currency: Currency): string => {
  switch (basis.kind) {
    case 'product':
      return basis.factors.length === 1 && basis.factors[0]?.kind === 'money'
        ? ''
        : basis.factors.map((factor) => factorText(factor, currency)).join(' × ')
    case 'difference':
      return `${moneyText(basis.minor, currency)} against ${moneyText(basis.lessMinor, currency)}`
    case 'rest':
      return ''
  }
}

const factorText = (factor: Factor, currency: Currency): string => {
  switch (factor.kind) {
    case 'money':
      return moneyText(factor.minor, currency)
    case 'time':
      return `${Number(factor.minutes.toFixed(1))} min × ${moneyText(factor.hourMinor, currency)} an hour`
    case 'share':
      return `${shareText(factor.share)} ${factor.name}`
  }
}

const shareText = (share: number): string => {
  if (share > 0.995 && share < 1) return 'over 99 %'
  return `${Number((share * 100).toFixed(share < 0.1 ? 1 : 0))} %`
}
