import { useQueries, useQuery } from '@tanstack/react-query'
import type { Leaf } from '../../machine/branches.ts'
import type { Undertaking } from '../../machine/undertaking.ts'
import type { UnfoldStep } from '../../machine/unfold.ts'
import { engineAside } from '../engine-client.ts'
import type { EngineJob } from '../engine-protocol.ts'
import { useJobSettings } from '../queries.ts'
import { useMarket } from '../use-market.ts'
import { shelfText, useShelf } from '../use-shelf.ts'
import { useSheet } from './sheet.ts'

export type Unfolded = {
  /** Likeliest first; null until the results are known. */
  readonly leaves: readonly Leaf[] | null
  readonly lessLikely: number
  readonly busy: boolean
  readonly failure: string | null
}

const forGood = { staleTime: Infinity, retry: false } as const

/**
 * What may come of a move after these steps, and what is said then, one answer after the other, the likeliest first. Worked
 * out beside the view, for this version of the notes; what is not begun when nobody looks any more is dropped.
 */
export const useUnfolding = (steps: readonly UnfoldStep[], move: Undertaking): Unfolded => {
  const { bench, document, blueprint, stale } = useSheet()
  const { state, notes } = document
  const settings = useJobSettings()
  const market = useMarket(bench, state)
  const shelf = useShelf(bench, state, blueprint)
  const job: EngineJob = { state, notes, blueprint, settings, market, shelf }
  const key = [state.id, state.addedAt, state.version, settings, market, shelfText(shelf)] as const
  const { data, error } = useQuery({
    queryKey: ['results', ...key, steps, move],
    queryFn: async ({ signal }) => (await engineAside().ask({ kind: 'results', job, steps, move }, signal)).results,
    enabled: !stale,
    ...forGood,
  })
  const results = data?.results ?? []
  const onwards = useQueries({
    queries: results.map(({ result }) => {
      const after = [...steps, { move, result }]
      return {
        queryKey: ['onward', ...key, after],
        queryFn: async ({ signal }: { readonly signal: AbortSignal }) =>
          (await engineAside().ask({ kind: 'onward', job, steps: after }, signal)).onward,
        enabled: !stale,
        ...forGood,
      }
    }),
  })
  return {
    leaves:
      data === undefined
        ? null
        : results.map((result, i) => ({
            result,
            onward: onwards[i].data ?? null,
            failure: onwards[i].error?.message ?? null,
          })),
    lessLikely: data?.lessLikely ?? 0,
    busy: error === null && (data === undefined || onwards.some((one) => one.isPending)),
    failure: error?.message ?? null,
  }
}
