import { Button } from 'react-aria-components/Button'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { minutesText } from '../words.ts'
import { coversToClose, coversToOpen } from './cover-steps.ts'
import { useSheet } from './sheet.ts'

/** Which covers are off. One tap notes a cover as off or back on, with those that must come off before it. */
export const Covers = () => {
  const { bench, document, blueprint } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const { off } = document.state
  if (blueprint.covers.length === 0) return null
  const change = (id: string, nowOff: boolean): void => {
    const steps = nowOff
      ? coversToOpen(blueprint, off, [id]).map((step) => ({
          kind: 'opened' as const,
          cover: step.id,
          minutes: step.minutes,
        }))
      : coversToClose(blueprint, off)
          .filter((step) => step.id === id || coversToOpen(blueprint, [], [step.id]).some((before) => before.id === id))
          .map((step) => ({ kind: 'closed' as const, cover: step.id, minutes: step.minutes }))
    void write(steps)
  }
  return (
    <Fold title={off.length === 0 ? 'Covers: all on' : `Covers: ${off.length} off`} className="panel-fold">
      <ul className="covers">
        {blueprint.covers.map((cover) => (
          <li key={cover.id}>
            <Button
              className={off.includes(cover.id) ? 'key cover off' : 'key cover'}
              isDisabled={busy}
              onPress={() => change(cover.id, !off.includes(cover.id))}
            >
              <span>{cover.name}</span>{' '}
              <span className="quiet">
                {off.includes(cover.id) ? 'off: put back' : `on: take off, ${minutesText(cover.openMin)}`}
              </span>
            </Button>
          </li>
        ))}
      </ul>
      <Problems problems={problems} />
    </Fold>
  )
}
