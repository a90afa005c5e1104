import type { Place } from './grid.ts'
import type { Layout } from './layout.ts'

export type Scale = { readonly width: number; readonly height: number; readonly at: (place: Place) => Place }

const marginPx = 24
/** Smaller and the symbols of neighbours touch; larger and the eye wanders. */
const columnPx = { least: 12, most: 34 }
const rowPx = { least: 15, most: 26 }

const within = (value: number, { least, most }: { readonly least: number; readonly most: number }): number =>
  Math.min(most, Math.max(least, value))

/**
 * Fits a layout into a width in pixels. Steps of the grid are scaled so that letters and symbols keep their size; where the
 * width is too small for that, the drawing is wider than the width and its frame scrolls.
 */
export const fit = ({ low, high }: Layout, availablePx: number, gapGrid: number): Scale => {
  const columns = Math.max(high.x - low.x, 1e-9)
  const rows = Math.max(high.y - low.y, 1e-9)
  // The bounds are for a drawing whose points are two steps apart, as most are.
  const perGap = 2 / gapGrid
  const column = within((availablePx - 2 * marginPx) / columns / perGap, columnPx) * perGap
  const row = within(column / perGap, rowPx) * perGap
  return {
    width: Math.max(columns * column + 2 * marginPx, 120),
    height: rows * row + 2 * marginPx,
    at: ({ x, y }) => ({ x: marginPx + (x - low.x) * column, y: marginPx + (y - low.y) * row }),
  }
}
