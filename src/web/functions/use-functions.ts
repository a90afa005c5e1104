import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { AnswerableFunctions } from '../../bench/functions/functions-view.ts'
import { engine } from '../engine-client.ts'

export type ShownFunctions = {
  readonly functions: AnswerableFunctions | null
  /** True while those of the newest notes are being worked out. */
  readonly stale: boolean
  readonly error: Error | null
}

/** The functions of a machine, worked out in the worker. Keeps showing the last ones while the next are computed. */
export const useFunctions = (
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
): ShownFunctions => {
  const { data, error, isPlaceholderData, isFetching } = useQuery({
    queryKey: ['functions', document?.state.id, document?.state.addedAt, document?.state.version, blueprint?.id],
    queryFn: async ({ signal }) => {
      if (document === undefined || blueprint === undefined) throw new Error('Functions need a machine')
      const job = { state: document.state, notes: document.notes, blueprint }
      return (await engine().ask({ kind: 'functions', job }, signal)).functions
    },
    enabled: document !== undefined && blueprint !== undefined,
    staleTime: Infinity,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return { functions: data ?? null, stale: isPlaceholderData || isFetching, error }
}
