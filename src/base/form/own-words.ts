import type { Words } from './mistake.ts'
import { shown } from './shown.ts'

/** Beginnings of the schema library's own sentences, which are for programmers. */
const ofTheLibrary = /^(Invalid |Too (big|small): |Unrecognized key)/

/** Whether a schema says in words of its own what it wants. */
export const isOwn = (message: string): boolean => !ofTheLibrary.test(`${message} `)

/**
 * A schema's own words as what is wrong and what would be right. Two sentences are the two; a rule that begins small
 * (`a month is 1 to 12`) is held against the value.
 * @param wanted what would be right where the words do not say it
 */
export const ownWords = (message: string, value: unknown, wanted: string | null): Words => {
  const text = message.replace(/\.$/, '')
  const stop = text.search(/[.;] ["“A-Z]/)
  if (stop > 0) return [text.slice(0, stop), text.slice(stop + 2)]
  const isRule = /^[a-z]/.test(text) && (typeof value !== 'object' || value === null)
  const what = isRule ? `${shown(value)} is not right: ${text}` : text
  return [what, wanted === null ? 'Change it so that this holds' : `Write ${wanted}`]
}
