import type { Currency } from '../base/money.ts'
import type { Source } from '../base/source.ts'
import { regions, type Region } from './regions.ts'
import { comebackMin, comebackShare, exitCosts } from './trade.ts'

/** What buying, mending and selling cost besides the work on the machine itself. Every one of them can be set. */
export const costNames = [
  'perKmMinor',
  'minutesPerKm',
  'collectMin',
  'materialsMinor',
  'saleFeeShare',
  'partFeeShare',
  'postageMinor',
  'comebackShare',
  'comebackMin',
] as const
export type CostName = (typeof costNames)[number]

/** Those that are money, in minor units; the rest are minutes and shares, alike in every currency. */
const moneyCosts = ['perKmMinor', 'materialsMinor', 'postageMinor'] as const satisfies readonly CostName[]

/** The most that a cost may be set to, and whether it is whole: amounts and minutes of one machine are, rates and shares are not. */
export const costLimits: Readonly<Record<CostName, { readonly most: number; readonly whole: boolean }>> = {
  perKmMinor: { most: 10_000, whole: false },
  minutesPerKm: { most: 60, whole: false },
  collectMin: { most: 1440, whole: true },
  materialsMinor: { most: 1_000_000, whole: true },
  saleFeeShare: { most: 1, whole: false },
  partFeeShare: { most: 1, whole: false },
  postageMinor: { most: 1_000_000, whole: true },
  comebackShare: { most: 1, whole: false },
  comebackMin: { most: 1440, whole: true },
}

/** One figure with its source. */
export type CostFact = { readonly value: number; readonly source: Source }

export const kmPerMile = 1.609344

/** What each region's money is. */
export const regionCurrency: Readonly<Record<Region, Currency>> = {
  UK: 'GBP',
  EU: 'EUR',
  AU: 'AUD',
  NZ: 'NZD',
  US: 'USD',
  CA: 'CAD',
}

/** The region whose money a currency is. */
export const currencyRegion = (currency: Currency): Region =>
  regions.find((region) => regionCurrency[region] === currency) ?? 'UK'

const bench = (clause: string): Source => ({ title: 'Costs of a small bench', clause, evidence: 'judgement' })

const mileage = (title: string, edition: string, clause?: string): Source => ({
  title,
  edition,
  ...(clause === undefined ? {} : { clause }),
  evidence: 'from memory',
})

/** What driving a kilometre in one's own car costs, minor units: the rate each tax office lets be set against income. */
const perKm: Readonly<Record<Region, CostFact>> = {
  UK: {
    value: 45 / kmPerMile,
    source: {
      title: 'HMRC, approved mileage rate for cars',
      edition: '2011/12 to 2025/26',
      clause: '45p a mile up to 10,000 miles a year',
      evidence: 'retrieved',
    },
  },
  EU: {
    value: 30,
    source: mileage(
      'Germany, Bundesreisekostengesetz §5',
      '2022',
      '€0.30 a kilometre; stands in for the other member states',
    ),
  },
  AU: { value: 88, source: mileage('Australian Taxation Office, cents per kilometre method', '2024–25', '88c') },
  NZ: { value: 104, source: mileage('Inland Revenue, kilometre rates, tier one, petrol', '2023–24', '$1.04') },
  US: {
    value: 70 / kmPerMile,
    source: mileage('Internal Revenue Service, standard mileage rate, business', '2025', '70 cents a mile'),
  },
  CA: {
    value: 72,
    source: mileage(
      'Canada Revenue Agency, automobile allowance rate',
      '2025',
      '72¢ a kilometre up to 5,000 km a year',
    ),
  },
}

const materialsSource = bench('bag, filters and cleaning stuff of a machine sold working, in this currency')

const materials: Readonly<Record<Region, CostFact>> = {
  UK: { value: exitCosts.sellWorking.materialsMinor, source: exitCosts.sellWorking.source },
  EU: { value: 900, source: materialsSource },
  AU: { value: 1500, source: materialsSource },
  NZ: { value: 1600, source: materialsSource },
  US: { value: 1000, source: materialsSource },
  CA: { value: 1400, source: materialsSource },
}

/** A round trip of ten miles takes 25 minutes: small roads and a town. */
const minutesPerKm: CostFact = { value: 25 / (10 * kmPerMile), source: bench('a round trip of ten miles, 25 minutes') }

/** What a cost is in a region until it is set, its amounts in the region's own money. */
export const costFact = (region: Region, name: CostName): CostFact => {
  switch (name) {
    case 'perKmMinor':
      return perKm[region]
    case 'minutesPerKm':
      return minutesPerKm
    case 'collectMin':
      return { value: 10, source: bench('finding the door, a look at the machine, loading it') }
    case 'materialsMinor':
      return materials[region]
    case 'saleFeeShare':
      return { value: 0, source: bench('sold locally for cash; nothing is taken off') }
    case 'partFeeShare':
      return { value: exitCosts.breakForParts.feeShare, source: exitCosts.breakForParts.source }
    case 'postageMinor':
      return { value: 0, source: bench('the buyer of a part pays its postage') }
    case 'comebackShare':
      return comebackShare
    case 'comebackMin':
      return comebackMin
  }
}

/** Whether a cost is an amount of money rather than minutes or a share. */
export const isMoneyCost = (name: CostName): boolean => (moneyCosts as readonly CostName[]).includes(name)

/** What a cost is in a region and a currency until it is set: an amount is that of the region whose money the currency is. */
export const costFactIn = (region: Region, currency: Currency, name: CostName): CostFact =>
  costFact(isMoneyCost(name) ? currencyRegion(currency) : region, name)
