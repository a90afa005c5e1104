import type { Currency } from '../base/money.ts'
import { costNames, isMoneyCost } from '../facts/trade-costs.ts'
import { defaultCosts, withCosts, type Costs } from '../machine/costs.ts'
import type { Settings } from './settings.ts'

/** What of the settings a machine's figures are worked out with. */
export type JobSettings = Pick<Settings, 'attitude' | 'region' | 'currency' | 'costs'>

/**
 * What things cost on this bench: what they do in its region, with what is set in its place.
 * @param currency of the machine; an amount that was set in another currency does not hold for it
 */
export const costsOf = (
  { region, currency: own, costs }: Omit<JobSettings, 'attitude'>,
  currency: Currency = own,
): Costs => {
  const holds = costNames.filter((name) => currency === own || !isMoneyCost(name))
  return withCosts(defaultCosts(region, currency), Object.fromEntries(holds.map((name) => [name, costs[name]])))
}
