import { getBlueprint } from './api.ts'

/** How a blueprint is fetched and kept; one is never changed under its id. */
export const blueprintQuery = (id: string) => ({
  queryKey: ['blueprint', id],
  queryFn: ({ signal }: { readonly signal: AbortSignal }) => getBlueprint(id, signal),
  staleTime: Infinity,
})
