import { isLevel, middleOf, runsOf, type Place } from './grid.ts'
import type { DrawnElement, Layout } from './layout.ts'
import type { Scale } from './scale.ts'

/** A box on the drawing in pixels, by its middle and half its sides. */
export type Box = Place & { readonly halfWidth: number; readonly halfHeight: number }
export type NumberLabel = { readonly element: string; readonly text: string; readonly at: Place }

const digitPx = 6.4
const textHalfPx = 5.5
const symbolHalfPx = { motor: 10, other: 7 }
/** Distances from the middle of the symbol at which a number is tried, nearest first. */
const offsetsPx = [12, 16]
/** And how far along the run from the middle. */
const alongPx = [0, 12, -12, 22, -22]

/**
 * Places the part numbers beside their symbols, each where it covers the least of symbols, conductors and earlier numbers.
 * Paths that only a fault makes carry no number: they are no part.
 */
export const placeNumbers = ({ elements, covers }: Layout, scale: Scale): readonly NumberLabel[] => {
  const symbols = elements.filter(({ element }) => element.kind !== 'wire').map((drawn) => symbolBox(drawn, scale))
  const wires = elements.flatMap(({ way }) => runsOf(way)).map(({ a, b }) => runBox(scale.at(a), scale.at(b)))
  const letters = covers.map(({ low, high }) => ({
    x: scale.at(low).x - 4,
    y: scale.at(high).y + 16,
    halfWidth: 6,
    halfHeight: 6,
  }))
  const placed: Box[] = [...letters]
  return elements
    .filter(({ element }) => element.kind !== 'stray')
    .map((drawn) => {
      const text = String(drawn.number)
      const tries = candidates(drawn, scale, text)
      const costs = tries.map(
        (box, at) => at * 0.5 + 6 * covering(box, placed) + 4 * covering(box, symbols) + covering(box, wires),
      )
      const best = tries[costs.indexOf(Math.min(...costs))] ?? {
        ...scale.at(middleOf(drawn.run)),
        halfWidth: 0,
        halfHeight: 0,
      }
      placed.push(best)
      return { element: drawn.element.id, text, at: { x: best.x, y: best.y } }
    })
}

const symbolBox = ({ element, run }: DrawnElement, scale: Scale): Box => {
  const half = element.kind === 'motor' ? symbolHalfPx.motor : symbolHalfPx.other
  return { ...scale.at(middleOf(run)), halfWidth: half, halfHeight: half }
}

const runBox = (a: Place, b: Place): Box => ({
  x: (a.x + b.x) / 2,
  y: (a.y + b.y) / 2,
  halfWidth: Math.abs(a.x - b.x) / 2 + 1,
  halfHeight: Math.abs(a.y - b.y) / 2 + 1,
})

const candidates = ({ element, run }: DrawnElement, scale: Scale, text: string): readonly Box[] => {
  const middle = scale.at(middleOf(run))
  const halfWidth = (text.length * digitPx) / 2
  const beyond = element.kind === 'motor' ? 5 : 0
  const sides = isLevel(run) ? [-1, 1] : [1, -1]
  return alongPx.flatMap((along) =>
    offsetsPx.flatMap((offset) =>
      sides.map((side) => {
        const across = side * (offset + beyond + (isLevel(run) ? 0 : halfWidth / 2))
        const [x, y] = isLevel(run) ? [middle.x + along, middle.y + across] : [middle.x + across, middle.y + along]
        return { x, y, halfWidth, halfHeight: textHalfPx }
      }),
    ),
  )
}

/** How many of the boxes this one lies over. */
const covering = (box: Box, others: readonly Box[]): number =>
  others.filter(
    (other) =>
      Math.abs(box.x - other.x) < box.halfWidth + other.halfWidth &&
      Math.abs(box.y - other.y) < box.halfHeight + other.halfHeight,
  ).length
