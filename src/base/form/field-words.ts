import type { $ZodTypes } from 'zod/v4/core'
import { nearest } from '../nearest.ts'
import type { MistakeOf, Words } from './mistake.ts'
import { bare, formMeant } from './schema-at.ts'

const mostFieldsNamed = 20

/** A field that is not known; where one with nearly its name is not there yet, that one is meant. */
export const fieldWords = ({ schema, value }: MistakeOf<'unrecognized_keys'>, key: string): Words => {
  const what = `There is no field “${key}” here`
  const names = schema === null ? [] : fieldsOf(formMeant(schema, value))
  const free = names.filter((name) => typeof value !== 'object' || value === null || !Object.hasOwn(value, name))
  const meant = nearest(key, free)
  if (meant !== null) return [what, `Write “${meant}”`]
  if (names.length === 0 || names.length > mostFieldsNamed) return [what, 'Take it out']
  return [what, `Take it out; the fields here are ${names.join(', ')}`]
}

/** The names of the fields that a form knows. */
const fieldsOf = ({ _zod: { def } }: $ZodTypes): readonly string[] => {
  if (def.type === 'object') return Object.keys(def.shape)
  const keys = def.type === 'record' ? bare(def.keyType)._zod.def : null
  return keys?.type === 'enum' ? Object.values(keys.entries).map(String) : []
}
