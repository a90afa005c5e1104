import {
  QueryClient,
  useInfiniteQuery,
  useQuery,
  type InfiniteData,
  type UseInfiniteQueryResult,
  type UseQueryResult,
} from '@tanstack/react-query'
import type { BenchId, MachineDocument, MachineList } from '../bench/contract.ts'
import type { JobSettings } from '../bench/costs.ts'
import type { Settings } from '../bench/settings.ts'
import type { BlueprintEntry } from '../blueprint/entry.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { Region } from '../facts/regions.ts'
import { getBlueprints, getMachine, getMachines, getSettings, Refusal } from './api.ts'
import { blueprintQuery } from './blueprint-query.ts'
import { withWaiting } from './outbox/with-waiting.ts'

/** `always`: the bench is often on this very device, which browsers call offline. */
export const makeQueryClient = (): QueryClient =>
  new QueryClient({
    defaultOptions: {
      queries: {
        networkMode: 'always',
        retry: (count, error) =>
          count < 2 && error instanceof Refusal && error.problems.some((one) => one.code === 'no-answer'),
        staleTime: 2_000,
      },
    },
  })

export const machineKey = (bench: BenchId, id: string): readonly string[] => ['machine', bench, id]
export const machinesKey = (bench: BenchId): readonly string[] => ['machines', bench]

export const settingsKey: readonly string[] = ['settings']

export const useSettings = (): UseQueryResult<Settings> =>
  useQuery({ queryKey: settingsKey, queryFn: ({ signal }) => getSettings(signal) })

const usual: JobSettings = { attitude: 'average', region: 'UK', currency: 'GBP', costs: {} }

/** How risk is weighed and what things cost; undefined until it is known, the usual where it cannot be asked. */
export const useJobSettings = (): JobSettings | undefined => {
  const { data, error } = useSettings()
  if (data === undefined) return error === null ? undefined : usual
  const { attitude, region, currency, costs } = data
  return { attitude, region, currency, costs }
}

/** Whose rules machines are proved by until a note says otherwise; undefined until it is known, the default where it cannot be asked. */
export const useRegion = (): Region | undefined => {
  const { data, error } = useSettings()
  return data?.region ?? (error === null ? undefined : 'UK')
}

export const useBlueprints = (): UseQueryResult<readonly BlueprintEntry[]> =>
  useQuery({ queryKey: ['blueprints'], queryFn: ({ signal }) => getBlueprints(signal), staleTime: Infinity })

/** An empty id asks for nothing. */
export const useBlueprint = (id: string): UseQueryResult<Blueprint> =>
  useQuery({ ...blueprintQuery(id), enabled: id !== '' })

/** The machines of a bench: those in hand with the first stretch of those that left, then further stretches as they are asked for. */
export const useMachines = (bench: BenchId): UseInfiniteQueryResult<InfiniteData<MachineList>> =>
  useInfiniteQuery({
    queryKey: machinesKey(bench),
    queryFn: ({ pageParam, signal }) => getMachines(bench, pageParam, signal),
    initialPageParam: null as number | null,
    getNextPageParam: ({ after }) => after,
  })

type MachineAsked = { readonly client: QueryClient; readonly signal: AbortSignal }

/** How a machine is fetched and kept: as the bench has it, with what waits on this device to be sent. */
export const machineQuery = (bench: BenchId, id: string) => ({
  queryKey: machineKey(bench, id),
  queryFn: async ({ client, signal }: MachineAsked): Promise<MachineDocument> => {
    const document = await withWaiting(client, bench, await getMachine(bench, id, signal))
    // Another blueprint, by whoever wrote so, is there before the page needs it: nothing on the page is taken down meanwhile.
    await client.prefetchQuery(blueprintQuery(document.state.blueprint))
    return document
  },
})

export const useMachine = (bench: BenchId, id: string): UseQueryResult<MachineDocument> =>
  useQuery(machineQuery(bench, id))
