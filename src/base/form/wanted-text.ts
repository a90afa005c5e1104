import type { $ZodType, $ZodTypes } from 'zod/v4/core'
import { boundsOf, type Bounds } from './bounds-of.ts'
import { bare } from './schema-at.ts'
import { orList } from './shown.ts'
import { unitOfName } from './unit-of-name.ts'

type Def<Type extends string> = Extract<$ZodTypes['_zod']['def'], { readonly type: Type }>

/**
 * What would be right at a place, in words that follow “Write”: `a whole number from 1 to 99`, `one of red, green`.
 * @param name of the field, which may carry a unit
 */
export const wantedText = (schema: $ZodType, name: string): string => {
  const text = formText(bare(schema), name)
  return takesNull(schema) ? `${text}, or null` : text
}

/** Whether null may stand there too. */
const takesNull = (schema: $ZodType): boolean => {
  const { def } = (schema as $ZodTypes)._zod
  if (def.type === 'nullable') return true
  return 'innerType' in def && takesNull(def.innerType)
}

const formText = (form: $ZodTypes, name: string): string => {
  const { def } = form._zod
  switch (def.type) {
    case 'string':
      return textWanted(boundsOf(form))
    case 'number':
      return numberWanted(boundsOf(form), name)
    case 'boolean':
      return 'true or false'
    case 'null':
      return 'null'
    case 'array':
      return `a list in [ ]${sizeText(boundsOf(form), 'entries')}`
    case 'tuple':
      return `a list of ${def.items.length} in [ ]`
    case 'record':
      return 'an object in { }'
    case 'object':
      return objectWanted(def)
    case 'enum':
      return oneOf(Object.values(def.entries))
    case 'literal':
      return oneOf(def.values)
    case 'union':
      return unionWanted(form, def, name)
    default:
      return 'what belongs here'
  }
}

const oneOf = (values: readonly unknown[]): string => {
  const [only, ...others] = values
  if (others.length > 0) return `one of ${values.join(', ')}`
  return only === '' ? 'an empty text' : JSON.stringify(only)
}

const textWanted = (bounds: Bounds): string => {
  if (bounds.format === 'date') return 'a day such as 2026-03-31'
  if (bounds.format === 'datetime') return 'a time in UTC such as 2026-03-31T12:00:00Z'
  return `a text in quotes${sizeText(bounds, 'characters')}`
}

const sizeText = ({ least = 0, most }: Bounds, many: string): string => {
  if (most !== undefined && least > 0) return ` of ${least} to ${most} ${many}`
  if (most !== undefined) return ` of at most ${most} ${many}`
  return least > 1 ? ` of at least ${least} ${many}` : ''
}

/** A number with its range and unit: `a whole number from 0 to 99, in minutes`. */
const numberWanted = (bounds: Bounds, name: string): string => {
  const kind = bounds.isWhole === true ? 'a whole number' : 'a number'
  const unit = unitOfName(name)
  return `${kind}${rangeText(bounds)}${unit === null ? '' : `, ${unit}`}`
}

const rangeText = ({ least, withLeast, most, withMost }: Bounds): string => {
  if (least !== undefined && most !== undefined && withLeast === true && withMost === true)
    return ` from ${least} to ${most}`
  const low = least === undefined ? null : withLeast === true ? `of ${least} or more` : `above ${least}`
  const high = most === undefined ? null : withMost === true ? `at most ${most}` : `below ${most}`
  const both = [low, high].filter((end) => end !== null).join(' and ')
  return both === '' ? '' : ` ${both}`
}

const mostFieldsNamed = 8

const objectWanted = ({ shape }: Def<'object'>): string => {
  const names = required(shape)
  if (names.length === 0 || names.length > mostFieldsNamed) return 'an object in { }'
  return `an object in { } with ${names.map((name) => `“${name}”`).join(', ')}`
}

const required = (shape: Readonly<Record<string, $ZodType>>): readonly string[] =>
  Object.keys(shape).filter((name) => shape[name]._zod.optin === undefined)

const unionWanted = (form: $ZodTypes, def: Def<'union'>, name: string): string => {
  if ('discriminator' in def) {
    const values = form._zod.propValues?.[String(def.discriminator)] ?? new Set()
    return `an object in { } whose “${String(def.discriminator)}” is ${oneOf([...values])}`
  }
  const forms = def.options.map(bare)
  if (isPlain(forms, 'number') && isPlain(forms, 'string'))
    return `${formText(forms[0], name)}, or a text with its unit`
  return orList([...new Set(forms.map((one) => shortText(one, name)))])
}

/** Whether two forms are a number and a text of any kind. */
const isPlain = (forms: readonly $ZodTypes[], type: 'number' | 'string'): boolean =>
  forms.length === 2 && forms.some((form) => form._zod.def.type === type && Object.keys(boundsOf(form)).length === 0)

/** A form as one of several: an object by its fields, `{"ohm": …}`. */
const shortText = (form: $ZodTypes, name: string): string => {
  const { def } = form._zod
  if (def.type !== 'object') return formText(form, name)
  const fields = required(def.shape).map((field) => `"${field}": …`)
  return `{${fields.join(', ')}}`
}
