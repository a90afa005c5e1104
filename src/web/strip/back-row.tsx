import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { AwayPiece } from '../../bench/stripping/strip-view.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { saidOf, type StepSaid } from './step-notes.ts'
import { StepPhotos } from './step-photos.tsx'
import { Stepper } from './stepper.tsx'

type BackRowProps = {
  readonly away: AwayPiece
  readonly busy: boolean
  readonly onSaid: (said: StepSaid) => void
}

/** A piece on its way back: its photographs, its fixings to be ticked, and what is not ticked is left over. */
export const BackRow = ({ away, busy, onSaid }: BackRowProps) => {
  const { piece, kept, isCounted, text, cautions } = away
  const [back, setBack] = useState<readonly number[]>(() => kept.map(() => 0))
  const [minutes, setMinutes] = useState(String(away.minutesBack))
  const [word, setWord] = useState('')
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const all = kept.reduce((sum, { count }) => sum + count, 0)
  const ticked = back.reduce((sum, count) => sum + count, 0)
  const enter = (counted: boolean): void => {
    const fixings = kept.map((fixing, at) => ({ ...fixing, count: back[at] ?? 0 }))
    const said = saidOf({ fixings, minutes, text: word })
    setSlips(said.kind === 'refused' ? said.problems : [])
    if (said.kind === 'ok') onSaid(counted ? said.value : { ...said.value, fixings: null })
  }
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    enter(isCounted)
  }
  const set = (at: number, count: number): void => setBack(back.map((one, i) => (i === at ? count : one)))
  return (
    <form onSubmit={submit} aria-label={`Put back: ${piece.name}`} className="back-row">
      <p className="strip-name">
        <strong>{piece.name}</strong>
      </p>
      {text === '' ? null : <p>“{text}”</p>}
      {away.cameSo === null ? null : <p className="hint">As it came off: {away.cameSo} Now the other way round.</p>}
      <StepPhotos step={away} />
      {cautions.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
      {isCounted ? null : <p className="quiet">Nobody counted what held it as it came away.</p>}
      <ul className="ticks" aria-label="Fixings that went back in">
        {kept.map(({ count, kind, place }, at) => (
          <li key={`${kind} ${place} ${at}`}>
            <label>
              <input
                type="checkbox"
                checked={(back[at] ?? 0) > 0}
                onChange={(e) => set(at, e.target.checked ? count : 0)}
              />
              <span>
                {count} × {kind}
                {place === '' ? null : <span className="quiet">from {place}</span>}
              </span>
            </label>
            {count > 1 && (back[at] ?? 0) > 0 ? (
              <Stepper label={kind} value={back[at] ?? 0} least={0} most={count} onChange={(n) => set(at, n)} />
            ) : null}
          </li>
        ))}
      </ul>
      <Fold title="Minutes and a word">
        <Field label="Minutes" value={minutes} onChange={setMinutes} unit="min" inputMode="decimal" />
        <Field label="A word" value={word} onChange={setWord} long />
      </Fold>
      <Problems problems={slips} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        {piece.kind === 'cover' ? 'Back on' : 'Back in'}
        {all === 0 ? '' : ticked === all ? `, all ${all} fixings` : `, ${ticked} of ${all} fixings`}
      </Button>
      {all === 0 ? null : (
        <Button className="plain" isDisabled={busy} onPress={() => enter(false)}>
          Back, but nobody counted
        </Button>
      )}
    </form>
  )
}
