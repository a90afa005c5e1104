import { lazy, Suspense, useEffect, useState } from 'react'
import { inSentence } from '../../base/in-sentence.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { MachineView } from '../../machine/view.ts'
import { Different } from '../adapt/different.tsx'
import { Account } from '../machine/account.tsx'
import { Alerts } from '../machine/alerts.tsx'
import { dryingOf } from '../clean/drying-of.ts'
import { choiceOf, moveOf, type Choice } from '../machine/choice.ts'
import { Covers } from '../machine/covers.tsx'
import { DateMarks } from '../machine/date-marks.tsx'
import { DrawingPanel } from '../machine/drawing-panel.tsx'
import { FilmSign } from '../machine/film-sign.tsx'
import { Grounds } from '../machine/grounds.tsx'
import { mayWarn } from '../machine/may-warn.ts'
import { LookedFurther } from '../machine/looked-further.tsx'
import { LeftCard } from '../machine/left-card.tsx'
import { LastNote } from '../machine/last-note.tsx'
import { MoneyStrip } from '../machine/money-strip.tsx'
import { MoveCard } from '../machine/move-card.tsx'
import { notExplained, type NotExplained } from '../machine/not-explained.ts'
import { NotesLog } from '../machine/notes-log.tsx'
import { OtherMoves } from '../machine/other-moves.tsx'
import { SheetContext, useSheet, type Sheet } from '../machine/sheet.ts'
import { Suspects } from '../machine/suspects.tsx'
import { TakePartsOff } from '../machine/take-parts-off.tsx'
import { WhatThen } from '../machine/what-then.tsx'
import { Loading } from '../parts/loading.tsx'
import { say } from '../parts/live.tsx'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { useFurtherView } from '../use-further-view.ts'
import { useMachineView } from '../use-machine-view.ts'
import { complaintsText, percentText } from '../words.ts'

const DryingAlert = lazy(async () => ({ default: (await import('../clean/drying-alert.tsx')).DryingAlert }))
const FromAdvert = lazy(async () => ({ default: (await import('../buy/from-advert.tsx')).FromAdvert }))

const StripWarning = lazy(async () => ({ default: (await import('../strip/strip-warning.tsx')).StripWarning }))

/** What is wrong with this one, and what to do next. */
export const MachinePage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: machine, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(machine?.state.blueprint ?? '')
  const { view: first, stale, failure } = useMachineView(bench, machine, blueprint)
  const further = useFurtherView(bench, machine, blueprint, first !== null && !stale)
  // Looking further gives better figures for the same move; another move never changes the card under a hand.
  const agreed = first !== null && !stale && further !== null && choiceOf(further.next) === choiceOf(first.next)
  const view = agreed ? { ...first, next: further.next, worth: further.worth } : first
  if (machine === undefined || blueprint === undefined) {
    return (
      <div className="sheet">
        <PageTitle windowTitle="Machine">Machine</PageTitle>
        <Loading what="the machine" error={error ?? blueprintError} />
      </div>
    )
  }
  return (
    <SheetContext value={{ bench, document: machine, blueprint, view, stale }}>
      <MachineSheet failure={failure} further={agreed || stale ? null : further} />
    </SheetContext>
  )
}

type MachineSheetProps = { readonly failure: string | null; readonly further: MachineView | null }

const MachineSheet = ({ failure, further }: MachineSheetProps) => {
  const sheet = useSheet()
  const { state } = sheet.document
  const { chosen, turn, choose, hold } = useChoice()
  const shown = shownMove(sheet, chosen)
  const chooseAndShow = (choice: Choice): void => {
    choose(choice)
    toTheCard()
  }
  useSaidNext(sheet)
  return (
    <>
      <MoneyStrip />
      <div className="sheet machine">
        <div className="machine-title">
          <PageTitle windowTitle={state.name}>{state.name}</PageTitle>
          <p className="quiet">
            {state.model === '' ? null : `${state.model} · `}
            {complaintsText(state.claimed.complaints)} ·{' '}
            <Link to={{ kind: 'blueprint', id: sheet.blueprint.id }}>{sheet.blueprint.name}</Link>
          </p>
          {state.left === null ? <Verdict /> : null}
          <FilmSign />
          <p className="page-links">
            {sheet.blueprint.airWays.length === 0 ? null : (
              <Link to={{ kind: 'air', bench: sheet.bench, id: state.id }} className="on-its-own">
                How it breathes
              </Link>
            )}
            <Link to={{ kind: 'proof', bench: sheet.bench, id: state.id }} className="on-its-own">
              Is it safe to sell?
            </Link>
            {state.practiceSeed === null ? (
              <Link to={{ kind: 'functions', bench: sheet.bench, id: state.id }} className="on-its-own">
                Does it all work?
              </Link>
            ) : null}
            <Link to={{ kind: 'asking', bench: sheet.bench, id: state.id }} className="on-its-own">
              What to ask
            </Link>
            <Link to={{ kind: 'clean', bench: sheet.bench, id: state.id }} className="on-its-own">
              Clean
            </Link>
            <Link to={{ kind: 'photos', bench: sheet.bench, id: state.id }} className="on-its-own">
              Photographs
            </Link>
            <Link to={{ kind: 'sale', bench: sheet.bench, id: state.id }} className="on-its-own">
              Sale sheet
            </Link>
            <Link to={{ kind: 'strip', bench: sheet.bench, id: state.id }} className="on-its-own">
              Strip-down
            </Link>
            <Link to={{ kind: 'story', bench: sheet.bench, id: state.id }} className="on-its-own">
              Story and film
            </Link>
          </p>
        </div>
        <div className="machine-left">
          {state.left === null ? <Alerts failure={failure} /> : <LeftCard />}
          {state.left !== null || dryingOf(state).length === 0 ? null : (
            <Suspense fallback={null}>
              <DryingAlert bench={sheet.bench} machine={state.id} drying={dryingOf(state)} />
            </Suspense>
          )}
          {state.left === null && mayWarn(sheet.document) && state.off.length === 0 ? (
            <Suspense fallback={null}>
              <StripWarning bench={sheet.bench} document={sheet.document} blueprint={sheet.blueprint} />
            </Suspense>
          ) : null}
          {state.left === null ? <LastNote /> : null}
          {shown === null ? null : (
            <MoveCard
              // A fresh card for each move: what was being typed for one check never lands on another.
              key={`${turn} ${choiceOf(shown.move)}`}
              shown={shown}
              isBest={chosen === null || shown.move === sheet.view?.next}
              onHold={() => hold(choiceOf(shown.move))}
              onBack={() => {
                choose(null)
                toTheCard()
              }}
            />
          )}
          {further === null || chosen !== null ? null : <LookedFurther further={further} onChoose={chooseAndShow} />}
          {shown === null ? null : <WhatThen key={`then ${choiceOf(shown.move)}`} move={shown.move} />}
          {state.left === null ? <OtherMoves chosen={chosen} onChoose={chooseAndShow} /> : null}
          {state.left === null ? <Different /> : null}
          <DrawingPanel probes={shown?.move.kind === 'check' ? shown.move.probes : null} />
        </div>
        <div className="machine-right">
          {state.left === null ? <Suspects /> : null}
          <Account />
          <NotesLog />
          {state.left === null ? <Covers /> : null}
          {state.left === null ? <TakePartsOff /> : null}
          {state.left === null ? <DateMarks /> : null}
          <Grounds />
          {state.advert === null ? null : (
            <Suspense fallback={null}>
              <FromAdvert bench={sheet.bench} advert={state.advert} />
            </Suspense>
          )}
        </div>
      </div>
    </>
  )
}

/** Brings the top of the sheet into sight, where the card begins. */
const toTheCard = (): void => document.getElementById('main')?.scrollIntoView()

/** Above this the fault counts as found; above the other it is worth naming. */
const foundAt = 0.85
const namedAt = 0.3

/** One line that says where the search stands. */
const Verdict = () => {
  const { view, stale, document, blueprint } = useSheet()
  const lead = view?.suspects[0]
  // What stood there is of older notes: after a repair it would be wrong.
  if (view === null || stale) return <p className="verdict quiet">Working it out …</p>
  if (lead === undefined || lead.probability < namedAt) return <p className="verdict">Not found yet.</p>
  const open = notExplained(lead, document.state.claimed.complaints, view.suspects, blueprint)
  return (
    <p className="verdict">
      {lead.probability >= foundAt ? 'Found' : 'Most likely'}: <strong>{lead.name}</strong>,{' '}
      <span className="figure">{percentText(lead.probability)}</span>
      {open === null ? null : <NotExplainedBy open={open} />}
    </p>
  )
}

/** What leads may not be what the machine was brought in for. */
const NotExplainedBy = ({ open: { complaint, first } }: { readonly open: NotExplained }) => (
  <span className="verdict-besides">
    It does not account for “{complaint}”
    {first === null ? '.' : `; for that first: ${inSentence(first.name)}, ${percentText(first.probability)}.`}
  </span>
)

/**
 * The move chosen for the card, or null for the best one. `turn` counts the cards laid down by choice; `hold` keeps the
 * card that is there although a note from elsewhere makes another move the best, so that what is typed on it stays.
 */
const useChoice = () => {
  const [{ chosen, turn }, setChoice] = useState<{ chosen: Choice | null; turn: number }>({ chosen: null, turn: 0 })
  const choose = (choice: Choice | null): void => setChoice((before) => ({ chosen: choice, turn: before.turn + 1 }))
  const hold = (choice: Choice): void => setChoice((before) => ({ ...before, chosen: choice }))
  return { chosen, turn, choose, hold }
}

const shownMove = ({ view, blueprint, document: machine }: Sheet, chosen: Choice | null) => {
  if (machine.state.left !== null) return null
  if (chosen !== null) return moveOf(chosen, view, blueprint, machine.state.off)
  return view === null ? null : { move: view.next, figured: true }
}

/** Says the next move and the leading suspect when they change, for those who do not see them change. */
const useSaidNext = ({ view, stale }: Sheet): void => {
  const lead = view?.suspects[0]
  const text = view === null || stale ? null : `Next move: ${view.next.name}. Leading suspect: ${lead?.name ?? 'none'}.`
  useEffect(() => {
    if (text !== null) say(text)
  }, [text])
}
