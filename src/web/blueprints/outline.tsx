import type { BlueprintEntry } from '../../blueprint/entry.ts'
import { drawnOf } from './outline/entry.ts'
import { outlineStrokes, viewBoxOf } from './outline/strokes.ts'
import { outlineWords } from './outline/words.ts'
import '../style/outline.css'

/** A line drawing of the architecture as it stands before you, with its words for who cannot see it. */
export const Outline = ({ entry }: { readonly entry: Pick<BlueprintEntry, 'signs' | 'features'> }) => (
  <svg className="machine-outline" viewBox={viewBoxOf(drawnOf(entry))} role="img" aria-label={outlineWords(entry)}>
    {outlineStrokes(drawnOf(entry)).map(({ pen, d, turn }, at) => (
      <path key={at} className={pen} d={d} transform={turn} />
    ))}
  </svg>
)
