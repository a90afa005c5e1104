import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { Fixing } from '../../bench/stripping/strip-note.ts'
import type { AwayPiece } from '../../bench/stripping/strip-view.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { saidOf, type StepSaid } from './step-notes.ts'
import { StepPhotos } from './step-photos.tsx'
import { Ticks } from './ticks.tsx'

type BackRowProps = {
  readonly away: AwayPiece
  readonly busy: boolean
  readonly onSaid: (said: StepSaid) => void
}

/** A piece on its way back: its photographs, its fixings to be ticked, and what is not ticked is left over. */
export const BackRow = ({ away, busy, onSaid }: BackRowProps) => {
  const { piece, kept, isCounted, leftOver, text, cautions } = away
  const [back, setBack] = useState<readonly number[]>(() => kept.map(() => 0))
  const [found, setFound] = useState<readonly number[]>(() => leftOver.map(() => 0))
  const [minutes, setMinutes] = useState(String(away.minutesBack))
  const [word, setWord] = useState('')
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const all = isCounted ? kept.reduce((sum, { count }) => sum + count, 0) : 0
  const ticked = sumOf(back)
  const enter = (counted: boolean): void => {
    const said = saidOf({ fixings: withCounts(kept, back), minutes, text: word })
    setSlips(said.kind === 'refused' ? said.problems : [])
    if (said.kind !== 'ok') return
    const leftOverIn = withCounts(leftOver, found).filter(({ count }) => count > 0)
    onSaid({ ...said.value, leftOverIn, ...(counted ? {} : { fixings: null }) })
  }
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    enter(isCounted)
  }
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
      {isCounted ? <Ticks label="Fixings that went back in" fixings={kept} counts={back} onChange={setBack} /> : null}
      {leftOver.length === 0 ? null : (
        <>
          <p className="quiet">Left over as it went together before. Tick what goes in now.</p>
          <Ticks label="Left over before, and in now" fixings={leftOver} counts={found} onChange={setFound} />
        </>
      )}
      <Fold title="Minutes and a word">
        <Field label="Minutes" value={minutes} onChange={setMinutes} unit="min" inputMode="decimal" />
        <Field label="A word" value={word} onChange={setWord} long />
      </Fold>
      <Problems problems={slips} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        {piece.kind === 'cover' ? 'Back on' : 'Back in'}
        {all === 0 ? '' : ticked === all ? `, all ${all} fixings` : `, ${ticked} of ${all} fixings`}
        {sumOf(found) === 0 ? '' : `, and ${sumOf(found)} left over before`}
      </Button>
      {all === 0 ? null : (
        <Button className="plain" isDisabled={busy} onPress={() => enter(false)}>
          Back, but nobody counted
        </Button>
      )}
    </form>
  )
}

const sumOf = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0)

const withCounts = (fixings: readonly Fixing[], counts: readonly number[]): readonly Fixing[] =>
  fixings.map((fixing, at) => ({ ...fixing, count: counts[at] ?? 0 }))
