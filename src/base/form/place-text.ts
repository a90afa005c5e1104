/** The steps from the whole input to a place in it. */
export type Path = readonly PropertyKey[]

/** A place as a person writes it: `moves[2].minutes`, `parts["motor.a"]`; empty for the whole input. */
export const placeText = (path: Path): string => path.map(stepText).join('').replace(/^\./, '')

const stepText = (step: PropertyKey): string => {
  if (typeof step === 'number') return `[${step}]`
  const name = String(step)
  return /^[\w-]+$/.test(name) ? `.${name}` : `[${JSON.stringify(name)}]`
}

/** What stands at a place of the input; undefined where nothing does. */
export const valueAt = (input: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step)
        ? (value as Record<PropertyKey, unknown>)[step]
        : undefined,
    input,
  )
