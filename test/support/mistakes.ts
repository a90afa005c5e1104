/** One mistake made in a sound input. */
export type Mistake = {
  readonly kind:
    'missing' | 'wrong type' | 'unknown field' | 'out of range' | 'not in the list' | 'wrong kind' | 'too long'
  /** The place, as steps from the whole. */
  readonly path: readonly (string | number)[]
  readonly input: unknown
}

/** Every input that is the sound one with one mistake in it, at each of its places. */
export function* mistakesIn(sound: unknown): Generator<Mistake> {
  for (const path of placesIn(sound)) {
    const value = at(sound, path)
    const made = (kind: Mistake['kind'], put: unknown): Mistake => ({ kind, path, input: withAt(sound, path, put) })
    if (path.length > 0 && typeof path.at(-1) === 'string') yield made('missing', undefined)
    for (const other of otherTypes(value)) yield made('wrong type', other)
    if (isObject(value)) yield made('unknown field', { ...value, 'odd-field': 1 })
    if (typeof value === 'number') for (const far of [-1e12, 1e12, 0.123]) yield made('out of range', far)
    if (typeof value !== 'string') continue
    yield made(path.at(-1) === 'kind' ? 'wrong kind' : 'not in the list', 'none-of-these')
    yield made('too long', 'x'.repeat(5000))
    yield made('out of range', '')
  }
}

const otherTypes = (value: unknown): readonly unknown[] =>
  ['ten', 5, true, null, [1], { odd: 1 }].filter(
    (other) => typeof other !== typeof value || isObject(other) !== isObject(value),
  )

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Every place of a value, the whole first; of a list its first entry only. */
function* placesIn(value: unknown, path: readonly (string | number)[] = []): Generator<readonly (string | number)[]> {
  yield path
  if (Array.isArray(value)) {
    if (value.length > 0) yield* placesIn(value[0], [...path, 0])
  } else if (isObject(value)) for (const key of Object.keys(value)) yield* placesIn(value[key], [...path, key])
}

const at = (value: unknown, path: readonly (string | number)[]): unknown =>
  path.reduce<unknown>((now, step) => (now as Record<string | number, unknown>)[step], value)

const withAt = (value: unknown, [step, ...rest]: readonly (string | number)[], put: unknown): unknown => {
  if (step === undefined) return put
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) }) as Record<
    string | number,
    unknown
  >
  copy[step] = withAt(copy[step], rest, put)
  if (copy[step] === undefined && !Array.isArray(value)) delete copy[step]
  return copy
}
