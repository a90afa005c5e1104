import type { EntryOf } from './entry.ts'

type Content = { readonly kind: string }
type Struck = { readonly kind: 'struck'; readonly note: string }

const isStruck = (content: Content): content is Struck => content.kind === 'struck'

/** The entries that still stand, each once and in the order of the log: those struck out and the strikes themselves are left out. */
export const standingEntries = <C extends Content>(entries: readonly EntryOf<C>[]): readonly EntryOf<C>[] => {
  const byId = new Map<string, EntryOf<C>>()
  for (const entry of entries) if (!byId.has(entry.id)) byId.set(entry.id, entry)
  const struck = new Set<string>()
  for (const { content } of byId.values()) if (isStruck(content)) struck.add(content.note)
  return [...byId.values()]
    .filter(({ id, content }) => !isStruck(content) && !struck.has(id))
    .sort((a, b) => a.seq - b.seq)
}
