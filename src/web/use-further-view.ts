import { useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { BenchId, MachineDocument } from '../bench/contract.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { MachineView } from '../machine/view.ts'
import { engineAside } from './engine-client.ts'
import { useJobSettings } from './queries.ts'
import { useMarket } from './use-market.ts'
import { shelfText, useShelf } from './use-shelf.ts'

/** How many times the usual work the plan's search does while somebody reads. */
const effort = 6
/** Somebody who has not entered anything for so long is reading. */
const readingAfterMs = 2500

/**
 * The view of a machine with the plan worked out further, in a worker of its own, once the first view has been read for a
 * moment; null until then.
 */
export const useFurtherView = (
  bench: BenchId,
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
  isRead: boolean,
): MachineView | null => {
  const settings = useJobSettings()
  const market = useMarket(bench, document?.state)
  const shelf = useShelf(bench, document?.state, blueprint)
  const version = `${document?.state.id ?? ''} ${document?.state.version ?? 0}`
  const wanted = useRested(isRead ? version : null) && document !== undefined && blueprint !== undefined
  const { data } = useQuery({
    queryKey: [
      ...['further view', document?.state.id, document?.state.addedAt, document?.state.version],
      ...[settings, market, shelfText(shelf)],
    ],
    queryFn: async ({ signal }): Promise<MachineView> => {
      if (document === undefined || blueprint === undefined) throw new Error('A view needs a machine and its blueprint')
      const job = { state: document.state, notes: document.notes, blueprint, settings, market, shelf }
      return (await engineAside().ask({ kind: 'view', job, effort }, signal)).view
    },
    enabled: wanted,
    staleTime: Infinity,
    retry: false,
  })
  return data ?? null
}

/** True when the same thing has been wanted for a while. */
const useRested = (what: string | null): boolean => {
  const [rested, setRested] = useState<string | null>(null)
  useEffect(() => {
    if (what === null) return undefined
    const timer = window.setTimeout(() => setRested(what), readingAfterMs)
    return () => window.clearTimeout(timer)
  }, [what])
  return what !== null && rested === what
}
