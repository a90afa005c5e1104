import { moneyText } from '../../base/money.ts'
import type { AdvertState } from '../../bench/adverts/advert-state.ts'
import type { BenchId } from '../../bench/contract.ts'
import { Fold } from '../parts/fold.tsx'
import { Link } from '../router.tsx'
import { dayText } from '../words.ts'
import { CalibrationLines } from './compared.tsx'
import { useAdverts, useCompared } from './use-adverts.ts'

/** Kept adverts: the open ones, those that are decided, and how the guesses compared. Nothing where there are none. */
export const KeptAdverts = ({ bench }: { readonly bench: BenchId }) => {
  const { data: open } = useAdverts(bench, 'there')
  const { data: decided } = useAdverts(bench, 'gone')
  const { data: compared } = useCompared(bench)
  if ((open?.total ?? 0) + (decided?.total ?? 0) === 0) return null
  return (
    <section aria-label="Kept adverts">
      <h2>Kept adverts</h2>
      {open === undefined || open.items.length === 0 ? (
        <p className="quiet">None is open.</p>
      ) : (
        <List bench={bench} adverts={open.items} />
      )}
      {decided === undefined || decided.total === 0 ? null : (
        <Fold title={`Bought or passed by: ${decided.total}`}>
          <List bench={bench} adverts={decided.items} />
        </Fold>
      )}
      {compared === undefined || compared.all.length === 0 ? null : (
        <>
          <h3>How the guesses compared</h3>
          <CalibrationLines all={compared.all} />
        </>
      )}
    </section>
  )
}

type ListProps = { readonly bench: BenchId; readonly adverts: readonly AdvertState[] }

const List = ({ bench, adverts }: ListProps) => (
  <ul className="ledger">
    {adverts.map((one) => (
      <li key={one.id}>
        <Link to={{ kind: 'advert', bench, id: one.id }} className="ledger-line">
          <strong className="ledger-name">{one.name}</strong>
        </Link>
        <span className="worth-line">
          <span>asks {moneyText(one.advert.askingMinor, one.advert.currency)}</span>
          <span>{mostText(one)}</span>
        </span>
        <span className="quiet">{endText(one)}</span>
      </li>
    ))}
  </ul>
)

/** The most to pay as it was reckoned. */
export const mostText = ({ guess, advert }: Pick<AdvertState, 'guess' | 'advert'>): string =>
  guess.ceilingMinor < 0 ? 'not even for nothing' : `pay at most ${moneyText(guess.ceilingMinor, advert.currency)}`

const endText = ({ decided, weighedAt, advert }: AdvertState): string => {
  if (decided === null) return `Weighed ${dayText(weighedAt)}`
  if (decided.kind === 'bought')
    return `Bought for ${moneyText(decided.paidMinor, advert.currency)}, ${dayText(decided.at)}`
  return `Passed by${decided.reason === '' ? '' : `: ${decided.reason}`}, ${dayText(decided.at)}`
}
