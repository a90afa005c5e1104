import type { Entry } from './entry.ts'
import { uprightStrokes, stickStrokes } from './with-handle.ts'
import { cylinderStrokes, drumStrokes } from './with-hose.ts'
import { fine, type Stroke } from './stroke.ts'

/** The part of the plane that is shown, so that what stands alone stands in the middle. The floor is near its lower edge. */
export const viewBoxOf = ({ stands }: Entry): string => {
  const left = stands === 'cylinder' || stands === 'drum' ? 0 : -24
  return `${left} 0 160 116`
}

/** The machine as a line drawing, made from what can be seen of it: a manner of drawing of our own, no make's shape. */
export const outlineStrokes = (entry: Entry): readonly Stroke[] => [fine('M-60 111H200'), ...machineStrokes(entry)]

const machineStrokes = (entry: Entry): readonly Stroke[] => {
  switch (entry.stands) {
    case 'cylinder':
      return cylinderStrokes(entry)
    case 'drum':
      return drumStrokes(entry)
    case 'stick':
      return stickStrokes(entry)
    case 'upright':
    case undefined:
      return uprightStrokes(entry)
  }
}
