import { useId } from 'react'
import type { AnswerableRow } from '../../bench/functions/functions-view.ts'
import { minutesText } from '../words.ts'
import { FunctionEntry } from './function-entry.tsx'
import { FunctionTold } from './function-told.tsx'
import { useFunctionsSheet } from './functions-sheet.ts'

type ItemProps = {
  readonly row: AnswerableRow
  readonly isOpen: boolean
  readonly onToggle: () => void
  readonly onDone: () => void
}

/** One function: a line that says how it stands, and under it how to try it. */
export const FunctionItem = ({ row, isOpen, onToggle, onDone }: ItemProps) => {
  const id = useId()
  return (
    <li id={`function-${row.id}`} className="function">
      <button type="button" className="function-head" aria-expanded={isOpen} aria-controls={id} onClick={onToggle}>
        <span className="function-name">{row.name}</span>
        <span className={`function-state ${stateClass(row)}`}>{stateText(row)}</span>
      </button>
      <div id={id} className="function-body" hidden={!isOpen}>
        {isOpen ? <Body row={row} onDone={onDone} /> : null}
      </div>
    </li>
  )
}

const Body = ({ row, onDone }: Pick<ItemProps, 'row' | 'onDone'>) => {
  const { document } = useFunctionsSheet()
  return (
    <>
      {row.state.kind === 'again' ? (
        <p>
          <strong>To do again.</strong> {row.state.why}. Before: {row.state.was.text}.
        </p>
      ) : null}
      {row.cautions.length === 0 ? null : <p className="caution">{row.cautions.join(' ')}</p>}
      <p className="function-how">{row.how}</p>
      {row.settings.length === 0 ? null : <p>{row.settings.join(' · ')}</p>}
      <p>
        <strong>Good:</strong> {row.good}.
      </p>
      <p className="quiet">
        {minutesText(row.minutes)}
        {row.parts.length === 0 ? null : ` · ${row.parts.map(({ name }) => name).join(', ')}`}
      </p>
      <FunctionTold state={row.state} />
      {document.state.left === null ? <FunctionEntry row={row} onDone={onDone} /> : null}
    </>
  )
}

const stateClass = ({ state }: AnswerableRow): string => (state.kind === 'told' ? state.told.result : state.kind)

/** In words, so that nothing is said by colour alone. */
const stateText = ({ state, barred }: AnswerableRow): string => {
  if (state.kind === 'told') return state.told.text
  if (state.kind === 'again') return 'to do again'
  return barred.length === 0 ? 'to do' : 'not yet'
}
