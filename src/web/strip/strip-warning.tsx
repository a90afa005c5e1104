import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { Link } from '../router.tsx'
import { useStrip } from './use-strip.ts'

type StripWarningProps = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  /** It is about to leave: then it counts with covers off too. */
  readonly leaves?: boolean
}

/** Parts that are out and fixings that are left over, once the machine is closed up or as it leaves. It bars nothing. */
export const StripWarning = ({ bench, document, blueprint, leaves = false }: StripWarningProps) => {
  const { strip, stale } = useStrip(document, blueprint)
  if (strip === null || stale || strip.warnings.length === 0 || (!leaves && !strip.isClosed)) return null
  return (
    <section className="alert" aria-label="Not all is back">
      {strip.warnings.map((text) => (
        <p key={text}>
          <strong>{text}</strong>
        </p>
      ))}
      <p>
        <Link to={{ kind: 'strip', bench, id: document.state.id }} className="on-its-own">
          Look at the strip-down
        </Link>
      </p>
    </section>
  )
}
