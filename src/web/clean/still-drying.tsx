import { dryText } from '../../base/clock-text.ts'
import type { Drying } from '../../bench/contract.ts'
import { driesAfter } from '../../facts/cleaning-tasks.ts'
import { useNow } from './use-now.ts'

type Dries = { readonly drying: readonly Drying[] }

/** What dries, in one line, for the list of the bench. */
export const StillDrying = ({ drying }: Dries) => {
  const now = useNow()
  return <>{drying.map(({ task, readyAt }) => `${driesAfter(task)}: ${dryText(readyAt, now)}`).join('; ')}.</>
}
