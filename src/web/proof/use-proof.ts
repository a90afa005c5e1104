import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { ProofView } from '../../machine/proof/proof-view.ts'
import { engine } from '../engine-client.ts'
import { useRegion } from '../queries.ts'

type ShownProof = {
  readonly proof: ProofView | null
  /** True while the proof of the newest notes is being worked out; `proof` is then of older notes. */
  readonly stale: boolean
  readonly error: Error | null
}

/** What the checks after repair prove of a machine, worked out in the worker. Keeps showing the last one while the next is computed. */
export const useProof = (document: MachineDocument | undefined, blueprint: Blueprint | undefined): ShownProof => {
  const region = useRegion()
  const query = useQuery({
    queryKey: ['proof', document?.state.id, document?.state.addedAt, document?.state.version, region],
    queryFn: async ({ signal }) => {
      if (document === undefined || blueprint === undefined || region === undefined)
        throw new Error('A proof needs a machine, its blueprint and a region')
      const job = { state: document.state, notes: document.notes, blueprint }
      return (await engine().ask({ kind: 'proof', job, region }, signal)).proof
    },
    enabled: document !== undefined && blueprint !== undefined && region !== undefined,
    staleTime: Infinity,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return { proof: query.data ?? null, stale: query.isPlaceholderData || query.isFetching, error: query.error }
}
