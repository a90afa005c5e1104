import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { CleanView } from '../../bench/cleaning/clean-view.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { AskingView } from '../../machine/asking.ts'
import { getAsking } from '../api.ts'
import { engine } from '../engine-client.ts'
import { useJobSettings } from '../queries.ts'
import { pricesKey } from '../use-market.ts'

/**
 * What to ask for a machine, as the cleaning needs it: the last answer stays where the bench does not answer any more. Undefined until
 * it is known; null where it was never known, so that what is usual holds.
 */
const useAskingKept = (bench: BenchId, machine: string): AskingView | null | undefined => {
  const { data, error } = useQuery({
    queryKey: [...pricesKey(bench), 'cleaning', machine],
    queryFn: async ({ signal }) => (await getAsking(bench, machine, {}, signal)).asking,
    staleTime: 30_000,
  })
  return data === undefined && error !== null ? null : data
}

export type ShownCleaning = { readonly clean: CleanView | null; readonly stale: boolean; readonly error: Error | null }

/** The cleaning of a machine at a moment, worked out in the worker; null until it is known. */
export const useClean = (
  bench: BenchId,
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
  now: string,
): ShownCleaning => {
  const settings = useJobSettings()
  const asking = useAskingKept(bench, document?.state.id ?? '')
  const { data, error, isPlaceholderData } = useQuery({
    queryKey: ['clean', document?.state.id, document?.state.addedAt, document?.state.version, settings, asking, now],
    queryFn: async ({ signal }): Promise<CleanView> => {
      if (document === undefined || blueprint === undefined || asking === undefined)
        throw new Error('A cleaning needs a machine, its blueprint and its price')
      const job = { state: document.state, notes: document.notes, blueprint, settings }
      return (await engine().ask({ kind: 'clean', job, asking, now }, signal)).clean
    },
    enabled: document !== undefined && blueprint !== undefined && settings !== undefined && asking !== undefined,
    staleTime: Infinity,
    // A minute's view is of no use in the next.
    gcTime: 60_000,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return { clean: data ?? null, stale: isPlaceholderData, error }
}
