import { mixSeed } from '../../base/mix-seed.ts'
import { seededRandom } from '../../base/random.ts'
import type { PartKind } from '../../facts/part-kinds.ts'
import { exitCosts, sellThrough } from '../../facts/trade.ts'
import { partContentSchema, type PartContentInput } from '../shelf/part-note.ts'
import type { PartState } from '../shelf/part-state.ts'
import { shelf } from '../shelf/shelf-commands.ts'
import { between, dayMs, toStep } from './draws.ts'
import type { YearBlueprint } from './names.ts'
import type { Trade } from './trade.ts'
import { settledLog, type Story, type Turn } from './turns.ts'

/** Within so many days the share of parts sells that the trade reckons with. */
const sellsWithinDays = 90
/** A part that has not found a buyer by then goes the way of the rest, or is found out of order. */
const scrappedAfterDays = 130

/** A part off a machine waits for its buyer; some find none. One that went into another machine meanwhile is left alone. */
export function* sellsSomeDay(part: string, seed: number, putMs: number): Story {
  const random = seededRandom(mixSeed(seed, part))
  const sells = random.uniform()
  const days = between(random, 4, sellsWithinDays)
  yield entry(part, putMs + days * dayMs, (state) => {
    const price = state.fetchesMinor ?? 0
    if (sells >= sellThrough(Math.max(1, price))) return null
    const receivedMinor = toStep(price * between(random, 0.75, 1.15), 50)
    return {
      kind: 'sold',
      receivedMinor,
      feeMinor: Math.round(receivedMinor * exitCosts.breakForParts.feeShare),
      minutes: exitCosts.breakForParts.perListingMin + exitCosts.breakForParts.perSaleMin,
    }
  })
  if (random.uniform() > 0.35) return
  yield entry(part, putMs + scrappedAfterDays * dayMs, () => ({
    kind: 'scrapped',
    reason: 'Nobody wanted it, and a tab is cracked after all',
  }))
}

/** One entry in a part's log, where there is still one and something is to be said. */
const entry = (part: string, atMs: number, say: (state: PartState) => PartContentInput | null): Turn => ({
  atMs: Math.round(atMs),
  deed: async (deps) => {
    const document = await shelf.document(deps, part)
    const content = document === null || document.state.count === 0 ? null : say(document.state)
    if (document !== null && content !== null) {
      settledLog(part, await shelf.add(deps, part, document.state.version, partContentSchema.parse(content)))
    }
    return null
  },
})

/** New parts bought a few at a time, as they are used. */
type Bought = {
  readonly id: string
  readonly blueprint: YearBlueprint
  readonly part: string
  readonly partKind: PartKind
  readonly name: string
  readonly count: number
  readonly eachMinor: number
  readonly day: string
  /** Found when they were counted. */
  readonly counted?: { readonly day: string; readonly missing: number }
}

const bought: readonly Bought[] = [
  { id: 'demo-belts', blueprint: 'bagged-upright-one-motor', part: 'belt', partKind: 'belt', name: 'Flat belt', count: 6, eachMinor: 110, day: '2025-03-03', counted: { day: '2026-01-03', missing: 1 } }, // prettier-ignore
  { id: 'demo-belts-toothed', blueprint: 'bagged-upright-two-motors', part: 'belt', partKind: 'belt', name: 'Toothed belt', count: 5, eachMinor: 420, day: '2025-03-03' }, // prettier-ignore
  { id: 'demo-filters', blueprint: 'bagged-upright-two-motors', part: 'pre-motor-filter', partKind: 'filter', name: 'Motor filter, two-motor upright', count: 8, eachMinor: 260, day: '2025-03-08', counted: { day: '2026-01-03', missing: 1 } }, // prettier-ignore
  { id: 'demo-bags', blueprint: 'bagged-upright-two-motors', part: 'bag', partKind: 'bag', name: 'Pack of five paper bags', count: 10, eachMinor: 150, day: '2025-03-08' }, // prettier-ignore
  { id: 'demo-filters-cylinder', blueprint: 'bagged-cylinder', part: 'pre-motor-filter', partKind: 'filter', name: 'Motor filter, cylinder', count: 5, eachMinor: 190, day: '2025-05-17' }, // prettier-ignore
  { id: 'demo-filters-bagless', blueprint: 'bagless-upright', part: 'pre-motor-filter', partKind: 'filter', name: 'Foam filter', count: 5, eachMinor: 240, day: '2025-06-07' }, // prettier-ignore
]

/** Puts what is bought on the shelf and, for some, counts it at the year's end. */
export const stockStories = (trade: Trade): readonly Story[] => bought.map((lot) => stockStory(lot, trade))

function* stockStory(lot: Bought, trade: Trade): Story {
  yield {
    atMs: Date.parse(`${lot.day}T11:00:00Z`),
    deed: async (deps) => {
      const put = partContentSchema.parse({
        kind: 'put',
        name: lot.name,
        partKind: lot.partKind,
        condition: 'tested',
        origin: { kind: 'bought', where: 'A parts stall in the invented covered market' },
        currency: 'GBP',
        costMinor: lot.count * lot.eachMinor,
        count: lot.count,
        place: 'Drawer by the door',
      } satisfies PartContentInput)
      settledLog(lot.id, await shelf.begin(deps, put, lot.id))
      trade.kept.push({ id: lot.id, blueprint: lot.blueprint, part: lot.part, isBought: true })
      return null
    },
  }
  const { counted } = lot
  if (counted === undefined) return
  yield entry(lot.id, Date.parse(`${counted.day}T10:00:00Z`), ({ count }) => ({
    kind: 'counted',
    count: Math.max(0, count - counted.missing),
    reason: 'Counted at the new year',
  }))
}
