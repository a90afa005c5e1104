import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { dryingOf } from '../clean/drying-of.ts'
import { StillDrying } from '../clean/still-drying.tsx'
import { Link } from '../router.tsx'
import { useStrip } from './use-strip.ts'

type NotReadyProps = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
}

/** What stands against running or selling a machine besides its checks: covers off, parts out, fixings left over, what is wet. It bars nothing. */
export const NotReady = ({ bench, document, blueprint }: NotReadyProps) => {
  const { strip, stale } = useStrip(document, blueprint)
  const drying = dryingOf(document.state)
  const apart = strip === null || stale ? [] : [strip.coversOff, ...strip.warnings].filter((text) => text !== '')
  if (document.state.left !== null || (drying.length === 0 && apart.length === 0)) return null
  const id = document.state.id
  return (
    <section className="caution" aria-label="Not ready to run or to sell">
      {drying.length === 0 ? null : (
        <p>
          <strong>Not dry yet.</strong> <StillDrying drying={drying} />{' '}
          <Link to={{ kind: 'clean', bench, id }}>Say that it is dry</Link>
        </p>
      )}
      {apart.map((text) => (
        <p key={text}>
          <strong>{text}</strong>
        </p>
      ))}
      {apart.length === 0 ? null : (
        <p>
          <Link to={{ kind: 'strip', bench, id }}>Look at the strip-down</Link>
        </p>
      )}
    </section>
  )
}
