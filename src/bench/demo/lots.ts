import { mixSeed } from '../../base/mix-seed.ts'
import { seededRandom, type Random } from '../../base/random.ts'
import type { FindBlueprint } from '../blueprints.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { WhereFrom } from '../../facts/where-from.ts'
import { virtualComplaints } from '../../machine/index.ts'
import type { Complaint } from '../../facts/complaints.ts'
import { between, dayMs, minuteMs, nineInTen, oneOf, toStep } from './draws.ts'
import { colours, makes, modelNames, people, places, type YearBlueprint } from './names.ts'
import { sayings } from './sayings.ts'

/** What the year is drawn from. Another number gives another year. */
export const yearSeed = 20260228

export const yearStartMs = Date.parse('2025-03-01T00:00:00Z')
/** Nothing of the year is later. */
export const yearEndMs = Date.parse('2026-02-28T20:00:00Z')
const machinesOfYear = 60

/** What the story has in mind for a machine; most go as it pays. */
export type Fate = 'as-it-pays' | 'scrapped' | 'broken' | 'comes-back' | 'waits-for-a-part'

/** By the place in the year. */
const fates: Readonly<Record<number, Fate>> = {
  3: 'broken',
  7: 'scrapped',
  12: 'comes-back',
  18: 'broken',
  27: 'broken',
  29: 'scrapped',
  36: 'comes-back',
  41: 'broken',
  46: 'scrapped',
  50: 'broken',
  52: 'waits-for-a-part',
  57: 'waits-for-a-part',
}

/** A machine of the year as it is come by. */
export type Lot = {
  readonly id: string
  readonly seed: number
  readonly blueprint: Blueprint
  readonly name: string
  readonly model: string
  readonly complaints: readonly Complaint[]
  readonly claim: string
  readonly source: WhereFrom
  readonly paidMinor: number
  readonly askedMinor: number
  readonly distanceKm: number
  readonly cameInMs: number
  readonly fate: Fate
  /** Where its advert was weighed before. */
  readonly advert: string | null
}

/** How often each kind comes by, and each way of coming by one. */
const kinds: readonly (readonly [YearBlueprint, number])[] = [
  ['bagged-upright-two-motors', 22],
  ['bagged-upright-one-motor', 10],
  ['bagless-upright', 10],
  ['bagged-cylinder', 10],
  ['tub-by-pass', 8],
]
const ways: readonly (readonly [WhereFrom, number])[] = [
  ['classified', 24],
  ['boot-sale', 12],
  ['tip-shop', 9],
  ['given', 8],
  ['clearance', 5],
  ['workplace', 2],
]

/** Share of what it fetches working that is asked, by how it is come by: nine in ten between. */
const askedShares: Readonly<Record<WhereFrom, readonly [low: number, high: number]>> = {
  classified: [0.06, 0.24],
  'boot-sale': [0.04, 0.14],
  'tip-shop': [0.06, 0.16],
  given: [0, 0],
  clearance: [0.04, 0.12],
  workplace: [0.05, 0.15],
  other: [0.05, 0.15],
}

/** The machines of the year in the order they came in. */
export const lotsOfYear = async (find: FindBlueprint): Promise<readonly Lot[]> => {
  const lots: Lot[] = []
  for (let place = 1; place <= machinesOfYear; place++) lots.push(await lotAt(find, place))
  return lots
}

const lotAt = async (find: FindBlueprint, place: number): Promise<Lot> => {
  const id = `demo-y${String(place).padStart(2, '0')}`
  const seed = mixSeed(yearSeed, id)
  const random = seededRandom(seed)
  const kind = weighed(random, kinds)
  const source = weighed(random, ways)
  const found = await find(kind)
  if (found === undefined) throw new Error(`demonstration: no blueprint ${kind}`)
  const where = oneOf(random, source === 'classified' || source === 'given' ? people : places)
  const modelName = oneOf(random, modelNames[kind])
  const askedMinor = asked(random, found, source)
  const complaints = virtualComplaints(found, found.plate, seed)
  return {
    id,
    seed,
    blueprint: found,
    name: `${oneOf(random, colours)} ${modelName}, ${where}`,
    model: `${oneOf(random, makes)} ${modelName}`,
    complaints,
    claim: complaints.map((one) => oneOf(random, sayings[one])).join(' '),
    source,
    askedMinor,
    // Some sellers come down when they see the cash.
    paidMinor: random.uniform() < 0.4 ? toStep(askedMinor * 0.8, 100) : askedMinor,
    distanceKm: toStep(between(random, 1, source === 'classified' ? 14 : 6), 1),
    cameInMs: arrival(random, place),
    fate: fates[place] ?? 'as-it-pays',
    advert: source === 'classified' && place % 2 === 0 ? `${id}.advert` : null,
  }
}

const weighed = <T>(random: Random, all: readonly (readonly [T, number])[]): T =>
  all[random.index(all.map(([, weight]) => weight))][0]

const asked = (random: Random, { worth: { workingMinor } }: Blueprint, source: WhereFrom): number => {
  const [low, high] = askedShares[source]
  if (high === 0) return 0
  return toStep(((workingMinor.low + workingMinor.high) / 2) * nineInTen(random, low, high), 100)
}

/** Spread over the year, some days apart, at some hour of the afternoon. */
const arrival = (random: Random, place: number): number => {
  const days = Math.floor(((place - between(random, 0.1, 0.9)) / machinesOfYear) * 362)
  return yearStartMs + days * dayMs + Math.floor(between(random, 13 * 60, 17 * 60)) * minuteMs
}
