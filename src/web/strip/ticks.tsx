import type { Fixing } from '../../bench/stripping/strip-note.ts'
import { Stepper } from './stepper.tsx'

type TicksProps = {
  readonly label: string
  readonly fixings: readonly Fixing[]
  /** How many of each. */
  readonly counts: readonly number[]
  readonly onChange: (counts: readonly number[]) => void
}

/** Fixings to be ticked; of several of a kind fewer can be said. */
export const Ticks = ({ label, fixings, counts, onChange }: TicksProps) => {
  const set = (at: number, count: number): void => onChange(counts.map((one, i) => (i === at ? count : one)))
  return (
    <ul className="ticks" aria-label={label}>
      {fixings.map(({ count, kind, place }, at) => (
        <li key={`${kind} ${place} ${at}`}>
          <label>
            <input
              type="checkbox"
              checked={(counts[at] ?? 0) > 0}
              onChange={(e) => set(at, e.target.checked ? count : 0)}
            />
            <span>
              {count} × {kind}
              {place === '' ? null : <span className="quiet">from {place}</span>}
            </span>
          </label>
          {count > 1 && (counts[at] ?? 0) > 0 ? (
            <Stepper label={kind} value={counts[at] ?? 0} least={0} most={count} onChange={(n) => set(at, n)} />
          ) : null}
        </li>
      ))}
    </ul>
  )
}
