import { moneyText } from '../../base/money.ts'
import type { Buying } from './use-buying.ts'
import { losesText } from './buy-words.ts'

/** The answer, always in sight: the most to pay, large, and the chance of losing money at the price that is asked. */
export const AnswerStrip = ({ buying, asksPrice }: { readonly buying: Buying; readonly asksPrice: boolean }) => {
  const { weighed, settling } = buying
  if (weighed === null) {
    return (
      <div className="buy-strip" aria-busy={settling}>
        <p className="quiet">{settling ? 'Working it out …' : 'Choose the kind; the answer comes as you type.'}</p>
      </div>
    )
  }
  const { ceiling, atAsking, currency } = weighed.view
  return (
    <section className="buy-strip" aria-label="The most to pay" aria-busy={settling}>
      <p className="buy-most">
        {ceiling.notEvenForNothing ? (
          <strong className="buy-figure buy-not">Not even for nothing</strong>
        ) : (
          <>
            <span>Pay at most</span> <strong className="buy-figure figure">{moneyText(ceiling.minor, currency)}</strong>
          </>
        )}
        <span className="buy-settling">{settling ? 'settling …' : ''}</span>
      </p>
      <p className="buy-line">
        {ceiling.notEvenForNothing ? (
          `Given to you it would still fall ${moneyText(-ceiling.exactMinor, currency)} short.`
        ) : asksPrice ? (
          <>
            At {moneyText(atAsking.askingMinor, currency)}: {losesText(atAsking.lossChance).toLowerCase()}.
          </>
        ) : (
          'Type what is asked, to see what that price earns.'
        )}
      </p>
    </section>
  )
}
