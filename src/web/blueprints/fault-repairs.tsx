import type { Blueprint, Fault } from '../../blueprint/schema.ts'
import { minutesText, percentText, sentence } from '../words.ts'
import { costText, repairsThatRemove, wholeMinutes } from './of-part.ts'

/** Every way to remove a fault, with all its minutes and money, and the short cuts that are none. */
export const FaultRepairs = ({ blueprint, fault }: { readonly blueprint: Blueprint; readonly fault: Fault }) => {
  const repairs = repairsThatRemove(blueprint, fault.id)
  if (repairs.length === 0) return <>Nothing here mends it.</>
  return (
    <>
      <ul className="lines">
        {repairs.flatMap((repair) =>
          repair.options.map((option) => (
            <li key={`${repair.id} ${option.id}`}>
              {repair.name}, <strong>{option.name.charAt(0).toLowerCase() + option.name.slice(1)}</strong>:{' '}
              <span className="figure">{minutesText(wholeMinutes(blueprint, repair, option.minutes))}</span> with
              covers, {costText(option.costMinor)}. Succeeds{' '}
              <span className="figure">{percentText(option.success)}</span>; breaks something{' '}
              <span className="figure">{percentText(option.breakRisk)}</span>.
            </li>
          )),
        )}
      </ul>
      {[...new Set(repairs.flatMap(({ forbidden }) => forbidden ?? []))].map((forbidden) => (
        <p key={forbidden} className="caution">
          Never: {sentence(forbidden.charAt(0).toLowerCase() + forbidden.slice(1))}
        </p>
      ))}
    </>
  )
}
