import { useEffect, useState } from 'react'
import type { FunctionGroup } from '../../machine/functions/function-check.ts'
import type { AnswerableFunctions, AnswerableRow } from '../../bench/functions/functions-view.ts'
import { bringIntoSight } from '../parts/in-sight.ts'
import { FunctionItem } from './function-item.tsx'

const groupNames: Readonly<Record<FunctionGroup, string>> = {
  opened: 'Plug out, something opened',
  'by-hand': 'Plug out, closed',
  run: 'Running, covers on',
}

/** The functions in the order to try them; one is unfolded, and an answer unfolds the next. */
export const FunctionList = ({ view }: { readonly view: AnswerableFunctions }) => {
  const [open, setOpen] = useState<string | null>(nextToTry(view.rows, -1))
  const goOn = useFocusOn()
  return runsOf(view.rows).map(({ group, rows }) => {
    const name = groupNames[group]
    return (
      <section key={rows[0]?.id} className="functions" aria-label={name}>
        <h2>{name}</h2>
        <ul>
          {rows.map((row) => (
            <FunctionItem
              key={row.id}
              row={row}
              isOpen={row.id === open}
              onToggle={() => setOpen(row.id === open ? null : row.id)}
              onDone={() => {
                const next = nextToTry(view.rows, view.rows.indexOf(row))
                setOpen(next)
                goOn(next ?? row.id)
              }}
            />
          ))}
        </ul>
      </section>
    )
  })
}

/** The rows in their order, those of one group that stand together under one heading. */
const runsOf = (rows: readonly AnswerableRow[]): readonly { group: FunctionGroup; rows: readonly AnswerableRow[] }[] =>
  rows.reduce<readonly { group: FunctionGroup; rows: readonly AnswerableRow[] }[]>((runs, row) => {
    const last = runs.at(-1)
    return last?.group === row.group
      ? [...runs.slice(0, -1), { ...last, rows: [...last.rows, row] }]
      : [...runs, { group: row.group, rows: [row] }]
  }, [])

/** The first function after this place that is not told yet and may be tried, else the first of all of them; null where none is left. */
const nextToTry = (rows: readonly AnswerableRow[], after: number): string | null => {
  const isOpen = ({ state, barred }: AnswerableRow, place: number): boolean =>
    place !== after && state.kind !== 'told' && barred.length === 0
  return (rows.find((row, place) => place > after && isOpen(row, place)) ?? rows.find(isOpen))?.id ?? null
}

/** An answer folds its row away; who answered is led to the head of the next one, in sight with what is under it. */
const useFocusOn = (): ((row: string) => void) => {
  const [wanted, setWanted] = useState<{ readonly row: string } | null>(null)
  useEffect(() => {
    if (wanted === null) return
    const row = document.getElementById(`function-${wanted.row}`)
    const head = row?.querySelector('button')
    if (row !== null && head !== null && head !== undefined) bringIntoSight(head, row)
  }, [wanted])
  return (row) => setWanted({ row })
}
