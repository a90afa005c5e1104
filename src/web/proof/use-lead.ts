import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { Result } from '../../base/result.ts'
import type { LeadChoice, ListedCable } from '../../engines/limits/index.ts'
import { engine } from '../engine-client.ts'
import { useProofSheet } from './proof-sheet.ts'

/** A replacement lead of this length for the machine, and whether each of the cables would do; null until it is worked out. */
export const useLead = (
  lengthM: number | null,
  cables: readonly ListedCable[],
): { readonly lead: Result<LeadChoice> | null; readonly stale: boolean } => {
  const { document, proof } = useProofSheet()
  const { plate } = document.state
  const { region } = proof.rules
  const query = useQuery({
    queryKey: ['lead', plate, region, lengthM, cables],
    queryFn: async ({ signal }) =>
      (await engine().ask({ kind: 'lead', plate, region, lengthM: lengthM ?? 0, cables }, signal)).lead,
    enabled: lengthM !== null,
    staleTime: Infinity,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return { lead: lengthM === null ? null : (query.data ?? null), stale: query.isPlaceholderData || query.isFetching }
}
