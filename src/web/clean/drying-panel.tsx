import { Button } from 'react-aria-components/Button'
import { dryText } from '../../base/clock-text.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { CleanView } from '../../bench/cleaning/clean-view.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'

type DryingPanelProps = {
  readonly bench: BenchId
  readonly machine: string
  readonly clean: CleanView
  readonly now: string
}

/** What dries, when it should be dry, and the word that it is. */
export const DryingPanel = ({ bench, machine, clean, now }: DryingPanelProps) => {
  const { write, busy, problems } = useNotes(bench, machine)
  const { drying, calendar } = clean
  const dry = async (note: string): Promise<void> => {
    if (await write([{ kind: 'dried', note }])) say('Noted: dry.')
  }
  if (drying.length === 0) return null
  return (
    <section id="clean-drying" className="panel" aria-label="Drying">
      <h2>Drying</h2>
      <ul className="clean-drying">
        {drying.map(({ note, name, readyAt, state }) => (
          <li key={note} className={state === 'due' ? 'due' : ''}>
            <span>
              <strong>{name}</strong>
              <time dateTime={readyAt}>{dryText(readyAt, now)}</time>
            </span>
            <Button className="key" isDisabled={busy} aria-label={`It is dry: ${name}`} onPress={() => void dry(note)}>
              It is dry
            </Button>
          </li>
        ))}
      </ul>
      <Problems problems={problems} />
      <p>Nothing damp goes back in, and the machine is not run with it.</p>
      {calendar === null ? null : (
        <p>
          <a href={`data:text/calendar;charset=utf-8,${encodeURIComponent(calendar)}`} download="drying.ics">
            Remind me: into the calendar
          </a>
        </p>
      )}
    </section>
  )
}
