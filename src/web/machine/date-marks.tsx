import { useQuery } from '@tanstack/react-query'
import { Button } from 'react-aria-components/Button'
import type { DateMark, MarksAnswer } from '../../machine/stamps/marks.ts'
import { engine } from '../engine-client.ts'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { AgeForm } from './age-form.tsx'
import { MarkForm } from './mark-form.tsx'
import { useSheet } from './sheet.ts'

/** Date marks of the parts: what each says, when the machine was put together, and its age and use. */
export const DateMarks = () => {
  const { marks, ageYears, wear, make = '' } = useSheet().document.state
  return (
    <section className="panel" aria-label="Date marks">
      <Fold title={marks.length === 0 ? 'Date marks' : `Date marks (${marks.length})`}>
        <p className="quiet">
          Moulded rings and dots inside covers, labels on motor and boards. Three dated parts say when it was put
          together, and which part came later.
        </p>
        <Found />
        <MarkForm />
        <AgeForm key={`${ageYears ?? ''} ${wear ?? ''} ${make}`} />
      </Fold>
    </section>
  )
}

const useMarks = (marks: readonly DateMark[], inputW: number) =>
  useQuery({
    queryKey: ['marks', marks, inputW],
    queryFn: async ({ signal }) => {
      const today = new Date().toISOString().slice(0, 10)
      return (await engine().ask({ kind: 'marks', marks, inputW, today }, signal)).marks
    },
    enabled: marks.length > 0,
    staleTime: Infinity,
    retry: false,
  })

const Found = () => {
  const { document } = useSheet()
  const { marks, plate } = document.state
  const { data, error } = useMarks(marks, plate.powerW)
  if (error !== null) return <p>Could not be worked out: {error.message}</p>
  if (marks.length === 0 || data === undefined) return null
  return (
    <>
      <Window found={data} />
      <ul className="marks" aria-label="Marks and what they say">
        {marks.map((mark) => (
          <Mark key={mark.note} mark={mark} found={data} />
        ))}
      </ul>
    </>
  )
}

const Window = ({ found }: { readonly found: MarksAnswer }) => {
  const { bench, document } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const { ageYears } = found
  return (
    <>
      {found.windowText === null ? null : (
        <p>
          Put together: <strong className="figure">{found.windowText}</strong>
        </p>
      )}
      {found.remarks.map((remark) => (
        <p key={remark} className="quiet">
          {remark}.
        </p>
      ))}
      {ageYears === null || document.state.ageYears !== null ? null : (
        <Button className="key" isDisabled={busy} onPress={() => void write([{ kind: 'history', ageYears }])}>
          {`Take it as ${ageYears} years old`}
        </Button>
      )}
      <Problems problems={problems} />
    </>
  )
}

const Mark = ({ mark, found }: { readonly mark: DateMark; readonly found: MarksAnswer }) => {
  const { bench, document, blueprint } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const said = found.marks.find(({ note }) => note === mark.note)
  const name = blueprint.parts.find(({ id }) => id === mark.part)?.name ?? mark.part
  return (
    <li>
      <span>
        <strong>{name}</strong>: {said?.seen}
        <br />
        <span className="figure">{said?.says.join(' or ')}</span>
        {said === undefined || said.flag === null ? null : <span className="mark-flag">{said.flag}</span>}
      </span>
      <Button
        className="plain"
        aria-label={`Strike out the mark on ${name}`}
        isDisabled={busy}
        onPress={() => void write([{ kind: 'struck', note: mark.note, reason: '' }])}
      >
        Strike out
      </Button>
      <Problems problems={problems} />
    </li>
  )
}
