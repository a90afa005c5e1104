import { Fragment } from 'react'
import type { UseQueryResult } from '@tanstack/react-query'
import type { Blueprint, Fault } from '../../blueprint/schema.ts'
import type { Showing } from '../../machine/fault-shows.ts'
import type { FaultRate } from '../../machine/blueprint-rates.ts'
import { Fold } from '../parts/fold.tsx'
import { complaintsText, percentText, sentence } from '../words.ts'
import { Fact } from './facts.tsx'
import { complaintsOf, rateText } from './of-part.ts'
import { FaultRepairs } from './fault-repairs.tsx'

/** What the engines say of a blueprint's faults. */
export type FaultAnswers = {
  readonly rates: UseQueryResult<ReadonlyMap<string, FaultRate>>
  readonly shows: UseQueryResult<ReadonlyMap<string, readonly Showing[]>>
}

type FaultProps = { readonly blueprint: Blueprint; readonly fault: Fault; readonly answers: FaultAnswers }

/** One way in which a part fails: how it looks, how often, what is complained of, what shows it, what mends it. */
export const FaultFacts = ({ blueprint, fault, answers }: FaultProps) => {
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
          <Rate rates={answers.rates} fault={fault.id} />
        </Fact>
        <Fact name="Complaints">{said.length === 0 ? 'None: nobody complains of this.' : <Said said={said} />}</Fact>
        <Fact name="What shows it">
          <Shows blueprint={blueprint} shows={answers.shows} fault={fault} />
        </Fact>
        <Fact name="What mends it">
          <FaultRepairs blueprint={blueprint} fault={fault} />
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

const Rate = ({ rates, fault }: { readonly rates: FaultAnswers['rates']; readonly fault: string }) => {
  if (rates.error !== null) return <>Could not be worked out: {rates.error.message}</>
  const rate = rates.data?.get(fault)
  if (rate === undefined) return <>Working it out …</>
  return (
    <>
      {rateText(rate)}.<span className="evidence">Evidence: {rate.sources.join('; ')}.</span>
    </>
  )
}

/** How many of the checks stand before the fold. */
const inSight = 4

type ShowsProps = { readonly blueprint: Blueprint; readonly shows: FaultAnswers['shows']; readonly fault: Fault }

const Shows = ({ blueprint, shows, fault }: ShowsProps) => {
  if (shows.error !== null) return <>Could not be worked out: {shows.error.message}</>
  const checks = shows.data?.get(fault.id)
  if (checks === undefined) return <>Working it out …</>
  if (checks.length === 0) return <>No check here shows it plainly.</>
  return (
    <>
      <ShowList blueprint={blueprint} checks={checks.slice(0, inSight)} />
      {checks.length > inSight ? (
        <Fold className="more-checks" title={moreText(checks.length - inSight)}>
          <ShowList blueprint={blueprint} checks={checks.slice(inSight)} />
        </Fold>
      ) : null}
    </>
  )
}

const moreText = (count: number): string => (count === 1 ? 'One check more' : `${count} checks more`)

const ShowList = ({ blueprint, checks }: { readonly blueprint: Blueprint; readonly checks: readonly Showing[] }) => (
  <ul className="lines">
    {checks.map(({ check, text, soundText, sure }) => (
      <li key={check}>
        {blueprint.checks.find(({ id }) => id === check)?.name ?? check}: <strong>{text}</strong>,{' '}
        <span className="quiet">sound: {soundText}.</span> <span className="figure">{percentText(sure)}</span>
      </li>
    ))}
  </ul>
)
