import { lazy, Suspense, useState } from 'react'
import { Fold } from '../parts/fold.tsx'
import { useSheet } from './sheet.ts'

const StripEntry = lazy(async () => ({ default: (await import('./strip-entry.tsx')).StripEntry }))

/** Parts off a machine that stays. A virtual machine has none that could lie on a shelf. */
export const TakePartsOff = () => {
  const { document } = useSheet()
  const [turn, setTurn] = useState(0)
  if (document.state.practiceSeed !== null) return null
  return (
    <Fold key={turn} title="Take a part off" className="panel-fold">
      <p className="hint">The machine stays in hand; the part takes its share of the cost to the shelf.</p>
      <Suspense fallback={<p className="quiet">Fetching the list …</p>}>
        <StripEntry breaks={false} onDone={() => setTurn(turn + 1)} />
      </Suspense>
    </Fold>
  )
}
