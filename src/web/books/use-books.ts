import { useInfiniteQuery, useQuery, useQueryClient } from '@tanstack/react-query'
import type { BenchId } from '../../bench/contract.ts'
import { getBookLines, getBooks, getExpenses, type LinesWanted } from '../api.ts'

const booksKey = (bench: BenchId): readonly string[] => ['books', bench]

export const useBooks = (bench: BenchId) =>
  useQuery({ queryKey: [...booksKey(bench), 'view'], queryFn: ({ signal }) => getBooks(bench, null, signal) })

export const useBookLines = (bench: BenchId, wanted: LinesWanted) =>
  useQuery({
    queryKey: [...booksKey(bench), 'lines', wanted],
    queryFn: ({ signal }) => getBookLines(bench, wanted, signal),
  })

/** What was spent on no machine, a stretch at a time. */
export const useExpenses = (bench: BenchId) =>
  useInfiniteQuery({
    queryKey: [...booksKey(bench), 'expenses'],
    queryFn: ({ pageParam, signal }) => getExpenses(bench, pageParam, signal),
    initialPageParam: null as number | null,
    getNextPageParam: ({ after }) => after,
  })

/** Has all that is shown of the books fetched anew. */
export const useFreshBooks = (bench: BenchId): (() => Promise<void>) => {
  const client = useQueryClient()
  return () => client.invalidateQueries({ queryKey: booksKey(bench) })
}
