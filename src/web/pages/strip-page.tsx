import { useState } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import { Loading } from '../parts/loading.tsx'
import { useResultInSight } from '../parts/in-sight.ts'
import { OneOf } from '../parts/one-of.tsx'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { KeptPlaces } from '../strip/kept-places.tsx'
import { LeftOver } from '../strip/left-over.tsx'
import { OfferDifferent } from '../strip/offer-different.tsx'
import { PutBack } from '../strip/put-back.tsx'
import { LastStep, StepsBefore } from '../strip/steps-done.tsx'
import { StripContext, useStripSheet } from '../strip/strip-sheet.ts'
import { TakeApart } from '../strip/take-apart.tsx'
import { useStrip } from '../strip/use-strip.ts'
import '../style/strip.css'

/** What came off and out, in what order, with which fixings; and back in reverse, with nothing left over. */
export const StripPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const { strip, stale } = useStrip(document, blueprint)
  const showStep = useResultInSight(!stale, 'strip-last-step')
  const showLeftOver = useResultInSight(!stale, 'strip-left-over', 'strip-last-step')
  if (document === undefined || blueprint === undefined || strip === null)
    return (
      <div className="sheet">
        <PageTitle windowTitle="Strip-down">Strip-down</PageTitle>
        <Loading what="what is off and out" error={error ?? blueprintError} />
      </div>
    )
  const { name } = document.state
  return (
    <StripContext
      value={{ bench, document, blueprint, strip, stale, noted: (way) => (way === 'away' ? showStep : showLeftOver)() }}
    >
      <div className="sheet strip-sheet">
        <PageTitle windowTitle={`${name}: strip-down`}>{name}: strip-down</PageTitle>
        <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
          Back to the machine
        </Link>
        <Work />
      </div>
    </StripContext>
  )
}

const ways = [
  { id: 'apart', name: 'Take apart' },
  { id: 'back', name: 'Put back' },
] as const

/** A machine that has left is only looked at. */
const Work = () => {
  const { document, strip } = useStripSheet()
  const goesBack = strip.done.at(-1)?.way === 'back'
  const [way, setWay] = useState<'apart' | 'back'>(goesBack ? 'back' : 'apart')
  const inHand = document.state.left === null
  return (
    <>
      {inHand ? (
        <OneOf label="Which way" hideLabel options={ways} chosen={way} onChange={setWay} className="strip-way" />
      ) : null}
      <div className="strip-columns">
        <div>
          <LastStep />
          {inHand && way === 'apart' ? <TakeApart /> : null}
          {inHand && way === 'back' ? <PutBack /> : null}
          {inHand && way === 'back' && strip.away.length === 0 ? <p>Nothing is off or out.</p> : null}
        </div>
        <div>
          <LeftOver />
          <StepsBefore />
          <KeptPlaces />
          <OfferDifferent />
        </div>
      </div>
    </>
  )
}
