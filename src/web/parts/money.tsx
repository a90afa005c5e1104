import { moneyText, type Currency } from '../../base/money.ts'

/** An amount in the machine's currency, in figures that stand under each other. */
export const Money = ({ minor, currency }: { readonly minor: number; readonly currency: Currency }) => (
  <span className="figure">{moneyText(minor, currency)}</span>
)
