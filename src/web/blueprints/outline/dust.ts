import { box, edge, fine, inside, type Stroke } from './stroke.ts'

/** A place in the body, left top corner and size. */
export type Room = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** A paper bag behind a closed door: its shape dashed, with the collar at the top. */
export const hiddenBag = ({ x, y, width, height }: Room): readonly Stroke[] => [
  inside(box(x, y + 4, width, height - 4, Math.min(width, height) / 4)),
  inside(`M${x + width / 2 - 4} ${y}h8v4h-8z`),
]

/** A clear bin: what whirls in it and the dust at its bottom can be seen. */
export const clearBin = ({ x, y, width, height }: Room): readonly Stroke[] => {
  const middle = x + width / 2
  const floor = y + height - 6
  return [
    edge(box(x, y, width, height, 3)),
    fine(`M${x + 4} ${y + 3}L${middle - 2} ${floor - 5}h4L${x + width - 4} ${y + 3}z`),
    fine(`M${x + 1} ${floor}q${width / 8} -3 ${width / 4} 0t${width / 4} 0t${width / 4} 0t${width / 4 - 2} 0`),
  ]
}
