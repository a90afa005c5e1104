import { valueAt, type Path } from '../base/form/place-text.ts'

/** `checks.pins-on.red` for the path `checks[0].red`, where the first check has an id; empty for the whole. */
export const placeById =
  (input: unknown) =>
  (path: Path): string =>
    path
      .map((step, at) => (typeof step === 'number' ? (idAt(input, path.slice(0, at + 1)) ?? step) : String(step)))
      .join('.')

const idAt = (input: unknown, path: Path): string | null => {
  const item = valueAt(input, path)
  const id = typeof item === 'object' && item !== null && 'id' in item ? item.id : undefined
  return typeof id === 'string' && id !== '' ? id : null
}
