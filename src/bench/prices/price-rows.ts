import type { Blueprint } from '../../blueprint/schema.ts'
import type { FindBlueprint } from '../blueprints.ts'
import type { BenchId, MachineState } from '../contract.ts'
import type { BookStore } from '../ports.ts'
import {
  isLike,
  ownListings,
  ownSale,
  seenListing,
  seenSale,
  type KeptPrice,
  type ListingRow,
  type PriceRow,
} from './comparables.ts'

/** What the prices of a bench are read from. */
export type PriceDeps = {
  readonly books: Pick<BookStore, 'machines' | 'logs'>
  readonly bench: BenchId
  readonly blueprintById: FindBlueprint
}

/** Sales and listings that speak for machines of a blueprint. */
export type PriceRows = { readonly sales: readonly PriceRow[]; readonly listings: readonly ListingRow[] }

/** So many of each are looked at, the newest first. */
const mostRead = 500

/** All that this bench knows of what machines like those of a blueprint fetch. @param now ISO 8601 */
export const priceRows = async (deps: PriceDeps, blueprint: Blueprint, now: string): Promise<PriceRows> => {
  const { books, bench } = deps
  const [gone, hand, seen] = await Promise.all([
    books.machines(bench, { open: false, limit: mostRead }),
    books.machines(bench, { open: true, limit: mostRead }),
    books.logs(bench, 'price', { open: true, limit: mostRead }),
  ])
  const machines = await withBlueprints<MachineState>(deps, [...gone.items, ...hand.items].map(withListings))
  // The store gives what the prices' own projection kept.
  const prices = await withBlueprints<KeptPrice>(deps, seen.items as readonly KeptPrice[])
  const sales = [
    ...machines.map(({ item, blueprint: of }) => ownSale(item, of)),
    ...prices.map(({ item, blueprint: of }) => seenSale(item, of)),
  ]
  const listings = [
    ...machines.flatMap(({ item, blueprint: of }) => ownListings(item, of, now)),
    ...prices.flatMap(({ item, blueprint: of }) => seenListing(item, of)),
  ]
  return {
    sales: sales.filter((row) => row !== null).filter((row) => isLike(row, blueprint)),
    listings: listings.filter((row) => isLike(row, blueprint)),
  }
}

/** What the store keeps of a machine that was last written about before listings were noted has none. */
const withListings = (state: MachineState): MachineState => ({ ...noListings, ...state })
const noListings: Pick<MachineState, 'listed'> = { listed: [] }

type Read<Item> = { readonly item: Item; readonly blueprint: Blueprint }

/** Those whose blueprint is known here. */
const withBlueprints = async <Item extends { readonly blueprint: string }>(
  { blueprintById }: PriceDeps,
  items: readonly Item[],
): Promise<readonly Read<Item>[]> => {
  const ids = [...new Set(items.map(({ blueprint }) => blueprint))]
  const found = new Map(await Promise.all(ids.map(async (id) => [id, await blueprintById(id)] as const)))
  return items.flatMap((item) => {
    const blueprint = found.get(item.blueprint)
    return blueprint === undefined ? [] : [{ item, blueprint }]
  })
}
