import { useEffect, useRef, useState } from 'react'
import type { FunctionGroup } from '../../machine/functions/function-check.ts'
import type { AnswerableFunctions, AnswerableRow } from '../../bench/functions/functions-view.ts'
import { FunctionItem } from './function-item.tsx'

const groups: readonly { readonly id: FunctionGroup; readonly name: string }[] = [
  { id: 'opened', name: 'Plug out, something opened' },
  { id: 'by-hand', name: 'Plug out, closed' },
  { id: 'run', name: 'Running, covers on' },
]

/** The functions in the order to try them; one is unfolded, and an answer unfolds the next. */
export const FunctionList = ({ view }: { readonly view: AnswerableFunctions }) => {
  const [open, setOpen] = useState<string | null>(nextToTry(view.rows, -1))
  useFocusOnOpened(open)
  return groups.map(({ id, name }) => {
    const rows = view.rows.filter(({ group }) => group === id)
    return rows.length === 0 ? null : (
      <section key={id} className="functions" aria-label={name}>
        <h2>{name}</h2>
        <ul>
          {rows.map((row) => (
            <FunctionItem
              key={row.id}
              row={row}
              isOpen={row.id === open}
              onToggle={() => setOpen(row.id === open ? null : row.id)}
              onDone={() => setOpen(nextToTry(view.rows, view.rows.indexOf(row)))}
            />
          ))}
        </ul>
      </section>
    )
  })
}

/** The first function after this place that is not told yet and may be tried. */
const nextToTry = (rows: readonly AnswerableRow[], after: number): string | null =>
  rows.find(({ state, barred }, place) => place > after && state.kind !== 'told' && barred.length === 0)?.id ?? null

/** An answer folds its row away; who was at its keys is then led to the next one. */
const useFocusOnOpened = (open: string | null): void => {
  const before = useRef(open)
  useEffect(() => {
    if (before.current === open) return
    before.current = open
    if (document.activeElement !== document.body || open === null) return
    document.getElementById(`function-${open}`)?.querySelector('button')?.focus()
  }, [open])
}
