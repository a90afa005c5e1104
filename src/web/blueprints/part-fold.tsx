import { moneyText } from '../../base/money.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { Fold } from '../parts/fold.tsx'
import { sentence } from '../words.ts'
import { CoversInOrder, Fact } from './facts.tsx'
import { FaultFacts, type FaultAnswers } from './fault-facts.tsx'
import { costText, faultsOf, repairsOf, replacementsOf } from './of-part.ts'
import { RepairFacts } from './repair-facts.tsx'

type Part = Blueprint['parts'][number]
type PartProps = {
  readonly blueprint: Blueprint
  readonly part: Part
  readonly answers: FaultAnswers
}

/** A part that opens to all that is known of it. */
export const PartFold = ({ blueprint, part, answers }: PartProps) => {
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
      <PartFacts blueprint={blueprint} part={part} answers={answers} />
    </Fold>
  )
}

const PartFacts = ({ blueprint, part, answers }: PartProps) => {
  const faults = faultsOf(blueprint, part.id)
  const repairs = repairsOf(blueprint, part.id)
  return (
    <>
      <dl className="facts">
        <Fact name="What it does">{part.does}</Fact>
        {part.note === undefined ? null : <Fact name="Worth knowing">{part.note}</Fact>}
        <Fact name="How to reach it">
          <CoversInOrder blueprint={blueprint} wanted={part.behind === undefined ? [] : [part.behind]} />
        </Fact>
        <Fact name="Another costs">
          <Costs blueprint={blueprint} part={part} />
        </Fact>
        <Needs blueprint={blueprint} part={part} />
        <Fact name="As a spare">
          <Spare blueprint={blueprint} part={part} />
        </Fact>
      </dl>
      <h4>How it fails</h4>
      {faults.length === 0 ? <p>No fault of its own is known here.</p> : null}
      <ul className="of-parts">
        {faults.map((fault) => (
          <FaultFacts key={fault.id} blueprint={blueprint} fault={fault} answers={answers} />
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

type OfPart = { readonly blueprint: Blueprint; readonly part: Part }

const Costs = ({ blueprint, part }: OfPart) => {
  const all = replacementsOf(blueprint, part.id)
  const whole = blueprint.parts.find(({ id }) => id === part.within)
  if (all.length === 0)
    return <>{whole === undefined ? 'No replacement is known here.' : `Comes with: ${whole.name}.`}</>
  return (
    <ul>
      {all.map(({ repair, option, isNew }) => (
        <li key={`${repair.id} ${option.id}`}>
          {isNew ? 'New' : 'Salvaged'}: {costText(option.costMinor)} <span className="quiet">({option.name})</span>
        </li>
      ))}
    </ul>
  )
}

/** What the replacement must be and how it goes in, as far as the blueprint says. */
const Needs = ({ blueprint, part }: OfPart) => {
  const own = replacementsOf(blueprint, part.id).map(({ repair }) => repair)
  const notes = [...new Set(own.flatMap(({ note }) => note ?? []))]
  return notes.length === 0 ? null : <Fact name="When replaced">{notes.map(sentence).join(' ')}</Fact>
}

const Spare = ({ blueprint, part }: OfPart) => {
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
