import type { Blueprint, Repair } from '../../blueprint/schema.ts'
import { minutesText, percentText, sentence } from '../words.ts'
import { CoversInOrder, Fact } from './facts.tsx'
import { costText } from './of-part.ts'

type RepairProps = { readonly blueprint: Blueprint; readonly repair: Repair }

/** One repair: what it mends, what must be open, each way of doing it, and the short cut that is not offered. */
export const RepairFacts = ({ blueprint, repair }: RepairProps) => (
  <li className="of-part">
    <h5>{repair.name}</h5>
    {repair.note === undefined ? null : <p>{sentence(repair.note)}</p>}
    <dl className="facts">
      <Fact name="Mends">{repair.removes.map((id) => faultName(blueprint, id)).join('; ')}</Fact>
      <Fact name="Covers first">
        <CoversInOrder blueprint={blueprint} wanted={repair.coversOff} />
      </Fact>
      <Fact name={repair.options.length === 1 ? 'How' : 'Ways'}>
        <ul>
          {repair.options.map((option) => (
            <li key={option.id}>
              <strong>{option.name}</strong>: <span className="figure">{minutesText(option.minutes)}</span>,{' '}
              {costText(option.costMinor)}. Succeeds <span className="figure">{percentText(option.success)}</span>;
              breaks something <span className="figure">{percentText(option.breakRisk)}</span>.
            </li>
          ))}
        </ul>
      </Fact>
    </dl>
    {repair.forbidden === undefined ? null : (
      <p className="caution">Never do this instead. {sentence(repair.forbidden)}</p>
    )}
  </li>
)

const faultName = (blueprint: Blueprint, id: string): string =>
  blueprint.faults.find((one) => one.id === id)?.name ?? id
