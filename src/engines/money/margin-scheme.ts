import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'

/** Something bought and sold under the scheme. What repairs and overheads cost is no part of its purchase price. */
export type MarginItem = { readonly id: string; readonly purchaseMinor: number; readonly saleMinor: number }

export type ItemMargin = {
  readonly id: string
  /** Sale less purchase, minor units; below zero is a loss. */
  readonly marginMinor: number
  /** Value added tax in the margin, rounded down to whole minor units; nil on a loss. */
  readonly vatMinor: number
}

/** Goods of one accounting period taken all together: what each bought one cost, what each sold one brought. */
export type MarginPeriod = {
  readonly id: string
  readonly purchasesMinor: readonly number[]
  readonly salesMinor: readonly number[]
}

export type PeriodMargin = ItemMargin & {
  /** By how much purchases outran sales: added to the purchases of the next period. */
  readonly carriedMinor: number
}

const tenths = 10
const hundredPercent = 1000

/**
 * The tax that is in an amount, rounded down to whole minor units: r ÷ (1 + r) of it, a sixth at 20 %. Nil below zero.
 * @param ratePercent at most one decimal
 */
export const vatWithin = (amountMinor: number, ratePercent: number): number => {
  const rate = Math.round(ratePercent * tenths)
  return amountMinor <= 0 ? 0 : Math.floor((amountMinor * rate) / (hundredPercent + rate))
}

/**
 * Margin of each item by itself (Directive 2006/112/EC articles 315 and 317; VAT (Special Provisions) Order 1995 article 12):
 * tax is in the margin, a loss on one takes nothing off another. Information, not advice.
 */
export const itemMargins = (items: readonly MarginItem[], ratePercent: number): readonly ItemMargin[] =>
  items.map(({ id, purchaseMinor, saleMinor }) => {
    const marginMinor = saleMinor - purchaseMinor
    return { id, marginMinor, vatMinor: vatWithin(marginMinor, ratePercent) }
  })

/**
 * Margin of all goods of a period together (article 318 of the Directive; article 13 of the Order): sales of the period less its
 * purchases; what purchases outran sales by is carried into the next period's purchases. Information, not advice.
 * @param openingMinor what the stock cost that was there when this began
 * @param itemLimitMinor dearest item that may be reckoned so; null where there is no limit
 * @returns one answer a period, in order; refused where a bought item is dearer than the limit
 */
export const globalMargins = (
  periods: readonly MarginPeriod[],
  ratePercent: number,
  openingMinor: number,
  itemLimitMinor: number | null,
): Result<readonly PeriodMargin[]> => {
  const problems = itemLimitMinor === null ? [] : tooDear(periods, itemLimitMinor)
  if (problems.length > 0) return refused(...problems)
  let carried = openingMinor
  return ok(
    periods.map(({ id, purchasesMinor, salesMinor }) => {
      const marginMinor = total(salesMinor) - total(purchasesMinor) - carried
      carried = Math.max(0, -marginMinor)
      return { id, marginMinor, vatMinor: vatWithin(marginMinor, ratePercent), carriedMinor: carried }
    }),
  )
}

const total = (amounts: readonly number[]): number => amounts.reduce((sum, minor) => sum + minor, 0)

const tooDear = (periods: readonly MarginPeriod[], limitMinor: number): readonly Problem[] =>
  periods.flatMap(({ id, purchasesMinor }, i) =>
    purchasesMinor.flatMap((minor, k) =>
      minor <= limitMinor
        ? []
        : [
            problem(
              'too-dear-for-global',
              `do.periods.${i}.purchasesMinor.${k}`,
              `An item of ${id} cost ${minor} minor units, and only those up to ${limitMinor} may be taken together`,
              'Reckon it by itself under items',
            ),
          ],
    ),
  )
