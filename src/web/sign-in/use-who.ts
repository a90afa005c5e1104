import { useQuery } from '@tanstack/react-query'
import { getWho, type Who } from './api.ts'

export const whoKey: readonly string[] = ['who']

/** Who is signed in; undefined until it is known. */
export const useWho = (): Who | undefined =>
  useQuery({ queryKey: whoKey, queryFn: ({ signal }) => getWho(signal), staleTime: 60_000 }).data

/** Whether the one who is signed in keeps the books; true until it is known that they do not. */
export const useKeepsBooks = (): boolean => useWho()?.role !== 'bench'

/** The name of who wrote a note, by id; undefined where nobody has names or this one is not known. */
export const useNameOf = (): ((id: string | undefined) => string | undefined) => {
  const people = useWho()?.people ?? []
  return (id) => people.find((one) => one.id === id)?.name
}
