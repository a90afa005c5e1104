/** What the quick formula takes. Money in minor units, shares 0 to 1. */
export type QuickDeal = {
  /** Chance that it can be mended. */
  readonly repairable: number
  /** What such machines did sell at, mended and cleaned. */
  readonly saleMinor: number
  readonly feeShare: number
  readonly partsMinor: number
  readonly consumablesMinor: number
  readonly comebackShare: number
  /** Hours of bench and selling when it is mended. */
  readonly hours: number
  readonly hourMinor: number
  /** What its parts fetch when it cannot be mended. */
  readonly sparesMinor: number
  readonly breakHours: number
  readonly travelMinor: number
}

/**
 * The most to pay by the trade's quick formula: chance of repair × (sale less fee, parts, consumables, comebacks, hours)
 * + the rest × (spares less hours of breaking) − travel. Minor units, not rounded; below zero means not even for nothing.
 */
export const quickCeiling = (deal: QuickDeal): number => {
  const { repairable, saleMinor, feeShare, partsMinor, consumablesMinor, comebackShare, hours, hourMinor } = deal
  const mended =
    saleMinor * (1 - feeShare) - partsMinor - consumablesMinor - comebackShare * saleMinor - hourMinor * hours
  const broken = deal.sparesMinor - hourMinor * deal.breakHours
  return repairable * mended + (1 - repairable) * broken - deal.travelMinor
}
