import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { problem, type Problem } from '../../base/problem.ts'
import { wearLevels, type Wear } from '../../facts/age-and-wear.ts'
import { Field } from '../parts/field.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { useSheet } from './sheet.ts'

const uses = [
  { id: 'unknown', name: 'not known' },
  ...wearLevels.map((id) => ({ id, name: id })),
] as const satisfies readonly {
  id: Wear | 'unknown'
  name: string
}[]

/** How old it is and how hard it was used: both shift what is likely to be wrong, a little. Whose make it is goes out with open data. */
export const AgeForm = () => {
  const { bench, document } = useSheet()
  const { ageYears, wear, make: known = '' } = document.state
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [age, setAge] = useState(ageYears === null ? '' : String(ageYears))
  const [use, setUse] = useState<Wear | 'unknown'>(wear ?? 'unknown')
  const [make, setMake] = useState(known)
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const typed = age.trim()
    if (!/^\d*([.,]\d+)?$/.test(typed)) return setSlips([noNumber])
    setSlips([])
    await write([
      {
        kind: 'history',
        ...(typed === '' ? {} : { ageYears: Number(typed.replace(',', '.')) }),
        ...(use === 'unknown' ? {} : { wear: use }),
        ...(make.trim() === '' ? {} : { make: make.trim() }),
      },
    ])
  }
  return (
    <form className="mark-form" onSubmit={(event) => void submit(event)} aria-label="Age and use" noValidate>
      <Field label="Age" value={age} onChange={setAge} unit="years" inputMode="numeric" problems={slips} />
      <OneOf label="Use" options={uses} chosen={use} onChange={setUse} />
      <Field
        label="Make"
        value={make}
        onChange={setMake}
        hint="As it stands on the machine; goes out with open repair data alone."
      />
      <Button type="submit" className="key" isDisabled={busy}>
        Note age, use and make
      </Button>
      <Problems problems={problems} />
    </form>
  )
}

const noNumber = problem('not-a-number', 'age', 'This is not a number of years', 'Write such as 12')
