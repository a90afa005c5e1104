import { useState } from 'react'
import { inSentence } from '../../base/in-sentence.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
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
  const { bench, document, blueprint, strip, stale, noted } = useStripSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const { place, setPlace } = usePlace(document.state.id)
  const [downTo, setDownTo] = useState('')
  const note = async (next: NextPiece, said: StepSaid): Promise<void> => {
    if (!(await write([stepNote(next.piece, 'away', said)]))) return
    say(`${next.piece.name}: ${next.piece.kind === 'cover' ? 'off' : 'out'}.`)
    noted('away')
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
  const goal = strip.next.find((next) => keyOf(next) === downTo)
  const arrived = goal === undefined ? nameOf(blueprint, downTo) : null
  return (
    <>
      {strip.isClosed ? (
        <ul className="caution" aria-label="Before the first cover">
          {beforeStripping.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      ) : null}
      <Field
        label="The fixings go in"
        value={place}
        onChange={setPlace}
        hint="One pot for each step: “pot 1” counts up by itself."
      />
      <Select label="Down to" value={downTo} onChange={setDownTo}>
        <option value="">Whatever comes off</option>
        {strip.next
          .filter((next) => next.after.length > 0 || next === goal)
          .map((next) => (
            <option key={keyOf(next)} value={keyOf(next)}>
              {next.piece.name}
            </option>
          ))}
        {arrived === null ? null : <option value={downTo}>{arrived}</option>}
      </Select>
      <Problems problems={problems} />
      {goal !== undefined ? (
        <Rows title={`On the way to it: ${goal.after.length + 1}`}>
          {strip.next
            .filter((next) => next === goal || goal.after.some((cover) => keyOf({ piece: cover }) === keyOf(next)))
            .map(row)}
        </Rows>
      ) : arrived === null ? (
        <ComesAway row={row} />
      ) : (
        <>
          <p className="strip-whole">You are there: {inSentence(arrived)}.</p>
          <Fold title="What else comes off">
            <ComesAway row={row} />
          </Fold>
        </>
      )}
    </>
  )
}

/** All that can come away now, and what is still behind covers. */
const ComesAway = ({ row }: { readonly row: (next: NextPiece) => React.ReactNode }) => {
  const { blueprint, strip } = useStripSheet()
  const behindNothing = new Set(blueprint.parts.filter(({ behind }) => behind === undefined).map(({ id }) => id))
  const isOutside = ({ piece }: NextPiece): boolean => piece.kind === 'part' && behindNothing.has(piece.id)
  const now = strip.next.filter(({ after }) => after.length === 0)
  const later = strip.next.filter(({ after }) => after.length > 0)
  const outside = now.filter(isOutside)
  const inside = now.filter((next) => next.piece.kind === 'part' && !isOutside(next))
  return (
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
  )
}

const Rows = ({ title, children }: { readonly title: string; readonly children: readonly React.ReactNode[] }) => (
  <section className="panel" aria-label={title}>
    <h2>{title}</h2>
    {children.length === 0 ? <p className="quiet">Nothing more.</p> : <ul className="strip-rows">{children}</ul>}
  </section>
)

const keyOf = ({ piece }: Pick<NextPiece, 'piece'>): string => `${piece.kind} ${piece.id}`

/** The name of what a choice in “Down to” stands for; null where nothing is chosen. */
const nameOf = (blueprint: Blueprint, key: string): string | null => {
  const [kind, id] = key.split(' ')
  return (kind === 'cover' ? blueprint.covers : blueprint.parts).find((one) => one.id === id)?.name ?? null
}

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
