import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { problem, type Problem } from '../../base/problem.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import { plateText, plugText } from '../../blueprint/entry.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Complaint } from '../../facts/complaints.ts'
import { addMachine, newId } from '../api.ts'
import { engine } from '../engine-client.ts'
import { Field } from '../parts/field.tsx'
import { Loading } from '../parts/loading.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { machineKey, machinesKey, useBlueprint, useBlueprints } from '../queries.ts'
import { goTo, PageTitle } from '../router.tsx'
import { seedFromText } from '../seed.ts'

/** Six figures: enough that no two evenings meet the same machine, short enough to tell someone. */
const anySeed = (): string => String((crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % 1_000_000)

/** A virtual machine with a hidden fault and a virtual meter. */
export const PracticePage = () => {
  const { data: blueprints, error } = useBlueprints()
  const [picked, setPicked] = useState('')
  const [seed, setSeed] = useState(anySeed)
  const id = picked === '' ? (blueprints?.[0]?.id ?? '') : picked
  const { data: blueprint } = useBlueprint(id)
  const { problems, busy, start } = useStart()
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    if (blueprint !== undefined) void start(blueprint, seed)
  }
  if (blueprints === undefined) {
    return (
      <div className="sheet">
        <PageTitle windowTitle="Practise">Practise</PageTitle>
        <Loading what="the blueprints" error={error} />
      </div>
    )
  }
  return (
    <form className="sheet" onSubmit={submit} aria-label="Practise" noValidate>
      <PageTitle windowTitle="Practise">Practise</PageTitle>
      <p>
        A machine that is not there, with a fault that you do not know. Take readings with a virtual meter, mend it or
        let it go, and see at the end what was hidden and how the plan alone would have done.
      </p>
      <Select label="Blueprint" value={id} onChange={setPicked}>
        {blueprints.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}: {plateText(one.plate)}, {plugText(one)}
          </option>
        ))}
      </Select>
      <div className="field-row seed-row">
        <Field
          label="Seed"
          value={seed}
          onChange={setSeed}
          inputMode="numeric"
          hint="The same seed hides the same fault."
          problems={problemsAt(problems, 'seed')}
        />
        <Button className="key" onPress={() => setSeed(anySeed())}>
          Another seed
        </Button>
      </div>
      <Problems problems={problemsElsewhere(problems, ['seed'])} />
      <Button type="submit" className="key enter" isDisabled={busy || blueprint === undefined}>
        {busy ? 'Hiding a fault …' : 'Start'}
      </Button>
    </form>
  )
}

const useStart = () => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const make = async (blueprint: Blueprint, seed: number): Promise<readonly Problem[]> => {
    const { complaints } = await engine().ask({ kind: 'complaints', blueprint, plate: blueprint.plate, seed })
    const answer = await addMachine('own', newId('practice'), virtualMachine(blueprint, seed, complaints))
    if (answer.kind === 'refused') return answer.problems
    client.setQueryData(machineKey('own', answer.value.state.id), answer.value)
    void client.invalidateQueries({ queryKey: machinesKey('own') })
    goTo({ kind: 'machine', bench: 'own', id: answer.value.state.id })
    return []
  }
  const start = async (blueprint: Blueprint, text: string): Promise<void> => {
    const seed = seedFromText(text)
    if (seed.kind === 'refused') return setProblems(seed.problems)
    setBusy(true)
    try {
      setProblems(await make(blueprint, seed.value))
    } catch (fault) {
      setProblems([
        problem('no-machine', '', fault instanceof Error ? fault.message : String(fault), 'Try another seed'),
      ])
    }
    setBusy(false)
  }
  return { problems, busy, start }
}

const virtualMachine = (
  blueprint: Blueprint,
  practiceSeed: number,
  complaints: readonly Complaint[],
): NoteContentInput => ({
  kind: 'added',
  name: `Practice ${practiceSeed}`,
  blueprint: blueprint.id,
  plate: blueprint.plate,
  paidMinor: 0,
  currency: 'GBP',
  complaints: [...complaints],
  practiceSeed,
})
