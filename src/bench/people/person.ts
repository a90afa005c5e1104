import { z } from 'zod'
import { roles } from '../../facts/roles.ts'

const id = z.string().min(1).max(120)

export const personSchema = z.strictObject({
  id,
  name: z.string().trim().min(1, 'a person has a name').max(60),
  role: z.enum(roles),
  /** The passphrase as it is kept: hashed, with how. Null where none is set, so that nobody signs in by it. */
  passphrase: z.string().max(500).nullable(),
  addedAt: z.iso.datetime(),
  /** When they left; what they wrote keeps their name. */
  goneAt: z.iso.datetime().nullable(),
})
export type Person = z.infer<typeof personSchema>

/** A browser that is signed in. Tokens are kept as SHA-256 of what the browser holds. */
export const deviceSchema = z.strictObject({
  id,
  /** Whose it is: the id of a person, or `benchItself`. */
  person: id,
  name: z.string().max(120),
  token: z.string().length(64),
  /** The token that was handed out to take the first one's place and has not been shown yet. */
  next: z.string().length(64).nullable(),
  nextAt: z.iso.datetime().nullable(),
  /** The token before this one, good for answers still on their way. */
  last: z.string().length(64).nullable(),
  lastUntil: z.iso.datetime().nullable(),
  /** When the present token was taken into use. */
  tokenAt: z.iso.datetime(),
  signedInAt: z.iso.datetime(),
  seenAt: z.iso.datetime(),
  expiresAt: z.iso.datetime(),
  /** Counts changes, so that of two at once exactly one wins. */
  version: z.number().int().min(1),
})
export type Device = z.infer<typeof deviceSchema>

/** Under this id the one passphrase of a bench without named people is kept; it is nobody's name. */
export const benchItself = 'bench'

/** Those who have names and have not left, in the order they were added. */
export const standing = (people: readonly Person[]): readonly Person[] =>
  people.filter(({ id, goneAt }) => id !== benchItself && goneAt === null)
