import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { filmTime } from '../../base/film-time.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { Films } from '../../bench/story/chapters.ts'
import { Field } from '../parts/field.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { useNow } from './use-films.ts'

type CameraProps = { readonly bench: BenchId; readonly machine: string; readonly films: Films }

/** No film of a job is this long without a break: the camera was forgotten. */
const forgottenMs = 6 * 60 * 60 * 1000

/** Says when the camera is on and off, so that the notes in between become chapters of the film. */
export const Camera = ({ bench, machine, films: { films, rolling } }: CameraProps) => {
  const { write, busy, problems } = useNotes(bench, machine)
  const [film, setFilm] = useState(films.at(-1)?.name ?? '')
  const isOn = rolling !== null
  const press = (): void =>
    void write([
      isOn ? { kind: 'camera', state: 'stopped', film: rolling.film } : { kind: 'camera', state: 'rolling', film },
    ])
  return (
    <section className="panel" aria-label="Film clock">
      <h2>Film clock</h2>
      {isOn ? (
        <Clock rolling={rolling} />
      ) : (
        <Field
          label="Which film, where there are several"
          value={film}
          onChange={setFilm}
          hint="It films nothing: press as your own camera starts, and again as it stops. What you note from then on becomes a chapter; a film taken up again under its name goes on."
        />
      )}
      <Button className={isOn ? 'key' : 'key main'} isDisabled={busy} onPress={press}>
        {isOn ? 'Stop the film clock' : 'Start the film clock'}
      </Button>
      <Problems problems={problems} />
    </section>
  )
}

const Clock = ({ rolling }: { readonly rolling: NonNullable<Films['rolling']> }) => {
  const now = useNow(true)
  // The bench's clock may be a little ahead of this device's.
  const runMs = Math.max(0, now - Date.parse(rolling.since))
  return (
    <>
      <p className="camera-clock">
        <span className="camera-dot" aria-hidden="true" /> On{rolling.film === '' ? '' : `, ${rolling.film}`}:{' '}
        <span className="figure" role="timer">
          {filmTime(rolling.beforeMs + runMs)}
        </span>
      </p>
      {runMs < forgottenMs ? null : (
        <p role="note">
          It has been on for long. If it was forgotten, strike out the note “Camera on” in the history of the machine.
        </p>
      )}
    </>
  )
}
