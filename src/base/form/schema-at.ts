import type { $ZodType, $ZodTypes } from 'zod/v4/core'
import type { Path } from './place-text.ts'

/** A schema without what only says that it may be left out, or what is made of it once it is read. */
export const bare = (schema: $ZodType): $ZodTypes => {
  const one = schema as $ZodTypes
  const { def } = one._zod
  switch (def.type) {
    case 'optional':
    case 'nullable':
    case 'default':
    case 'prefault':
    case 'nonoptional':
    case 'readonly':
    case 'catch':
      return bare(def.innerType)
    case 'lazy':
      return bare(def.getter())
    case 'pipe':
      return bare((def.out as $ZodTypes)._zod.def.type === 'transform' ? def.in : def.out)
    default:
      return one
  }
}

/** The schema of one place of an input; null where the input goes ways that the schema does not know. */
export const schemaAt = (schema: $ZodType, value: unknown, path: Path): $ZodType | null => {
  const [step, ...rest] = path
  if (step === undefined) return schema
  const inside = child(formMeant(schema, value), step)
  const next = typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined
  return inside === undefined ? null : schemaAt(inside, next, rest)
}

const child = (form: $ZodTypes, step: PropertyKey): $ZodType | undefined => {
  const { def } = form._zod
  switch (def.type) {
    case 'object':
      return Object.hasOwn(def.shape, step) ? def.shape[String(step)] : def.catchall
    case 'array':
      return def.element
    case 'tuple':
      return def.items[Number(step)] ?? def.rest ?? undefined
    case 'record':
      return def.valueType
    default:
      return undefined
  }
}

/** The bare schema that a value is meant for: of several forms the one it looks like, else the schema itself. */
export const formMeant = (schema: $ZodType, value: unknown): $ZodTypes => {
  const form = bare(schema)
  const { def } = form._zod
  if (def.type !== 'union') return form
  const meant = def.options[branchMeant(form, value)]
  return meant === undefined ? form : formMeant(meant, value)
}

/** Which of a union's forms a value looks like, by its place among them; −1 where it looks like none, or like several. */
export const branchMeant = (union: $ZodType, value: unknown): number => {
  const { def } = bare(union)._zod
  if (def.type !== 'union') return -1
  const alike = def.options.map((option) => likeness(option, value))
  const most = Math.max(...alike)
  const isClear = most > 0 && alike.filter((one) => one === most).length === 1
  return isClear ? alike.indexOf(most) : -1
}

/** How much a value looks like being meant for a form: 0 for not at all. */
const likeness = (schema: $ZodType, value: unknown): number => {
  const { def } = bare(schema)._zod
  switch (def.type) {
    case 'union':
      return Math.max(...def.options.map((option) => likeness(option, value)))
    case 'object':
      return isObject(value) ? fieldLikeness(def.shape, value) : 0
    case 'record':
      return isObject(value) ? 1 : 0
    case 'array':
    case 'tuple':
      return Array.isArray(value) ? 1 : 0
    case 'enum':
      return Object.values(def.entries).some((one) => typeof one === typeof value) ? 1 : 0
    case 'literal':
      return def.values.some((one) => typeof one === typeof value) ? 1 : 0
    default:
      return typeof value === def.type ? 1 : 0
  }
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** How many fields of a form are there, and a little for being an object at all; a field that says which form it is decides. */
const fieldLikeness = (shape: Readonly<Record<string, $ZodType>>, value: Readonly<Record<string, unknown>>): number => {
  let shared = 0.5
  for (const [name, field] of Object.entries(shape)) {
    if (!Object.hasOwn(value, name)) continue
    const { def } = bare(field)._zod
    if (def.type === 'literal' && !def.values.some((one) => one === value[name])) return 0
    shared += 1
  }
  return shared
}
