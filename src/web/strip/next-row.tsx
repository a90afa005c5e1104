import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Fixing } from '../../bench/stripping/strip-note.ts'
import type { NextPiece } from '../../bench/stripping/strip-view.ts'
import { minutesText } from '../words.ts'
import { StepForm } from './step-form.tsx'
import { fixingList, placeFor, type StepSaid } from './step-notes.ts'

type NextRowProps = {
  readonly next: NextPiece
  readonly place: string
  readonly busy: boolean
  readonly onSaid: (said: StepSaid) => void
}

/** A cover or part that can come away: one tap where it is as it says, or what was otherwise. */
export const NextRow = ({ next, place, busy, onSaid }: NextRowProps) => {
  const [open, setOpen] = useState(false)
  const { piece, fixings, fixingsFrom, minutes, hint, cautions, after } = next
  const waits = after.length > 0
  const asSaid = (): void =>
    onSaid({
      fixings: (fixings ?? []).map((fixing) => ({ ...fixing, place: placeFor(fixing.kind, place) })),
      minutes,
      text: '',
    })
  const held = fixings !== null && fixings.length > 0
  const take = `${piece.kind === 'cover' ? 'Off' : 'Out'}, ${held ? 'as it says' : 'nothing held it'}`
  return (
    <li>
      <p className="strip-name">
        <strong>{piece.name}</strong>
        <span className="quiet">{minutes === 0 ? null : minutesText(minutes)}</span>
      </p>
      {fixings === null ? null : <p className="strip-held">{heldText(fixings, fixingsFrom)}</p>}
      {hint === null ? null : <p className="hint">{hint}</p>}
      {cautions.map((text) => (
        <p key={text} className="caution">
          {text}
        </p>
      ))}
      {waits ? <p className="quiet">After {after.map(({ name }) => name).join(', ')}.</p> : null}
      {waits ? null : (
        <div className="strip-keys">
          <Button className="key main" isDisabled={busy} onPress={asSaid} aria-label={`${take}: ${piece.name}`}>
            {take}
          </Button>
          <Button
            className="key"
            aria-expanded={open}
            aria-label={`Otherwise: ${piece.name}`}
            onPress={() => setOpen(!open)}
          >
            Otherwise
          </Button>
        </div>
      )}
      {open && !waits ? <StepForm next={next} place={place} busy={busy} onSaid={onSaid} /> : null}
    </li>
  )
}

const heldText = (fixings: readonly Fixing[], from: NextPiece['fixingsFrom']): string => {
  if (fixings.length === 0) return from === 'last-time' ? 'Nothing held it last time' : 'No fixings, by the blueprint'
  return `${fixingList(fixings)}${from === 'last-time' ? ', as it went in last time' : ''}`
}
