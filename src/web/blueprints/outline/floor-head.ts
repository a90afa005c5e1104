import type { Entry } from './entry.ts'
import { box, circle, edge, fine, solid, type Stroke } from './stroke.ts'

/** What works in a floor head whose front is at `x` and sole at `y`. `motor`: where the suction motor is, when it is near. */
export const headWorks = (
  brush: Entry['brush'],
  x: number,
  y: number,
  motor: { readonly x: number; readonly y: number } | null,
): readonly Stroke[] => {
  const roll = { x: x + 9, y: y - 7 }
  switch (brush) {
    case 'belt':
      return [...rollAt(roll.x, roll.y), ...beltTo(roll, motor ?? { x: x + 24, y: y - 8 })]
    case 'electric':
      return [...rollAt(roll.x, roll.y), ...motorAt(x + 18, y - 11)]
    case 'air':
      return [...rollAt(roll.x, roll.y), ...turbineAt(x + 25, y - 7)]
    case 'none':
      return [fine(Array.from({ length: 9 }, (_, k) => `M${x + 4 + k * 3} ${y - 3}v5`).join(''))]
    case undefined:
      return []
  }
}

/** A brush roll seen from its end: bristles all round. */
const rollAt = (x: number, y: number): readonly Stroke[] => [
  edge(circle(x, y, 3.5)),
  fine(
    Array.from({ length: 8 }, (_, k) => (k * Math.PI) / 4)
      .map((turn) => `M${at(x, y, turn, 3.5)}L${at(x, y, turn, 6.5)}`)
      .join(''),
  ),
]

/** A motor of its own, seen from the side: the winding in its case. */
const motorAt = (x: number, y: number): readonly Stroke[] => [
  solid(box(x, y, 15, 8, 2)),
  edge(`M${x + 4} ${y + 1}v6M${x + 7.5} ${y + 1}v6M${x + 11} ${y + 1}v6`),
]

/** A wheel that the air turns: a ring with bent blades. */
const turbineAt = (x: number, y: number): readonly Stroke[] => [
  edge(circle(x, y, 5.5)),
  fine(
    Array.from({ length: 5 }, (_, k) => (k * 2 * Math.PI) / 5)
      .map((turn) => `M${x} ${y}Q${at(x, y, turn + 0.7, 3)} ${at(x, y, turn, 5.5)}`)
      .join(''),
  ),
]

const beltTo = (roll: { x: number; y: number }, motor: { readonly x: number; readonly y: number }) => [
  solid(circle(motor.x, motor.y, 6)),
  edge(circle(motor.x, motor.y, 1)),
  ...belt(roll, motor, 3.5),
]

/** Both runs of a belt round two wheels of this radius. */
const belt = (
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  r: number,
): readonly Stroke[] => {
  const turn = Math.atan2(to.y - from.y, to.x - from.x) + Math.PI / 2
  return [turn, turn + Math.PI].map((side) => edge(`M${at(from.x, from.y, side, r)}L${at(to.x, to.y, side, r)}`))
}

const at = (x: number, y: number, turn: number, r: number): string =>
  `${(x + r * Math.cos(turn)).toFixed(1)} ${(y + r * Math.sin(turn)).toFixed(1)}`
