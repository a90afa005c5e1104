import type { Entry } from './entry.ts'
import { circle, fine, pressed, solid, type Stroke } from './stroke.ts'

/** A lamp that shines, standing on an edge at `x`, `y`. Nothing on a machine without lamps. */
export const lampOn = ({ features }: Entry, x: number, y: number): readonly Stroke[] =>
  features.includes('lamps')
    ? [solid(circle(x, y - 2, 2)), fine(`M${x - 4} ${y - 5}l-2.5 -2.5M${x} ${y - 6.5}v-3.5M${x + 4} ${y - 5}l2.5 -2.5`)]
    : []

/** A small round button that resets an overload, its middle at `x`, `y`. */
export const resetAt = ({ reset }: Entry, x: number, y: number): readonly Stroke[] =>
  reset === 'yes' ? [solid(circle(x, y, 3)), pressed(circle(x, y, 1.2))] : []
