import fc from 'fast-check'

/** As much of JSON Schema (draft 2020-12, from memory) as the document of the API uses. */
export type Schema = {
  readonly $ref?: string
  readonly type?: string | readonly string[]
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly allOf?: readonly Schema[]
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly additionalProperties?: Schema | boolean
  readonly items?: Schema
  readonly minimum?: number
  readonly maximum?: number
  readonly format?: string
}

/** Values of a form, with `words` among its texts: ids that mean something, so that not all stops at the door. */
export const fromSchema = (
  schema: Schema,
  root: unknown,
  words: readonly string[],
  depth = 0,
): fc.Arbitrary<unknown> => {
  const inner = (one: Schema): fc.Arbitrary<unknown> => fromSchema(one, root, words, depth + 1)
  if (depth > 12) return fc.constant(null)
  if (schema.$ref !== undefined) return inner(resolve(schema.$ref, root))
  if (schema.const !== undefined) return fc.constant(schema.const)
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum)
  const either = schema.anyOf ?? schema.oneOf
  if (either !== undefined) return fc.oneof(...either.map(inner))
  if (schema.allOf !== undefined)
    return fc.tuple(...schema.allOf.map(inner)).map((all) => Object.assign({}, ...all) as unknown)
  const type = Array.isArray(schema.type) ? (schema.type[0] as string) : schema.type
  switch (type) {
    case 'string':
      return text(schema.format, words)
    case 'integer':
      return fc.oneof(fc.integer({ min: low(schema), max: high(schema) }), fc.constantFrom(low(schema), high(schema)))
    case 'number':
      return fc.oneof(
        fc.double({ min: low(schema), max: high(schema), noNaN: true }),
        fc.constantFrom(low(schema), high(schema)),
      )
    case 'boolean':
      return fc.boolean()
    case 'null':
      return fc.constant(null)
    case 'array':
      return fc.array(inner(schema.items ?? {}), { maxLength: 4 })
    case 'object':
      return objectOf(schema, inner, words)
    default:
      return fc.jsonValue({ maxDepth: 3 })
  }
}

const resolve = (ref: string, root: unknown): Schema =>
  ref
    .replace(/^#\//, '')
    .split('/')
    .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], root) as Schema

// A schema of an integer without bounds says so by the largest whole numbers that are exact.
const low = ({ minimum }: Schema): number => Math.max(minimum ?? -1000, -1e9)
const high = ({ maximum, minimum }: Schema): number => Math.max(Math.min(maximum ?? 10_000, 1e9), low({ minimum }))

const text = (format: string | undefined, words: readonly string[]): fc.Arbitrary<string> => {
  if (format === 'date') return fc.constantFrom('2026-03-01', '2024-02-29', '0001-01-01', '9999-12-31')
  if (format === 'date-time')
    return fc.constantFrom('2026-03-01T10:00:00.000Z', '0001-01-01T00:00:00Z', '9999-12-31T23:59:59Z')
  return fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...words) },
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
  )
}

const objectOf = (
  { properties = {}, required = [], additionalProperties }: Schema,
  inner: (one: Schema) => fc.Arbitrary<unknown>,
  words: readonly string[],
): fc.Arbitrary<unknown> => {
  const known = fc.record(Object.fromEntries(Object.entries(properties).map(([name, one]) => [name, inner(one)])), {
    requiredKeys: [...required].filter((name) => name in properties) as never[],
  })
  if (typeof additionalProperties !== 'object') return known
  const more = fc.dictionary(fc.constantFrom(...words), inner(additionalProperties), { maxKeys: 3 })
  return fc.tuple(known, more).map(([first, second]) => ({ ...second, ...first }))
}

const odd: readonly unknown[] = [
  null,
  true,
  '',
  0,
  -0,
  -1,
  1e308,
  -1e308,
  2 ** 53,
  1e-320,
  [],
  {},
  [[]],
  'constructor',
  '__proto__',
  'toString',
  '\u0000',
  '\ud800',
  '../../etc/passwd',
  'a\r\nb: c',
  '9'.repeat(400),
  'x'.repeat(20_000),
  '2026-02-30',
  { length: 1e9 },
  { toString: 1 },
  { then: 1 },
]

/** The same value with something in it exchanged, left out or put in, once in a while. */
export const mutated = (value: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc
    .tuple(value, fc.array(fc.tuple(fc.nat(), fc.constantFrom(...odd), fc.nat(2)), { maxLength: 3 }))
    .map(([whole, changes]) => changes.reduce((now, [place, put, way]) => changedAt(now, place, put, way), whole))

const changedAt = (value: unknown, place: number, put: unknown, way: number): unknown => {
  if (value === null || typeof value !== 'object') return put
  const keys = Object.keys(value)
  if (keys.length === 0) return put
  const key = keys[place % keys.length] ?? ''
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...value }) as Record<string, unknown>
  if (place % 3 !== 0) copy[key] = changedAt(copy[key], Math.floor(place / 3), put, way)
  else if (way === 0) delete copy[key]
  else if (way === 1) copy[key] = put
  else copy[`more-${key}`] = put
  return copy
}
