import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { problem, type Problem } from '../../base/problem.ts'
import type { ReadingResult } from '../../machine/result.ts'
import type { CheckMove } from '../../machine/view.ts'
import { engine } from '../engine-client.ts'
import { Problems } from '../parts/problems.tsx'
import { useSheet } from './sheet.ts'

type TakeReadingProps = {
  readonly move: CheckMove
  readonly enter: (result: ReadingResult) => Promise<boolean>
  readonly busy: boolean
}

/** On a virtual machine: has the virtual meter, eye or gauge take the reading, and enters it. Nothing on a real one. */
export const TakeReading = ({ move, enter, busy }: TakeReadingProps) => {
  const { document, blueprint } = useSheet()
  const [failures, setFailures] = useState<readonly Problem[]>([])
  const [taking, setTaking] = useState(false)
  const seed = document.state.practiceSeed
  if (seed === null) return null
  const take = async (): Promise<void> => {
    setTaking(true)
    setFailures([])
    try {
      const job = { state: document.state, notes: document.notes, blueprint }
      const { result } = await engine().ask({ kind: 'reading', job, seed, check: move.id })
      await enter(result)
    } catch (fault) {
      setFailures([
        problem('no-reading', '', fault instanceof Error ? fault.message : String(fault), 'Choose another check'),
      ])
    } finally {
      setTaking(false)
    }
  }
  return (
    <>
      <Button className="key enter take" isDisabled={busy || taking} onPress={() => void take()}>
        Take the reading
      </Button>
      <Problems problems={failures} />
    </>
  )
}
