import type { QueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import { hearChanges } from './hear-changes.ts'

/** Shows what others write to a bench, as they write it, while `hears`. */
export const useChanges = (client: QueryClient, bench: BenchId, hears: boolean): void => {
  useEffect(() => (hears ? hearChanges(client, bench) : undefined), [client, bench, hears])
}
