/** Where a machine comes from, in the trade's words. */
export const whereFrom = {
  classified: 'Local classified advert',
  'boot-sale': 'Car-boot sale',
  'tip-shop': 'Shop of a recycling site',
  given: 'Given',
  clearance: 'House clearance or auction lot',
  workplace: 'Clear-out of a workplace',
  other: 'Elsewhere',
} as const

export type WhereFrom = keyof typeof whereFrom
export const sourceIds = Object.keys(whereFrom) as [WhereFrom, ...WhereFrom[]]
