import { useQuery, type UseQueryResult } from '@tanstack/react-query'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Showing } from '../../machine/fault-shows.ts'
import type { FaultRate } from '../../machine/blueprint-rates.ts'
import { engine } from '../engine-client.ts'
import type { SoundReading } from '../engine-protocol.ts'

/** How often each fault of the blueprint comes up, by fault id. Worked out in the worker. */
export const useRates = (blueprint: Blueprint): UseQueryResult<ReadonlyMap<string, FaultRate>> =>
  useQuery({
    queryKey: ['rates', blueprint.id],
    queryFn: async ({ signal }) => {
      const { rates } = await engine().ask({ kind: 'rates', blueprint }, signal)
      return new Map(rates.map((rate) => [rate.fault, rate]))
    },
    staleTime: Infinity,
    retry: false,
  })

/** What every meter check reads on a machine with nothing wrong and the blueprint's own plate. Worked out in the worker. */
export const useSoundReadings = (blueprint: Blueprint): UseQueryResult<readonly SoundReading[]> =>
  useQuery({
    queryKey: ['readings', blueprint.id],
    queryFn: async ({ signal }) => (await engine().ask({ kind: 'readings', blueprint }, signal)).readings,
    staleTime: Infinity,
    retry: false,
  })

/** Which checks show each fault, the surest first, by fault id. Worked out in the worker. */
export const useShows = (blueprint: Blueprint): UseQueryResult<ReadonlyMap<string, readonly Showing[]>> =>
  useQuery({
    queryKey: ['shows', blueprint.id],
    queryFn: async ({ signal }) => {
      const { shows } = await engine().ask({ kind: 'shows', blueprint }, signal)
      return new Map(shows.map(({ fault, checks }) => [fault, checks]))
    },
    staleTime: Infinity,
    retry: false,
  })
