import { z } from 'zod'

/** The kinds of things that have a log, besides machines: parts of the shelf, adverts weighed, prices seen, spending of the bench, repair records of others. */
export const logKinds = ['part', 'advert', 'price', 'expense', 'record'] as const
export type LogKind = (typeof logKinds)[number]

const id = z.string().min(1).max(120)

/** One dated entry of a log, numbered from 1 in `seq`. What it says is parsed by the use-case that the kind belongs to. */
export const entrySchema = z.strictObject({
  id,
  log: id,
  seq: z.number().int().min(1),
  at: z.iso.datetime(),
  /** Who wrote it, where people have names. */
  by: id.optional(),
  content: z.looseObject({ kind: z.string().min(1).max(60) }),
})
export type Entry = z.infer<typeof entrySchema>

/** An entry of a kind whose content is known. */
export type EntryOf<Content extends { readonly kind: string }> = Omit<Entry, 'content'> & { readonly content: Content }
