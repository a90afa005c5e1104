import { useQuery } from '@tanstack/react-query'
import type { BenchId } from '../../bench/contract.ts'
import { getAdvert, getAdverts, getCompared } from './api.ts'

export const advertsKey = (bench: BenchId): readonly string[] => ['adverts', bench]

export const useAdverts = (bench: BenchId, state: 'there' | 'gone') =>
  useQuery({ queryKey: [...advertsKey(bench), state], queryFn: ({ signal }) => getAdverts(bench, state, signal) })

export const useAdvert = (bench: BenchId, id: string) =>
  useQuery({ queryKey: [...advertsKey(bench), 'one', id], queryFn: ({ signal }) => getAdvert(bench, id, signal) })

export const useCompared = (bench: BenchId) =>
  useQuery({ queryKey: [...advertsKey(bench), 'compared'], queryFn: ({ signal }) => getCompared(bench, signal) })
