import { lazy, Suspense } from 'react'
import type { AskingView } from '../../machine/asking.ts'
import { Fold } from '../parts/fold.tsx'
import { Money } from '../parts/money.tsx'
import { percentText } from '../words.ts'
import { daysText } from './days-text.ts'

const DaysPicture = lazy(async () => ({ default: (await import('./days-picture.tsx')).DaysPicture }))

/** Every so many prices of the curve make a table that can be read. */
const everyPrice = 5

/** Price against days to sell: the picture, and the same in figures. */
export const DaysToSellPanel = ({ asking }: { readonly asking: AskingView }) => {
  const { currency, curve, best, choices, listings, medianSeenDays } = asking
  const rests =
    listings === 0
      ? 'No listing of such a machine is noted yet: this is what is usual.'
      : `From ${listings === 1 ? '1 listing' : `${listings} listings`}${
          medianSeenDays === null ? '' : `, half of them sold within ${daysText(medianSeenDays)}`
        }, and what is usual.`
  return (
    <section className="panel" aria-label="Price against days">
      <h2>Price against days</h2>
      <p>
        At <Money minor={best.priceMinor} currency={currency} /> half have sold after {daysText(best.medianDays)};{' '}
        {percentText(best.sellsShare)} within {daysText(choices.horizonDays)}.
      </p>
      <figure className="asking-days">
        <figcaption>
          Days until half have sold <span className="quiet">against the price, {currency}</span>
        </figcaption>
        <Suspense fallback={<p className="quiet">Drawing …</p>}>
          <DaysPicture
            asking={asking}
            description={`Dearer stands longer: half have sold after ${daysText(best.medianDays)} at the price that brings most.`}
          />
        </Suspense>
      </figure>
      <p className="hint">{rests}</p>
      <Fold title="The same in figures">
        <table className="asking-table">
          <caption className="unseen">Price, days until half have sold, chance of a sale, money on average</caption>
          <thead>
            <tr>
              <th scope="col">Price</th>
              <th scope="col">Half sold</th>
              <th scope="col">In time</th>
              <th scope="col">Brings</th>
            </tr>
          </thead>
          <tbody>
            {curve
              .filter((_, at) => at % everyPrice === 0)
              .map((at) => (
                <tr key={at.priceMinor}>
                  <th scope="row">
                    <Money minor={at.priceMinor} currency={currency} />
                  </th>
                  <td>{daysText(at.medianDays)}</td>
                  <td>{percentText(at.sellsShare)}</td>
                  <td>
                    <Money minor={at.expectedMinor} currency={currency} />
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </Fold>
    </section>
  )
}
