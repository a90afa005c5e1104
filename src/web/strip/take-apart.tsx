import { useState } from 'react'
import { beforeStripping } from '../../facts/strip-cautions.ts'
import type { NextPiece } from '../../bench/stripping/strip-view.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { readStored, writeStored } from '../stored.ts'
import { useNotes } from '../use-notes.ts'
import { NextRow } from './next-row.tsx'
import { nextPlace, stepNote, type StepSaid } from './step-notes.ts'
import { useStripSheet } from './strip-sheet.ts'

/** What comes off and out next, each noted with one tap where it is as the blueprint says. */
export const TakeApart = () => {
  const { bench, document, blueprint, strip, stale } = useStripSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const { place, setPlace } = usePlace(document.state.id)
  const [downTo, setDownTo] = useState('')
  const note = async (next: NextPiece, said: StepSaid): Promise<void> => {
    if (!(await write([stepNote(next.piece, 'away', said)]))) return
    say(`${next.piece.name}: ${next.piece.kind === 'cover' ? 'off' : 'out'}.`)
    if (keyOf(next) === downTo) setDownTo('')
    if ((said.fixings ?? []).some((fixing) => fixing.place === place)) setPlace(nextPlace(place))
  }
  const row = (next: NextPiece) => (
    <NextRow
      key={keyOf(next)}
      next={next}
      place={place}
      busy={busy || stale}
      onSaid={(said) => void note(next, said)}
    />
  )
  const behindNothing = new Set(blueprint.parts.filter(({ behind }) => behind === undefined).map(({ id }) => id))
  const isOutside = ({ piece }: NextPiece): boolean => piece.kind === 'part' && behindNothing.has(piece.id)
  const now = strip.next.filter(({ after }) => after.length === 0)
  const later = strip.next.filter(({ after }) => after.length > 0)
  const goal = strip.next.find((next) => keyOf(next) === downTo)
  const outside = now.filter(isOutside)
  const inside = now.filter((next) => next.piece.kind === 'part' && !isOutside(next))
  return (
    <>
      <ul className="caution" aria-label="Before the first cover">
        {beforeStripping.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <Field
        label="The fixings go in"
        value={place}
        onChange={setPlace}
        hint="One pot for each step: “pot 1” counts up by itself."
      />
      <Select label="Down to" value={goal === undefined ? '' : downTo} onChange={setDownTo}>
        <option value="">Whatever comes off</option>
        {later.map((next) => (
          <option key={keyOf(next)} value={keyOf(next)}>
            {next.piece.name}
          </option>
        ))}
      </Select>
      <Problems problems={problems} />
      {goal === undefined ? (
        <>
          <Rows title="Covers that come off now">{now.filter(({ piece }) => piece.kind === 'cover').map(row)}</Rows>
          {inside.length === 0 ? null : <Rows title="Parts that come out now">{inside.map(row)}</Rows>}
          {outside.length === 0 ? null : (
            <Fold title={`Parts on the outside: ${outside.length}`}>
              <ul className="strip-rows">{outside.map(row)}</ul>
            </Fold>
          )}
          {later.length === 0 ? null : (
            <Fold title={`Behind covers that are on: ${later.length}`}>
              <ul className="plain-list">
                {later.map((next) => (
                  <li key={keyOf(next)}>
                    {next.piece.name} <span className="quiet">after {namesOf(next.after)}</span>
                  </li>
                ))}
              </ul>
            </Fold>
          )}
        </>
      ) : (
        <Rows title={`On the way to it: ${goal.after.length + 1}`}>
          {strip.next
            .filter((next) => next === goal || goal.after.some((cover) => keyOf({ piece: cover }) === keyOf(next)))
            .map(row)}
        </Rows>
      )}
    </>
  )
}

const Rows = ({ title, children }: { readonly title: string; readonly children: readonly React.ReactNode[] }) => (
  <section className="panel" aria-label={title}>
    <h2>{title}</h2>
    {children.length === 0 ? <p className="quiet">Nothing more.</p> : <ul className="strip-rows">{children}</ul>}
  </section>
)

const keyOf = ({ piece }: Pick<NextPiece, 'piece'>): string => `${piece.kind} ${piece.id}`

const namesOf = (pieces: NextPiece['after']): string => pieces.map(({ name }) => name).join(', ')

/** Where the fixings of the next step go, kept in this tab. */
const usePlace = (machine: string) => {
  const stored = `thrum-strip-place-${machine}`
  const [place, setShown] = useState(() => readStored('session', stored) ?? '')
  const setPlace = (next: string): void => {
    setShown(next)
    writeStored('session', stored, next === '' ? null : next)
  }
  return { place, setPlace }
}
