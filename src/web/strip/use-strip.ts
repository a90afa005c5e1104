import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { MachineDocument } from '../../bench/contract.ts'
import type { StripView } from '../../bench/stripping/strip-view.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { engine } from '../engine-client.ts'

export type Strip = {
  /** Null until it is known. */
  readonly strip: StripView | null
  /** True while `strip` is of older notes than the document. */
  readonly stale: boolean
}

/** Where the taking apart of a machine stands, worked out in the worker. Nothing is asked while `wanted` is false. */
export const useStrip = (
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
  wanted = true,
): Strip => {
  const { data, isPlaceholderData } = useQuery({
    queryKey: ['strip', document?.state.id, document?.state.addedAt, document?.state.version, blueprint?.id],
    queryFn: async ({ signal }) => {
      if (document === undefined || blueprint === undefined) throw new Error('Stripping needs a machine')
      return (await engine().ask({ kind: 'strip', notes: document.notes, blueprint }, signal)).strip
    },
    enabled: wanted && document !== undefined && blueprint !== undefined,
    staleTime: Infinity,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return { strip: data ?? null, stale: isPlaceholderData }
}
