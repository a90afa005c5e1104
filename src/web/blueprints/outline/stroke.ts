/**
 * How a stroke is drawn: a body that hides what is behind it, a bare edge, a lighter line, something hidden inside, what a
 * hand or foot presses, a ribbed hose.
 */
export type Pen = 'solid' | 'edge' | 'fine' | 'inside' | 'pressed' | 'ribbed'

/** One stroke of an outline: an SVG path, and how its place is turned. */
export type Stroke = { readonly pen: Pen; readonly d: string; readonly turn?: string }

type Draw = (d: string) => Stroke
const draw =
  (pen: Pen): Draw =>
  (d) => ({ pen, d })

export const solid = draw('solid')
export const edge = draw('edge')
export const fine = draw('fine')
export const inside = draw('inside')
export const pressed = draw('pressed')
export const ribbed = draw('ribbed')

/** The strokes moved to `x`, `y` and leant back by this many degrees around it. */
export const leant = (x: number, y: number, degrees: number, strokes: readonly Stroke[]): readonly Stroke[] =>
  strokes.map((stroke) => ({ ...stroke, turn: `translate(${x} ${y}) rotate(${degrees})` }))

/** Closed path of a circle. */
export const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`

/** Closed path of a box with round corners. */
export const box = (x: number, y: number, width: number, height: number, r: number): string => {
  const [w, h] = [width - 2 * r, height - 2 * r]
  const turn = (dx: number, dy: number): string => `a${r} ${r} 0 0 1 ${dx} ${dy}`
  return `M${x + r} ${y}h${w}${turn(r, r)}v${h}${turn(-r, r)}h${-w}${turn(-r, -r)}v${-h}${turn(r, -r)}z`
}
