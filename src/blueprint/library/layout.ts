import type { BlueprintBase } from '../fragment.ts'

type Places = BlueprintBase['places']

/** Points in a row across the drawing, from left to right, `step` apart. */
export const along = (y: number, ids: readonly string[], from = 0, step = 2): Places =>
  Object.fromEntries(ids.map((id, i) => [id, [from + i * step, y] as const]))
