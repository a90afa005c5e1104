import type { BlueprintBase } from '../fragment.ts'

type Places = BlueprintBase['places']

/** Points in a row across the drawing, from left to right, `step` apart. */
export const along = (y: number, ids: readonly string[], from = 0, step = 2): Places =>
  Object.fromEntries(ids.map((id, i) => [id, [from + i * step, y] as const]))

/** From the plug by a fixed flex and the switch to the body: line along the top, neutral along the bottom. */
export const flexToBody: Places = {
  ...along(
    1,
    ['plug.line', 'plug.fuse-out', 'plug.line-core', 'flex.line', 'switch.in', 'switch.out', 'body.line'],
    0,
    2.4,
  ),
  ...along(13, ['plug.neutral', 'plug.neutral-core', 'flex.neutral', 'body.neutral'], 0, 4.8),
}
