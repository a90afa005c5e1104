import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { BenchId, MachineDocument } from '../bench/contract.ts'
import type { JobSettings } from '../bench/costs.ts'
import type { PartState } from '../bench/shelf/part-state.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { MarketPrice } from '../machine/market.ts'
import type { MachineView } from '../machine/view.ts'
import { engine } from './engine-client.ts'
import { useJobSettings } from './queries.ts'
import { useMarket } from './use-market.ts'
import { shelfText, useShelf } from './use-shelf.ts'

export type ShownView = {
  readonly view: MachineView | null
  /** True while the view of the newest notes is being worked out; `view` is then of older notes. */
  readonly stale: boolean
  /** Why it could not be worked out. */
  readonly failure: string | null
}

const isWanted = (document: MachineDocument | undefined, blueprint: Blueprint | undefined): boolean =>
  document !== undefined && blueprint !== undefined && document.state.left === null

/** How the view of a machine is worked out and kept: one for each version of its notes and each setting that bears on it. */
export const viewQuery = (
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
  settings: JobSettings | undefined,
  market: MarketPrice | null | undefined,
  shelf: readonly PartState[] | undefined,
) => ({
  queryKey: [
    'view',
    document?.state.id,
    document?.state.addedAt,
    document?.state.version,
    settings,
    market,
    shelfText(shelf),
  ],
  queryFn: async ({ signal }: { readonly signal: AbortSignal }): Promise<MachineView> => {
    if (document === undefined || blueprint === undefined) throw new Error('A view needs a machine and its blueprint')
    const job = { state: document.state, notes: document.notes, blueprint, settings, market, shelf }
    return (await engine().ask({ kind: 'view', job }, signal)).view
  },
  enabled: settings !== undefined && market !== undefined && shelf !== undefined && isWanted(document, blueprint),
  staleTime: Infinity,
  retry: false,
})

/**
 * The view of a machine, worked out in the worker. Keeps showing the last one while the next is computed.
 * A machine that has left the bench has no next move, so nothing is asked for it.
 */
export const useMachineView = (
  bench: BenchId,
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
): ShownView => {
  const settings = useJobSettings()
  const market = useMarket(bench, document?.state)
  const shelf = useShelf(bench, document?.state, blueprint)
  const query = useQuery({
    ...viewQuery(document, blueprint, settings, market, shelf),
    placeholderData: keepPreviousData,
  })
  const wanted = isWanted(document, blueprint)
  return {
    view: query.data ?? null,
    stale: wanted && (query.isPlaceholderData || query.isFetching),
    failure: query.error?.message ?? null,
  }
}
