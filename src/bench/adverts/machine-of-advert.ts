import type { Blueprint } from '../../blueprint/schema.ts'
import { instrumentOf, travelOf, understanding, type Advert } from '../../machine/buying/index.ts'
import type { Costs } from '../../machine/costs.ts'
import type { WhereFrom } from '../../facts/where-from.ts'
import { noteContentSchema, type NoteContent } from '../note.ts'

/** What is said when the machine of an advert is bought, besides the advert. */
export type Bought = {
  readonly advert: string
  readonly name: string
  readonly paidMinor: number
  readonly source?: WhereFrom | undefined
  readonly model?: string | undefined
  /** What fetching it took; left out, what it takes by the advert's distance. */
  readonly travelMinor?: number | undefined
  readonly travelMin?: number | undefined
}

/**
 * The first notes of a machine that was bought from an advert: all that the seller said and answered, and the checks made on
 * the spot as readings, so that what is believed of it goes on from there. The plan for it is then the advert's own.
 */
export const notesOfAdvert = (
  advert: Advert,
  blueprint: Blueprint,
  costs: Costs,
  bought: Bought,
): readonly NoteContent[] => {
  const { complaints, claims } = understanding(advert, blueprint.faults)
  const travel = travelOf(advert.distanceKm, costs, 0)
  const added = {
    kind: 'added',
    name: bought.name,
    blueprint: blueprint.id,
    plate: advert.plate ?? blueprint.plate,
    paidMinor: bought.paidMinor,
    currency: advert.currency,
    complaints,
    claims,
    answers: advert.answers,
    claim: advert.words.slice(0, longestClaim),
    missing: advert.missing,
    condition: advert.condition,
    // Whoever wants so much an hour reckons with it on the bench too.
    ...(advert.wanted.kind === 'an-hour' ? { hourMinor: advert.wanted.minor } : {}),
    ageYears: advert.ageYears,
    wear: advert.wear,
    model: bought.model,
    source: bought.source,
    advert: bought.advert,
    travelMinor: bought.travelMinor ?? Math.round(travel.kmMinor),
    travelMin: bought.travelMin ?? Math.round(travel.minutes),
  }
  const readings = advert.looked.map(({ check, result }) => ({
    kind: 'reading',
    check,
    result,
    instrument: instrumentOf(blueprint, check),
    minutes: 0,
  }))
  return [added, ...readings].map((content) => noteContentSchema.parse(content))
}

/** A note holds so many letters of the seller's words; the advert keeps them whole. */
const longestClaim = 2000
