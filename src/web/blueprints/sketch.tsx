import { useMemo } from 'react'
import type { Blueprint } from '../../blueprint/schema.ts'
import { middleOf, type Place } from '../drawing/grid.ts'
import { layOut } from '../drawing/layout.ts'
import { sketchScale } from './sketch-scale.ts'

const widthPx = 168
const heightPx = 92

/** The circuit as a few thin lines, motors as rings: enough to tell one architecture from another. Says nothing aloud. */
export const Sketch = ({ blueprint }: { readonly blueprint: Blueprint }) => {
  const layout = useMemo(() => layOut(blueprint), [blueprint])
  const at = sketchScale(layout, widthPx, heightPx)
  const solid = layout.elements.filter(({ element }) => element.kind !== 'stray')
  const motors = solid.filter(({ element }) => element.kind === 'motor')
  return (
    <svg className="sketch" width={widthPx} height={heightPx} aria-hidden="true">
      {solid.map(({ element, way }) => (
        <path key={element.id} d={lineOf(way.map(at))} />
      ))}
      {motors.map(({ element, run }) => {
        const middle = at(middleOf(run))
        return <circle key={element.id} cx={middle.x} cy={middle.y} r={4.5} />
      })}
    </svg>
  )
}

const lineOf = (places: readonly Place[]): string =>
  places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('')
