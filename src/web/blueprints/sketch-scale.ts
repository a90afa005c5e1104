import type { Place } from '../drawing/grid.ts'
import type { Layout } from '../drawing/layout.ts'

/** Room for a motor's ring at the edge. */
const marginPx = 7

/** Brings places of a layout into a box of pixels, each direction stretched by itself. A layout without extent lies in the middle. */
export const sketchScale = (
  { low, high }: Pick<Layout, 'low' | 'high'>,
  widthPx: number,
  heightPx: number,
): ((place: Place) => Place) => {
  const along = (value: number, from: number, to: number, px: number): number =>
    to > from ? marginPx + ((value - from) / (to - from)) * (px - 2 * marginPx) : px / 2
  return ({ x, y }) => ({ x: along(x, low.x, high.x, widthPx), y: along(y, low.y, high.y, heightPx) })
}
