import { Button } from 'react-aria-components/Button'
import type { StripStep } from '../../bench/stripping/strip-view.ts'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { PhotoButton } from '../photos/photo-button.tsx'
import { useAdding } from '../photos/use-adding.ts'
import { useNotes } from '../use-notes.ts'
import { StepPhotos } from './step-photos.tsx'
import { useStripSheet } from './strip-sheet.ts'

/** The step noted last, with the camera at hand. */
export const LastStep = () => {
  const last = useStripSheet().strip.done.at(-1)
  if (last === undefined) return null
  return (
    <section id="strip-last-step" className="panel steps-done" aria-label="Last step">
      <h2>Last step</h2>
      <ul className="strip-rows">
        <Step step={last} />
      </ul>
    </section>
  )
}

/** The steps before the last, the newest first. */
export const StepsBefore = () => {
  const before = useStripSheet().strip.done.slice(0, -1).toReversed()
  if (before.length === 0) return null
  return (
    <Fold title={before.length === 1 ? 'One step before the last' : `${before.length} steps before the last`}>
      <ul className="strip-rows">
        {before.map((step) => (
          <Step key={step.note} step={step} />
        ))}
      </ul>
    </Fold>
  )
}

const Step = ({ step }: { readonly step: StripStep }) => {
  const { bench, document, stale } = useStripSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const photos = useAdding(bench, document.state.id)
  const line = document.lines.find(({ id }) => id === step.note)
  const text = line?.text ?? step.piece.name
  return (
    <li>
      <p>{text}</p>
      <StepPhotos step={step} />
      {document.state.left === null ? (
        <div className="strip-keys">
          <PhotoButton
            several
            className="key"
            isDisabled={photos.busy}
            label={`Photograph this step: ${step.piece.name}`}
            onFiles={(files) => void photos.add(files, { about: { kind: 'note', note: step.note }, when: 'work' })}
          >
            {photos.busy ? 'Sending …' : 'Photograph'}
          </PhotoButton>
          <Button
            className="plain strike"
            isDisabled={busy || stale}
            aria-label={`Strike out: ${text}`}
            onPress={() => void write([{ kind: 'struck', note: step.note, reason: '' }])}
          >
            strike out
          </Button>
        </div>
      ) : null}
      <Problems problems={[...problems, ...photos.problems]} />
    </li>
  )
}
