import { advertSchema, type Advert, type AdvertInput, type BuyingTerms } from '../../src/machine/buying/index.ts'
import type { Blueprint } from '../../src/blueprint/schema.ts'
import { defaultCosts } from '../../src/machine/costs.ts'

/** A dead machine of a blueprint in an advert, 8 km away for 15.00. */
export const advertOf = (blueprint: Blueprint, own: Partial<AdvertInput> = {}): Advert =>
  advertSchema.parse({ blueprint: blueprint.id, complaints: ['dead'], askingMinor: 1500, distanceKm: 8, ...own })

export const termsOf = (blueprint: Blueprint, own: Partial<BuyingTerms> = {}): BuyingTerms => ({
  blueprint,
  hourMinor: 800,
  costs: defaultCosts('UK'),
  attitude: 'average',
  ...own,
})
