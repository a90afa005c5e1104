import type { BenchId, Drying } from '../../bench/contract.ts'
import { Link } from '../router.tsx'
import { StillDrying } from './still-drying.tsx'

type DryingAlertProps = { readonly bench: BenchId; readonly machine: string; readonly drying: readonly Drying[] }

/** Something of the machine is wet: it must not be run with it, nor go to a buyer. */
export const DryingAlert = ({ bench, machine, drying }: DryingAlertProps) => (
  <section className="alert" aria-label="Drying">
    <h2>Not dry yet</h2>
    <p>
      <StillDrying drying={drying} />
    </p>
    <p>
      Do not run it, and do not sell it as working, before that is felt and found dry.{' '}
      <Link to={{ kind: 'clean', bench, id: machine }}>Say that it is dry</Link>
    </p>
  </section>
)
