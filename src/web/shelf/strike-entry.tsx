import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../../bench/contract.ts'
import type { PartState } from '../../bench/shelf/part-state.ts'
import { Problems } from '../parts/problems.tsx'
import { usePartWriter } from './use-part-writer.ts'

type StrikeProps = { readonly bench: BenchId; readonly state: PartState; readonly entry: string; readonly text: string }

/** Strikes out a slip; the entry stays in the history. */
export const StrikeEntry = ({ bench, state, entry, text }: StrikeProps) => {
  const { add, busy, problems } = usePartWriter(bench)
  return (
    <>
      <Button
        className="plain"
        isDisabled={busy}
        aria-label={`Strike out: ${text}`}
        onPress={() => void add(state.id, state.version, { kind: 'struck', note: entry })}
      >
        Strike out
      </Button>
      <Problems problems={problems} />
    </>
  )
}
