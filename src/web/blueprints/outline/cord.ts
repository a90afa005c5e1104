import { circle, edge, fine, type Stroke } from './stroke.ts'

/** A drum that winds the flex in, seen from its side. */
export const reel = (x: number, y: number, r: number): readonly Stroke[] => [
  edge(circle(x, y, r)),
  fine(circle(x, y, r * 0.66)),
  fine(circle(x, y, r * 0.33)),
]

/** The end of a flex that leaves at `x`, `y` to the left: two pins, turned to the floor. */
export const plugOnFlex = (x: number, y: number): readonly Stroke[] => [
  fine(`M${x} ${y}c-5 0 -7 3 -7 8`),
  edge(`M${x - 10} ${y + 8}h6v4h-6z`),
  fine(`M${x - 8.5} ${y + 12}v3M${x - 5.5} ${y + 12}v3`),
]

/** Two hooks on a post at `x`, the flex wound round them on the right of it. */
export const hooksOnPost = (x: number, top: number, bottom: number): readonly Stroke[] => [
  edge(`M${x} ${top}h9v-4M${x} ${bottom}h9v4`),
  fine(loop(x + 2, top, bottom)),
  fine(loop(x + 4.5, top, bottom)),
  fine(`M${x + 7} ${bottom}c4 4 3 8 0 10`),
]

const loop = (x: number, top: number, bottom: number): string =>
  `M${x} ${top}c-1 -5 4 -5 3.5 0L${x + 3.5} ${bottom}c0 5 -4.5 5 -3.5 0z`
