import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { Fixing } from '../../bench/stripping/strip-note.ts'
import { Field } from '../parts/field.tsx'
import { problemsAt } from '../problems-at.ts'
import { Stepper } from './stepper.tsx'

/** A note takes no higher count of one kind. */
const mostOfAKind = 200

type FixingRowsProps = {
  readonly fixings: readonly Fixing[]
  readonly place: string
  readonly problems: readonly Problem[]
  readonly onChange: (fixings: readonly Fixing[]) => void
}

/** What held it: how many, of what kind, and where they are kept. */
export const FixingRows = ({ fixings, place, problems, onChange }: FixingRowsProps) => {
  const change = (at: number, part: Partial<Fixing>): void =>
    onChange(fixings.map((fixing, i) => (i === at ? { ...fixing, ...part } : fixing)))
  return (
    <fieldset className="fixing-rows">
      <legend>What held it</legend>
      {fixings.map((fixing, at) => (
        <div key={at} className="fixing-row">
          <Stepper
            label={fixing.kind === '' ? `kind ${at + 1}` : fixing.kind}
            value={fixing.count}
            least={0}
            most={mostOfAKind}
            onChange={(count) => change(at, { count })}
          />
          <Field
            label="Kind"
            value={fixing.kind}
            onChange={(kind) => change(at, { kind })}
            problems={problemsAt(problems, `fixings[${at}].kind`)}
          />
          <Field label="Kept in" value={fixing.place} onChange={(where) => change(at, { place: where })} />
        </div>
      ))}
      <Button className="key" onPress={() => onChange([...fixings, { count: 1, kind: '', place }])}>
        Another kind of fixing
      </Button>
    </fieldset>
  )
}
