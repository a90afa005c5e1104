import { useEffect, useState } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import { Account } from '../machine/account.tsx'
import { Alerts } from '../machine/alerts.tsx'
import { choiceOf, moveOf, type Choice } from '../machine/choice.ts'
import { Covers } from '../machine/covers.tsx'
import { DrawingPanel } from '../machine/drawing-panel.tsx'
import { Grounds } from '../machine/grounds.tsx'
import { LeftCard } from '../machine/left-card.tsx'
import { MoneyStrip } from '../machine/money-strip.tsx'
import { MoveCard } from '../machine/move-card.tsx'
import { NotesLog } from '../machine/notes-log.tsx'
import { OtherMoves } from '../machine/other-moves.tsx'
import { SheetContext, useSheet, type Sheet } from '../machine/sheet.ts'
import { Suspects } from '../machine/suspects.tsx'
import { Loading } from '../parts/loading.tsx'
import { say } from '../parts/live.tsx'
import { useBlueprint, useMachine } from '../queries.ts'
import { PageTitle } from '../router.tsx'
import { useMachineView } from '../use-machine-view.ts'
import { complaintsText } from '../words.ts'

/** What is wrong with this one, and what to do next. */
export const MachinePage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const { view, stale, failure } = useMachineView(document, blueprint)
  if (document === undefined || blueprint === undefined) {
    return (
      <div className="sheet">
        <PageTitle windowTitle="Machine">Machine</PageTitle>
        <Loading what="the machine" error={error ?? blueprintError} />
      </div>
    )
  }
  return (
    <SheetContext value={{ bench, document, blueprint, view, stale }}>
      <MachineSheet failure={failure} />
    </SheetContext>
  )
}

const MachineSheet = ({ failure }: { readonly failure: string | null }) => {
  const sheet = useSheet()
  const { state } = sheet.document
  const { chosen, turn, choose, hold } = useChoice()
  const shown = shownMove(sheet, chosen)
  useSaidNext(sheet)
  return (
    <>
      <MoneyStrip />
      <div className="sheet machine">
        <div className="machine-title">
          <PageTitle windowTitle={state.name}>{state.name}</PageTitle>
          <p className="quiet">{complaintsText(state.claimed.complaints)}</p>
        </div>
        <div className="machine-left">
          {state.left === null ? <Alerts failure={failure} /> : <LeftCard />}
          {shown === null ? null : (
            <MoveCard
              // A fresh card for each move: what was being typed for one check never lands on another.
              key={`${turn} ${choiceOf(shown.move)}`}
              shown={shown}
              isBest={chosen === null || shown.move === sheet.view?.next}
              onHold={() => hold(choiceOf(shown.move))}
              onBack={() => choose(null)}
            />
          )}
          {state.left === null ? <OtherMoves chosen={chosen} onChoose={choose} /> : null}
          <DrawingPanel probes={shown?.move.kind === 'check' ? shown.move.probes : null} />
        </div>
        <div className="machine-right">
          {state.left === null ? <Suspects /> : null}
          <Account />
          <NotesLog />
          {state.left === null ? <Covers /> : null}
          <Grounds />
        </div>
      </div>
    </>
  )
}

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

const shownMove = ({ view, blueprint, document }: Sheet, chosen: Choice | null) => {
  if (document.state.left !== null) return null
  if (chosen !== null) return moveOf(chosen, view, blueprint, document.state.off)
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
