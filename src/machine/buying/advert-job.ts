import type { Blueprint } from '../../blueprint/schema.ts'
import type { Attitude } from '../../facts/attitudes.ts'
import type { Costs } from '../costs.ts'
import type { Job, JobEvent } from '../job.ts'
import { instrumentFor } from '../scale.ts'
import type { Advert } from './advert.ts'
import type { Understood } from './buying-view.ts'
import { plannedPrices, type Market, type SaleBand } from './sale-band.ts'

/** What is given besides the advert: what an hour of one's own time is worth, what things cost, how losses are weighed. */
export type BuyingTerms = {
  readonly blueprint: Blueprint
  /** Minor units. */
  readonly hourMinor: number
  readonly costs: Costs
  readonly attitude: Attitude
  /** What nine in ten such machines sell for, cleaned and working, tidy and complete; left out, the blueprint's range. */
  readonly market?: Market | undefined
  /** How much the plan may look at; 1 is what the machine's own page does. */
  readonly effort?: number | undefined
}

const planningMeter = 'budget-multimeter'

/** The job that the advert would become, were the machine bought: the machine's own page works out the same from it. */
export const jobOfAdvert = (
  advert: Advert,
  terms: BuyingTerms,
  { complaints, claims }: Pick<Understood, 'complaints' | 'claims'>,
  band: SaleBand,
): Job => {
  const { blueprint, costs } = terms
  return {
    blueprint,
    plate: advert.plate ?? blueprint.plate,
    history: { ageYears: advert.ageYears, wear: advert.wear },
    complaints,
    claims,
    answers: advert.answers,
    condition: advert.condition,
    missing: advert.missing,
    events: advert.looked.map((looked, index) => lookedEvent(blueprint, looked, index)),
    off: [],
    hourMinor: hourOf(advert, terms),
    costs,
    ...(band.from === 'blueprint' ? {} : { prices: plannedPrices(band) }),
  }
}

/** What an hour is reckoned at: one's own worth of it, or the rate that is wanted. */
export const hourOf = ({ wanted }: Pick<Advert, 'wanted'>, { hourMinor }: Pick<BuyingTerms, 'hourMinor'>): number =>
  wanted.kind === 'an-hour' ? wanted.minor : hourMinor

const lookedEvent = (blueprint: Blueprint, { check, result }: Advert['looked'][number], index: number): JobEvent => {
  return { kind: 'reading', note: `looked ${index}`, check, result, instrument: instrumentOf(blueprint, check) }
}

/** The instrument that a check made on the spot is taken to be read with. */
export const instrumentOf = ({ checks }: Blueprint, check: string): string => {
  const made = checks.find(({ id }) => id === check)
  return (made === undefined ? undefined : instrumentFor(made)) ?? planningMeter
}
