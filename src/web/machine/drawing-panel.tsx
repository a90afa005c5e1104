import { lazy, Suspense } from 'react'
import type { CheckMove } from '../../machine/view.ts'
import { useSheet } from './sheet.ts'

const Drawing = lazy(async () => ({ default: (await import('../drawing/drawing.tsx')).Drawing }))
const AirRibbon = lazy(async () => ({ default: (await import('../drawing/air-ribbon.tsx')).AirRibbon }))

const none: Readonly<Record<string, number>> = {}

/** The machine as drawn: circuit and air path, tinted by suspicion. */
export const DrawingPanel = ({ probes }: { readonly probes: CheckMove['probes'] }) => {
  const { blueprint, view, document } = useSheet()
  const tints = view?.parts ?? none
  return (
    <section className="panel" aria-label="Drawing">
      <h2>The machine</h2>
      <Suspense fallback={<p className="quiet">Drawing …</p>}>
        <Drawing blueprint={blueprint} tints={tints} off={document.state.off} probes={probes} />
        <AirRibbon blueprint={blueprint} tints={tints} />
      </Suspense>
    </section>
  )
}
