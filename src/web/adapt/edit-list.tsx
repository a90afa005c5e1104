import { Button } from 'react-aria-components/Button'
import type { Adapted } from '../engine-protocol.ts'
import { Problems } from '../parts/problems.tsx'
import type { Edits } from './use-edits.ts'

type EditListProps = { readonly edits: Edits; readonly adapted: Adapted | null }

/** What is different so far, each with a way back, and what it comes to. */
export const EditList = ({ edits, adapted }: EditListProps) => {
  if (edits.edits.length === 0) return null
  return (
    <div className="differences">
      <h3>Different so far</h3>
      <ul>
        {edits.edits.map((edit, at) => {
          const text = adapted?.texts[at] ?? '…'
          return (
            <li key={`${at} ${JSON.stringify(edit)}`}>
              <span>{text}</span>
              <Button className="plain" aria-label={`Take back: ${text}`} onPress={() => edits.takeBack(at)}>
                take back
              </Button>
            </li>
          )
        })}
      </ul>
      {adapted === null ? null : <Problems problems={adapted.problems} />}
      {adapted === null || adapted.gone === '' ? null : <p className="quiet">{adapted.gone}</p>}
    </div>
  )
}
