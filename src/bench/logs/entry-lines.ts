import type { EntryOf } from './entry.ts'

/** One entry of a log as it is read. */
export type EntryLine = {
  readonly id: string
  readonly seq: number
  readonly at: string
  readonly text: string
  /** The machine that the words end with, where they name one. */
  readonly machine: string | null
  /** Who wrote it, by id, where people have names. */
  readonly by?: string
  readonly isStruck: boolean
  /** Whether it can be struck out on its own. */
  readonly canStrike: boolean
}

type Content = { readonly kind: string; readonly note?: string; readonly machine?: string }

/** A log as it is read, in its order; an entry that was struck out stays in it, marked. */
export const entryLines = <C extends Content>(
  entries: readonly EntryOf<C>[],
  textOf: (content: C) => string,
  mayStrike: (content: C) => boolean,
): readonly EntryLine[] => {
  const struck = new Set(entries.flatMap(({ content: { kind, note } }) => (kind === 'struck' ? [note] : [])))
  return entries.map(({ id, seq, at, by, content }) => ({
    id,
    seq,
    at,
    text: textOf(content),
    machine: content.machine ?? null,
    ...(by === undefined ? {} : { by }),
    isStruck: struck.has(id),
    canStrike: content.kind !== 'struck' && !struck.has(id) && mayStrike(content),
  }))
}
