import { useQueries, useQuery } from '@tanstack/react-query'
import type { BenchId, MachineState } from '../bench/contract.ts'
import type { WhatToAsk } from '../bench/prices/what-to-ask.ts'
import type { AskingChoices } from '../machine/asking-choices.ts'
import type { MarketPrice } from '../machine/market.ts'
import { getAsking, getMarket } from './api.ts'

/** Whatever a sale or a price entered changes. */
export const pricesKey = (bench: BenchId): readonly string[] => ['prices', bench]

type Priced = Pick<MachineState, 'blueprint' | 'model' | 'currency' | 'practiceSeed'>

/** Asked once for all machines of a model; a sale elsewhere shows within half a minute. */
const marketQuery = (bench: BenchId, state: Priced | undefined) => ({
  queryKey: [...pricesKey(bench), 'market', state?.blueprint, state?.model, state?.currency],
  queryFn: ({ signal }: { readonly signal: AbortSignal }): Promise<MarketPrice | null> =>
    state === undefined ? Promise.resolve(null) : getMarket(bench, state, signal),
  enabled: state?.practiceSeed === null,
  staleTime: 30_000,
})

type Asked = { readonly data: MarketPrice | null | undefined; readonly error: Error | null }

/**
 * Undefined until it is known; the blueprint's range holds where it cannot be asked, and on a virtual machine. What was known before stays where
 * the bench does not answer any more, so that no figure changes because of that.
 */
const known = ({ data, error }: Asked, state: Priced | undefined): MarketPrice | null | undefined => {
  if (state !== undefined && state.practiceSeed !== null) return null
  return data === undefined && error !== null ? null : data
}

/** What comparable sales say that a machine fetches; null where there are none. */
export const useMarket = (bench: BenchId, state: Priced | undefined): MarketPrice | null | undefined =>
  known(useQuery(marketQuery(bench, state)), state)

/** The same for several machines, each model asked once. */
export const useMarkets = (
  bench: BenchId,
  states: readonly Priced[],
): ((state: Priced) => MarketPrice | null | undefined) => {
  const keyOf = ({ blueprint, model, currency }: Priced): string => JSON.stringify([blueprint, model, currency])
  const kinds = new Map(states.filter(({ practiceSeed }) => practiceSeed === null).map((one) => [keyOf(one), one]))
  const asked = useQueries({ queries: [...kinds.values()].map((one) => marketQuery(bench, one)) })
  const places = [...kinds.keys()]
  return (state) => known(asked[places.indexOf(keyOf(state))] ?? unasked, state)
}

const unasked: Asked = { data: undefined, error: null }

/** What to ask for a machine, with the last answer shown while the next is worked out. */
export const useAsking = (
  bench: BenchId,
  machine: string,
  version: number | undefined,
  choices: Partial<AskingChoices>,
) =>
  useQuery({
    queryKey: [...pricesKey(bench), 'asking', machine, version, choices],
    queryFn: ({ signal }): Promise<WhatToAsk> => getAsking(bench, machine, choices, signal),
    enabled: version !== undefined,
    placeholderData: (before) => before,
  })
