import { Fragment } from 'react'
import type { UseQueryResult } from '@tanstack/react-query'
import type { Blueprint, Fault } from '../../blueprint/schema.ts'
import type { FaultRate } from '../../machine/rates.ts'
import { complaintsText, percentText, sentence } from '../words.ts'
import { Fact } from './facts.tsx'
import { checksByKind, checksShowing, complaintsOf, rateText } from './of-part.ts'

type FaultProps = {
  readonly blueprint: Blueprint
  readonly fault: Fault
  readonly rates: UseQueryResult<ReadonlyMap<string, FaultRate>>
}

/** One way in which a part fails: how it looks, how often, what is complained of, what could show it. */
export const FaultFacts = ({ blueprint, fault, rates }: FaultProps) => {
  const checks = checksByKind(checksShowing(blueprint, fault))
  const said = complaintsOf(fault)
  return (
    <li className="of-part">
      <h5>{fault.name}</h5>
      <p>
        {sentence(fault.how)}
        {fault.comesAndGoes === undefined ? null : ' Comes and goes when the part is moved.'}
      </p>
      {fault.danger === undefined ? null : <p className="caution">Not to be run. {sentence(fault.danger)}</p>}
      <dl className="facts">
        <Fact name="How often">
          <Rate rates={rates} fault={fault.id} />
        </Fact>
        <Fact name="Complaints">{said.length === 0 ? 'None: nobody complains of this.' : <Said said={said} />}</Fact>
        <Fact name="What could show it">
          {checks.length === 0 ? (
            'None at the part itself.'
          ) : (
            <ul className="lines">
              {checks.map((kind) => (
                <li key={kind.name}>
                  <span className="quiet">{kind.name}:</span> {kind.checks.join('; ')}
                </li>
              ))}
            </ul>
          )}
        </Fact>
      </dl>
    </li>
  )
}

const Said = ({ said }: { readonly said: ReturnType<typeof complaintsOf> }) =>
  said.map(({ complaint, probability }, at) => (
    <Fragment key={complaint}>
      {at === 0 ? null : '; '}
      {complaintsText([complaint])} <span className="figure">{percentText(probability)}</span>
    </Fragment>
  ))

const Rate = ({ rates, fault }: { readonly rates: FaultProps['rates']; readonly fault: string }) => {
  if (rates.error !== null) return <>Could not be worked out: {rates.error.message}</>
  const rate = rates.data?.get(fault)
  if (rate === undefined) return <>Working it out …</>
  return (
    <>
      {rateText(rate)}.<span className="evidence">Evidence: {rate.sources.join('; ')}.</span>
    </>
  )
}
