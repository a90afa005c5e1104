import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import type { BenchId, MachineState } from '../bench/contract.ts'
import type { PartState } from '../bench/shelf/part-state.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { partKindOf } from '../blueprint/part-kind-of.ts'
import { getPart, getParts, type PartsAsked } from './api-shelf.ts'

/** Whatever is written about a part changes. */
export const shelfKey = (bench: BenchId): readonly string[] => ['shelf', bench]
export const partKey = (bench: BenchId, id: string): readonly string[] => [...shelfKey(bench), 'part', id]

/** As many as a machine is held against. */
const mostParts = 500

const openParts = (bench: BenchId) => ({
  queryKey: [...shelfKey(bench), 'there'],
  queryFn: async ({ signal }: { readonly signal: AbortSignal }): Promise<readonly PartState[]> =>
    (await getParts(bench, { limit: mostParts }, signal)).items,
  staleTime: 30_000,
})

const none: readonly PartState[] = []

/** The parts that lie there; undefined until they are known, none where the shelf cannot be asked. */
export const useOpenParts = (bench: BenchId): readonly PartState[] | undefined => {
  const { data, error } = useQuery(openParts(bench))
  return data ?? (error === null ? undefined : none)
}

type ForMachine = Pick<MachineState, 'id' | 'currency' | 'practiceSeed'>

/** Those that this machine may have and that a repair of it could put in. The others would only have its plan worked out again. */
export const partsFor = (
  parts: readonly PartState[] | undefined,
  state: ForMachine | undefined,
  blueprint: Blueprint | undefined,
): readonly PartState[] | undefined => {
  if (parts === undefined || state === undefined || blueprint === undefined) return undefined
  if (state.practiceSeed !== null) return none
  const kinds = new Set(blueprint.repairs.map(({ part }) => partKindOf(part)))
  return parts.filter(
    ({ partKind, currency, reservedFor }) =>
      kinds.has(partKind) && currency === state.currency && (reservedFor === null || reservedFor === state.id),
  )
}

export const useShelf = (
  bench: BenchId,
  state: ForMachine | undefined,
  blueprint: Blueprint | undefined,
): readonly PartState[] | undefined => partsFor(useOpenParts(bench), state, blueprint)

/** Which parts, and as they are now: what is worked out with them is kept by this. */
export const shelfText = (parts: readonly PartState[] | undefined): string | undefined =>
  parts?.map(({ id, version }) => `${id} ${version}`).join()

/** A stretch of the shelf after the other, the newest first. */
export const useParts = (bench: BenchId, asked: Omit<PartsAsked, 'after' | 'limit'>) =>
  useInfiniteQuery({
    queryKey: [...shelfKey(bench), 'list', asked],
    queryFn: ({ pageParam, signal }) => getParts(bench, { ...asked, after: pageParam ?? undefined }, signal),
    initialPageParam: null as number | null,
    getNextPageParam: ({ after }) => after,
    placeholderData: (before) => before,
  })

export const usePart = (bench: BenchId, id: string) =>
  useQuery({ queryKey: partKey(bench, id), queryFn: ({ signal }) => getPart(bench, id, signal) })
