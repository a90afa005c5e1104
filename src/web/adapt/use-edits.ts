import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { Edit } from '../../blueprint/adapt-edits.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { engine } from '../engine-client.ts'
import type { Adapted } from '../engine-protocol.ts'
import { readStored, writeStored } from '../stored.ts'

export type Edits = {
  readonly edits: readonly Edit[]
  readonly name: string
  readonly add: (edit: Edit) => void
  readonly takeBack: (at: number) => void
  readonly setName: (name: string) => void
  readonly clear: () => void
}

type Kept = { readonly edits: readonly Edit[]; readonly name: string }

/** The list of edits and the name as they are being put together, kept in this tab under `key` so that a reload loses nothing. */
export const useEdits = (key: string, name: string): Edits => {
  const stored = `thrum-different-${key}`
  const [kept, setKept] = useState<Kept>(() => keptFrom(readStored('session', stored)) ?? { edits: [], name })
  const keep = (next: Kept): void => {
    setKept(next)
    writeStored('session', stored, next.edits.length === 0 ? null : JSON.stringify(next))
  }
  return {
    ...kept,
    add: (edit) => keep({ ...kept, edits: [...kept.edits, edit] }),
    takeBack: (at) => keep({ ...kept, edits: kept.edits.filter((_, i) => i !== at) }),
    setName: (next) => keep({ ...kept, name: next }),
    clear: () => keep({ edits: [], name }),
  }
}

/** What was stored by this page; the bench parses it again before anything is kept. */
const keptFrom = (text: string | null): Kept | null => {
  if (text === null) return null
  try {
    const value = JSON.parse(text) as Partial<Kept> | null
    return Array.isArray(value?.edits) && typeof value.name === 'string' ? (value as Kept) : null
  } catch {
    return null
  }
}

/** What the edits come to on this blueprint: in words, with what goes along, or what is wrong. Worked out in the worker. */
export const useAdapted = (blueprint: Blueprint, edits: readonly Edit[]): Adapted | null => {
  const { data } = useQuery({
    queryKey: ['adapted', blueprint.id, edits],
    queryFn: async ({ signal }) =>
      (await engine().ask({ kind: 'adapt', blueprint, edits: [...edits] }, signal)).adapted,
    enabled: edits.length > 0,
    placeholderData: keepPreviousData,
    staleTime: Infinity,
    retry: false,
  })
  return edits.length === 0 ? null : (data ?? null)
}
