import type { UseQueryResult } from '@tanstack/react-query'
import { moneyText } from '../../base/money.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { FaultRate } from '../../machine/rates.ts'
import { Fold } from '../parts/fold.tsx'
import { CoversInOrder, Fact } from './facts.tsx'
import { FaultFacts } from './fault-facts.tsx'
import { faultsOf, repairsOf } from './of-part.ts'
import { RepairFacts } from './repair-facts.tsx'

type Part = Blueprint['parts'][number]
type PartProps = {
  readonly blueprint: Blueprint
  readonly part: Part
  readonly rates: UseQueryResult<ReadonlyMap<string, FaultRate>>
}

/** A part that opens to all that is known of it. */
export const PartFold = ({ blueprint, part, rates }: PartProps) => {
  const faults = faultsOf(blueprint, part.id).length
  return (
    <Fold
      className="part"
      title={
        <>
          <span>{part.name}</span>{' '}
          <span className="quiet">{faults === 0 ? 'no fault' : faults === 1 ? '1 fault' : `${faults} faults`}</span>
        </>
      }
    >
      <PartFacts blueprint={blueprint} part={part} rates={rates} />
    </Fold>
  )
}

const PartFacts = ({ blueprint, part, rates }: PartProps) => {
  const faults = faultsOf(blueprint, part.id)
  const repairs = repairsOf(blueprint, part.id)
  return (
    <>
      <dl className="facts">
        <Fact name="What it does">{part.does}</Fact>
        <Fact name="How to reach it">
          <CoversInOrder blueprint={blueprint} wanted={part.behind === undefined ? [] : [part.behind]} />
        </Fact>
        <Fact name="As a spare">
          <Spare blueprint={blueprint} part={part} />
        </Fact>
      </dl>
      <h4>How it fails</h4>
      {faults.length === 0 ? <p>No fault of its own is known here.</p> : null}
      <ul className="of-parts">
        {faults.map((fault) => (
          <FaultFacts key={fault.id} blueprint={blueprint} fault={fault} rates={rates} />
        ))}
      </ul>
      <h4>How it is repaired</h4>
      {repairs.length === 0 ? <p>It is not: nothing here removes such a fault.</p> : null}
      <ul className="of-parts">
        {repairs.map((repair) => (
          <RepairFacts key={repair.id} blueprint={blueprint} repair={repair} />
        ))}
      </ul>
    </>
  )
}

const Spare = ({ blueprint, part }: { readonly blueprint: Blueprint; readonly part: Part }) => {
  const whole = blueprint.parts.find(({ id }) => id === part.within)
  const { spareMinor } = part
  return (
    <>
      {spareMinor === undefined
        ? whole === undefined
          ? 'Fetches nothing worth the listing.'
          : null
        : `${moneyText(spareMinor.low, 'GBP')} to ${moneyText(spareMinor.high, 'GBP')}, tested.`}
      {whole === undefined ? null : ` Goes with: ${whole.name}.`}
    </>
  )
}
