import type { ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import type { AnswerableRow } from '../../bench/functions/functions-view.ts'
import type { CoverStep } from '../../machine/view.ts'
import { coversToClose, coversToOpen } from '../machine/cover-steps.ts'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { minutesText } from '../words.ts'
import { useFunctionsSheet } from './functions-sheet.ts'

/** What must come off or go back on before a function can be tried, noted with one key; then what is under it. */
export const CoversFirst = ({ row, children }: { readonly row: AnswerableRow; readonly children: ReactNode }) => {
  const { bench, document, blueprint, stale } = useFunctionsSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const { off } = document.state
  const kind = row.closed ? 'closed' : 'opened'
  const steps = row.closed ? coversToClose(blueprint, off) : coversToOpen(blueprint, off, row.coversOff)
  if (steps.length === 0) return children
  return (
    <div className="covers-first">
      <p>
        {row.closed ? 'Plug out. Put back first: ' : 'Plug out. Take off first: '}
        {steps.map(stepText).join(', ')}.
      </p>
      <Button
        className="key enter"
        isDisabled={busy || stale}
        onPress={() => void write(steps.map(({ id, minutes }) => ({ kind, cover: id, minutes })))}
      >
        {row.closed ? 'All covers are back on' : 'It is off'}
      </Button>
      <Problems problems={problems} />
    </div>
  )
}

const stepText = ({ name, minutes, fixings }: CoverStep): string =>
  `${name} (${[minutesText(minutes), ...(fixings === '' ? [] : [fixings])].join(', ')})`
