import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { MachineDocument } from '../../bench/contract.ts'
import type { Films } from '../../bench/story/chapters.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { engine } from '../engine-client.ts'

/** The films of a machine with their marks, and the marks as text to copy; null until they are known. */
export const useFilms = (
  document: MachineDocument | undefined,
  blueprint: Blueprint | undefined,
): { readonly films: Films; readonly text: string } | null => {
  const { data } = useQuery({
    queryKey: ['films', document?.state.id, document?.state.addedAt, document?.state.version],
    queryFn: async ({ signal }) => {
      if (document === undefined || blueprint === undefined) throw new Error('Films need a machine and its blueprint')
      const { films, text } = await engine().ask({ kind: 'films', notes: document.notes, blueprint }, signal)
      return { films, text }
    },
    enabled: document !== undefined && blueprint !== undefined,
    staleTime: Infinity,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return data ?? null
}

/** The time now, ms, anew every second while it is wanted. */
export const useNow = (isWanted: boolean): number => {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    if (!isWanted) return undefined
    setNow(Date.now())
    const timer = window.setInterval(() => setNow(Date.now()), 1000)
    return () => window.clearInterval(timer)
  }, [isWanted])
  return now
}
