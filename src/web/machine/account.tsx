import { Fragment, type ReactNode } from 'react'
import type { Blueprint } from '../../blueprint/schema.ts'
import { complaintsText } from '../words.ts'
import { seenLines } from './seen-lines.ts'
import { useSheet } from './sheet.ts'

/** Claimed, seen, confirmed and fixed: four different things, on four lines. */
export const Account = () => {
  const { document, blueprint } = useSheet()
  const { claimed, seen, confirmed, fixed, missing } = document.state
  const words = claimed.words === '' ? '' : ` “${claimed.words}”`
  return (
    <section className="panel" aria-label="What is known">
      <h2>What is known</h2>
      <dl className="account">
        <Line name="claimed">{[`${complaintsText(claimed.complaints)}.${words}`]}</Line>
        <Line name="seen">
          {[
            ...seen.map((one) =>
              [one.complaints.length === 0 ? '' : complaintsText(one.complaints), one.text]
                .filter((part) => part !== '')
                .join('. '),
            ),
            ...seenLines(document, blueprint),
          ]}
        </Line>
        <Line name="confirmed">{confirmed.map(({ fault }) => faultName(blueprint, fault))}</Line>
        <Line name="fixed">{fixed.map(({ repair, option }) => repairName(blueprint, repair, option))}</Line>
        {missing.length === 0 ? null : <Line name="missing">{missing.map((id) => partName(blueprint, id))}</Line>}
      </dl>
    </section>
  )
}

const Line = ({ name, children }: { readonly name: string; readonly children: readonly string[] }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children.length === 0 ? <span className="quiet">nothing yet</span> : stacked(children)}</dd>
  </div>
)

const stacked = (lines: readonly string[]): ReactNode =>
  lines.map((line, at) => (
    <Fragment key={`${at} ${line}`}>
      {at > 0 ? <br /> : null}
      {line}
    </Fragment>
  ))

const faultName = (blueprint: Blueprint, id: string): string =>
  blueprint.faults.find((fault) => fault.id === id)?.name ?? id

const partName = (blueprint: Blueprint, id: string): string =>
  blueprint.parts.find((part) => part.id === id)?.name ?? id

const repairName = (blueprint: Blueprint, id: string, option: string): string => {
  const repair = blueprint.repairs.find((one) => one.id === id)
  const way = repair?.options.find((one) => one.id === option)
  return [repair?.name ?? id, way?.name ?? option].join(', ')
}
