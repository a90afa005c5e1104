import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../../bench/contract.ts'
import type { PartState } from '../../bench/shelf/part-state.ts'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { useMachines } from '../queries.ts'
import { usePartWriter } from './use-part-writer.ts'

/** Keeps a part for a machine in hand, or sets it free again. */
export const KeepForm = ({ bench, state }: { readonly bench: BenchId; readonly state: PartState }) => {
  const { add, busy, problems } = usePartWriter(bench)
  const { data } = useMachines(bench)
  const [machine, setMachine] = useState('')
  const inHand = (data?.pages.flatMap((page) => page.machines) ?? []).filter(
    ({ left, practiceSeed }) => left === null && practiceSeed === null,
  )
  if (state.reservedFor !== null) {
    return (
      <>
        <Button
          className="key"
          isDisabled={busy}
          onPress={() => void add(state.id, state.version, { kind: 'released' })}
        >
          Set it free
        </Button>
        <Problems problems={problems} />
      </>
    )
  }
  return (
    <div className="any-move">
      <Select label="Keep it for" value={machine} onChange={setMachine}>
        <option value="">Choose a machine in hand</option>
        {inHand.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </Select>
      <Button
        className="key"
        isDisabled={busy || machine === ''}
        onPress={() => void add(state.id, state.version, { kind: 'reserved', machine })}
      >
        Keep it
      </Button>
      <Problems problems={problems} />
    </div>
  )
}
