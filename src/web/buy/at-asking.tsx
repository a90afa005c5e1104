import { moneyText } from '../../base/money.ts'
import type { BuyingView } from '../../machine/buying/index.ts'
import { minutesText, percentText } from '../words.ts'
import { losesText } from './buy-words.ts'
import { Density } from './density.tsx'

/** What buying at the asking price earns: on average, how widely it spreads, how often it loses. */
export const AtAsking = ({ view }: { readonly view: BuyingView }) => {
  const { atAsking, currency, hourMinor } = view
  const money = (minor: number): string => moneyText(minor, currency)
  const { profitMinor, ninety, minutes, anHourMinor } = atAsking
  return (
    <section aria-label="At the asking price">
      <h2>Bought for {money(atAsking.askingMinor)}</h2>
      <p>
        <strong className="figure">{money(profitMinor)}</strong> {profitMinor < 0 ? 'short' : 'profit'} on average, your
        own hours paid at {money(hourMinor)}. <strong>{losesText(atAsking.lossChance)}</strong>.
      </p>
      <Density atAsking={atAsking} currency={currency} />
      <p className="quiet">
        Nine times in ten {money(ninety[0])} to {money(ninety[1])}. About {minutesText(minutes)} in all, fetching and
        selling too{anHourMinor === null ? '' : `: ${money(anHourMinor)} an hour`}.
      </p>
    </section>
  )
}

/** The likeliest three faults, and what each would mean for the deal. */
export const LikelyFaults = ({ view }: { readonly view: BuyingView }) => {
  const money = (minor: number): string => moneyText(minor, view.currency)
  return (
    <section aria-label="Likeliest faults">
      <h2>What is likely wrong</h2>
      <ul className="buy-list">
        {view.faults.map(({ id, name, probability, mend, profitMinor }) => (
          <li key={id}>
            <span className="buy-share figure">{percentText(probability)}</span>
            <span>
              <strong>{name}</strong>
              <span className="buy-more">
                {mend === null
                  ? 'No repair that pays is known.'
                  : `${mend.optionName}: ${money(mend.costMinor)} and ${minutesText(mend.minutes)}.`}{' '}
                {profitMinor < 0 ? `Loses ${money(-profitMinor)}` : `Earns ${money(profitMinor)}`} at that price.
              </span>
            </span>
          </li>
        ))}
        {view.nothingWrong < 0.005 ? null : (
          <li>
            <span className="buy-share figure">{percentText(view.nothingWrong)}</span>
            <span>Nothing wrong with it</span>
          </li>
        )}
      </ul>
    </section>
  )
}
