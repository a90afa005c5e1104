import { moneyText, type Currency } from '../../base/money.ts'
import type { ShelfOffer } from '../../machine/shelf/shelf-offer.ts'
import { Fold } from '../parts/fold.tsx'

type FromShelfProps = {
  readonly offers: readonly ShelfOffer[]
  readonly currency: Currency
  /** The part that goes in; empty for one from elsewhere. */
  readonly chosen: string
  readonly onChoose: (offer: ShelfOffer | null) => void
}

/** Parts of the shelf that could go in with this repair. One tap takes one, another puts it back. */
export const FromShelf = ({ offers, currency, chosen, onChoose }: FromShelfProps) =>
  offers.length === 0 ? null : (
    <fieldset className="from-shelf">
      <legend>From the shelf</legend>
      <label className="shelf-choice">
        <input
          type="radio"
          name="shelf-part"
          checked={chosen === ''}
          onClick={() => onChoose(null)}
          onChange={ignored}
        />
        <span>None: a part from elsewhere</span>
      </label>
      {offers.map((offer) => (
        <div key={offer.id}>
          <label className="shelf-choice">
            <input
              type="radio"
              name="shelf-part"
              checked={chosen === offer.id}
              onClick={() => onChoose(offer)}
              onChange={ignored}
            />
            <span>
              <strong>{offer.name}</strong>
              {offer.place === '' ? null : `, ${offer.place}`}, stands at {moneyText(offer.costMinor, currency)}, would
              fetch {moneyText(offer.fetchesMinor, currency)}. {offer.fit.kind === 'fits' ? 'Fits.' : 'May fit.'}
            </span>
          </label>
          {offer.fit.unknown.length + offer.fit.care.length === 0 ? null : (
            <Fold title={`${offer.name}: what to look at first`}>
              <ul className="plain-list">
                {[...offer.fit.unknown, ...offer.fit.care].map((one) => (
                  <li key={one}>{one}</li>
                ))}
              </ul>
            </Fold>
          )}
        </div>
      ))}
    </fieldset>
  )

/** The card draws itself anew on the way down of a click, so that the change never comes; the click does. */
const ignored = (): void => undefined
