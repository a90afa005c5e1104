import { mixSeed } from '../../base/mix-seed.ts'
import { seededRandom } from '../../base/random.ts'
import { advertSchema, type Advert } from '../../machine/buying/index.ts'
import { virtualComplaints } from '../../machine/index.ts'
import { advertContentSchema, type AdvertContentInput } from '../adverts/advert-note.ts'
import { adverts } from '../adverts/adverts.ts'
import type { FindBlueprint } from '../blueprints.ts'
import { between, dayMs, oneOf } from './draws.ts'
import { guesses } from './guesses.ts'
import { yearSeed, type Lot } from './lots.ts'
import { makes, modelNames, people, type YearBlueprint } from './names.ts'
import { sayings } from './sayings.ts'
import { settledLog, type Story, type Turn } from './turns.ts'

/** An advert of the year that was weighed, as it stood. */
export type WeighedAdvert = {
  readonly id: string
  readonly name: string
  readonly advert: Advert
  readonly atMs: number
  /** Why it was passed by; null where it was not: bought, or not decided yet. */
  readonly passed: string | null
}

/** Those that came to nothing, and the last, which is still open. */
const others: readonly (readonly [
  day: string,
  blueprint: YearBlueprint,
  askingMinor: number,
  distanceKm: number,
  passed: string | null,
])[] = [
  ['2025-04-22', 'bagged-upright-two-motors', 4500, 9, 'Would not come down, and it is dear for a dead one'],
  ['2025-07-09', 'bagless-upright', 2500, 17, 'Too far for what it would leave'],
  ['2025-09-30', 'bagged-cylinder', 2000, 4, 'Gone before the evening'],
  ['2025-12-11', 'tub-by-pass', 2500, 6, 'Used on plaster, by the photograph'],
  ['2026-02-27', 'bagged-upright-two-motors', 1200, 3, null],
]

/** All adverts of the year: those whose machine was bought, and the others. */
export const advertsOfYear = async (lots: readonly Lot[], find: FindBlueprint): Promise<readonly WeighedAdvert[]> => {
  const passed: WeighedAdvert[] = []
  for (const [i, one] of others.entries()) passed.push(await otherAdvert(find, `demo-advert-${i + 1}`, one))
  return [...lots.flatMap(advertOfLot), ...passed]
}

const advertOfLot = (lot: Lot): readonly WeighedAdvert[] => {
  if (lot.advert === null) return []
  const { askedMinor: askingMinor, distanceKm, claim: words, complaints, blueprint, name } = lot
  const advert = advertSchema.parse({ blueprint: blueprint.id, complaints, words, askingMinor, distanceKm })
  return [{ id: lot.advert, name, advert, atMs: lot.cameInMs - 1.2 * dayMs, passed: null }]
}

const otherAdvert = async (
  find: FindBlueprint,
  id: string,
  [day, kind, askingMinor, distanceKm, passed]: (typeof others)[number],
): Promise<WeighedAdvert> => {
  const seed = mixSeed(yearSeed, id)
  const random = seededRandom(seed)
  const blueprint = await find(kind)
  if (blueprint === undefined) throw new Error(`demonstration: no blueprint ${kind}`)
  const complaints = virtualComplaints(blueprint, blueprint.plate, seed)
  const words = complaints.map((one) => oneOf(random, sayings[one])).join(' ')
  return {
    id,
    name: `${oneOf(random, makes)} ${oneOf(random, modelNames[kind])}, ${oneOf(random, people)}`,
    advert: advertSchema.parse({ blueprint: kind, complaints, words, askingMinor, distanceKm }),
    atMs: Date.parse(`${day}T19:00:00Z`) + Math.floor(between(random, 0, 40)) * 60_000,
    passed,
  }
}

/** Weighed with the guess that the program made of it; then, where it came to nothing, passed by. */
export function* advertStory({ id, name, advert, atMs, passed }: WeighedAdvert): Story {
  const guess = guesses[id]
  if (guess === undefined) throw new Error(`demonstration: no guess for ${id}; make them anew (see guesses.ts)`)
  yield entry(id, atMs, 0, { kind: 'weighed', name, advert, guess })
  if (passed !== null) yield entry(id, atMs + dayMs, 1, { kind: 'passed', reason: passed })
}

const entry = (id: string, atMs: number, version: number, input: AdvertContentInput): Turn => ({
  atMs: Math.round(atMs),
  deed: async (deps) => {
    const content = advertContentSchema.parse(input)
    settledLog(id, await (version === 0 ? adverts.begin(deps, content, id) : adverts.add(deps, id, version, content)))
    return null
  },
})
