import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { Result } from '../../base/result.ts'
import type { MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { AirRig } from '../../machine/air/air-rig.ts'
import type { AirView } from '../../machine/air/air-view.ts'
import { engine } from '../engine-client.ts'

type ShownAir = {
  readonly air: Result<AirView> | null
  readonly barred: readonly string[]
  /** True while the air of the newest notes is being worked out; `air` is then of older notes. */
  readonly stale: boolean
  readonly error: Error | null
}

const nothingBars: readonly string[] = []

/**
 * What the readings say of a machine's air, worked out in the worker. Keeps showing the last one while the next is computed.
 * @param holesM holes of the bench's own rig; empty for those of the usual rig
 */
export const useAir = (
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
  holesM: readonly number[],
): ShownAir => {
  const query = useQuery({
    queryKey: ['air', document?.state.id, document?.state.addedAt, document?.state.version, holesM.join()],
    queryFn: async ({ signal }) => {
      if (document === undefined || blueprint === undefined)
        throw new Error('The air needs a machine and its blueprint')
      const job = { state: document.state, notes: document.notes, blueprint }
      return engine().ask({ kind: 'air', job, ...(holesM.length === 0 ? {} : { holesM }) }, signal)
    },
    enabled: document !== undefined && blueprint !== undefined,
    staleTime: Infinity,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return {
    air: query.data?.air ?? null,
    barred: query.data?.barred ?? nothingBars,
    stale: query.isPlaceholderData || query.isFetching,
    error: query.error,
  }
}

/** The usual rig for a blueprint; null until it is there, and where its kind of fan cannot be told. */
export const useRig = (blueprint: Blueprint | undefined): AirRig | null => {
  const { data } = useQuery({
    queryKey: ['rig', blueprint?.id],
    queryFn: async ({ signal }) => {
      if (blueprint === undefined) throw new Error('A rig needs a blueprint')
      const { rig } = await engine().ask({ kind: 'rig', blueprint }, signal)
      return rig.kind === 'ok' ? rig.value : null
    },
    enabled: blueprint !== undefined,
    staleTime: Infinity,
    retry: false,
  })
  return data ?? null
}
