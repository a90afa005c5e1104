import { moneyText } from '../../base/money.ts'
import type { AdvertState } from '../../bench/adverts/advert-state.ts'
import type { BenchId } from '../../bench/contract.ts'
import { conditionShares } from '../../facts/buying.ts'
import { Button } from 'react-aria-components/Button'
import { AdvertHistory } from '../buy/advert-history.tsx'
import type { AdvertDocument } from '../buy/api.ts'
import { Decide } from '../buy/decide.tsx'
import { HowCompared } from '../buy/compared.tsx'
import { draftFromAdvert, storedBuyDraft } from '../buy/draft.ts'
import { mostText } from '../buy/kept-adverts.tsx'
import { losesText } from '../buy/buy-words.ts'
import { useAdvert, useCompared } from '../buy/use-adverts.ts'
import { Loading } from '../parts/loading.tsx'
import { useBlueprint } from '../queries.ts'
import { goTo, Link, PageTitle } from '../router.tsx'
import { writeStored } from '../stored.ts'
import { capital, dayText, minutesText, percentText } from '../words.ts'
import '../style/buy.css'

/** A kept advert: what it said, what was reckoned of it, and what became of it. */
export const AdvertPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data, error } = useAdvert(bench, id)
  return (
    <div className="sheet buy">
      {data === undefined ? (
        <>
          <PageTitle windowTitle="Advert">Kept advert</PageTitle>
          <Loading what="the advert" error={error} />
        </>
      ) : (
        <Kept bench={bench} document={data} />
      )}
    </div>
  )
}

type KeptProps = { readonly bench: BenchId; readonly document: AdvertDocument }

const Kept = ({ bench, document }: KeptProps) => {
  const { state } = document
  const { name, advert, guess, decided } = state
  const { data: blueprint } = useBlueprint(advert.blueprint)
  const { data: compared } = useCompared(bench)
  const own = compared?.each.find((one) => one.advert === state.id)
  const money = (minor: number): string => moneyText(minor, advert.currency)
  const again = (): void => {
    const draft = draftFromAdvert(name, advert, { id: state.id, version: state.version })
    writeStored('local', storedBuyDraft, JSON.stringify(draft))
    goTo({ kind: 'buy' })
  }
  return (
    <>
      <PageTitle windowTitle={name}>{name}</PageTitle>
      <section className="buy-strip" aria-label="The most to pay">
        <p className="buy-most">
          <strong className="buy-figure">{capital(mostText(state))}</strong>
        </p>
        <p className="buy-line">
          At {money(advert.askingMinor)}: {money(guess.expectedMinor)} on average, own hours paid; give or take{' '}
          {money(guess.spreadMinor)}. {losesText(guess.lossChance)}. About {minutesText(guess.expectedMin)}. Reckoned{' '}
          {dayText(state.weighedAt)}.
        </p>
      </section>
      <p>{blueprint?.name ?? advert.blueprint}</p>
      {advert.words === '' ? null : <blockquote className="buy-words">{advert.words}</blockquote>}
      <p className="quiet">
        Asks {money(advert.askingMinor)}, {advert.distanceKm} km away, looks {conditionShares[advert.condition].name}
        {advert.ageYears === undefined ? '' : `, about ${advert.ageYears} years old`}.
      </p>
      <ul className="buy-list" aria-label="What was likely wrong">
        {guess.likely.map(({ fault, probability }) => (
          <li key={fault}>
            <span className="buy-share figure">{percentText(probability)}</span>
            <span>{blueprint?.faults.find((one) => one.id === fault)?.name ?? fault}</span>
          </li>
        ))}
      </ul>
      {decided === null ? null : <Decided bench={bench} decided={decided} money={money} />}
      {own === undefined ? null : <HowCompared compared={own} blueprint={blueprint} />}
      {decided === null && bench === 'own' ? (
        <>
          <p>
            <Button className="key" onPress={again}>
              Weigh it anew
            </Button>
          </p>
          <Decide state={state} />
        </>
      ) : null}
      <AdvertHistory bench={bench} document={document} />
      <p>
        <Link to={bench === 'own' ? { kind: 'buy' } : { kind: 'bench', bench }} className="on-its-own">
          {bench === 'own' ? 'Worth buying? Another advert' : 'The demo bench'}
        </Link>
      </p>
    </>
  )
}

type DecidedProps = {
  readonly bench: BenchId
  readonly decided: NonNullable<AdvertState['decided']>
  readonly money: (minor: number) => string
}

const Decided = ({ bench, decided, money }: DecidedProps) =>
  decided.kind === 'bought' ? (
    <p>
      Bought for {money(decided.paidMinor)}, {dayText(decided.at)}.{' '}
      <Link to={{ kind: 'machine', bench, id: decided.machine }} className="on-its-own">
        The machine
      </Link>
    </p>
  ) : (
    <p>
      Passed by, {dayText(decided.at)}
      {decided.reason === '' ? '' : `: ${decided.reason}`}.
    </p>
  )
