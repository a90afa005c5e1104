import { moneyText, type Currency } from '../../base/money.ts'
import { gradeFacts } from '../../facts/asking.ts'
import { capital } from '../../machine/air/air-text.ts'
import type { AskingView } from '../../machine/asking.ts'
import type { Job } from '../../machine/job.ts'
import { sparesPriceOf } from '../../machine/prices.ts'
import type { MachineState } from '../contract.ts'
import { dayText } from '../words.ts'
import type { Standing } from './standing-of.ts'

/** The price on a sheet, and why it is that. Minor units. */
export type SheetPrice = {
  readonly minor: number
  readonly currency: Currency
  readonly text: string
  /** For what, as it stands behind the price on the sheet: `for spares or repair as it stands`; empty for a working machine. */
  readonly offered: string
  /** What it means on one's own page, with what it would be asked for if it worked. */
  readonly means: string
  /** `listed`: a note says it is offered at it; else it is reckoned. */
  readonly from: 'listed' | 'reckoned'
  readonly grounds: readonly string[]
}

/** The price it is offered at, else what to ask; for spares the range of those. Null where nothing can be said. */
export const priceOfSheet = (
  state: MachineState,
  job: Job,
  standing: Standing,
  asking: AskingView | null,
): SheetPrice | null => {
  const { currency } = state
  const grounds = standing === 'working' ? askingGrounds(asking) : sparesGrounds(job, currency)
  const price = (minor: number, from: SheetPrice['from'], why: readonly string[]): SheetPrice => ({
    minor,
    currency,
    text: moneyText(minor, currency),
    ...meaning(standing, from, asking),
    from,
    grounds: why,
  })
  const listed = state.listed.at(-1)
  if (listed !== undefined)
    return price(listed.priceMinor, 'listed', [
      `Offered at it since ${dayText(listed.from)}, grade ${listed.grade}.`,
      ...grounds,
    ])
  if (standing === 'working') return asking === null ? null : price(asking.askMinor, 'reckoned', grounds)
  const { minor } = sparesPriceOf(job)
  return minor === 0 ? null : price(Math.round(minor), 'reckoned', grounds)
}

/** One model says what to ask for a working machine; its choices are said with its figure. */
const meaning = (
  standing: Standing,
  from: SheetPrice['from'],
  asking: AskingView | null,
): Pick<SheetPrice, 'offered' | 'means'> => {
  if (standing === 'working') return { offered: '', means: 'As a working machine.' }
  const offered = standing !== 'spares' && from === 'listed' ? 'as it stands' : 'for spares or repair as it stands'
  const capitalised = capital(offered)
  if (asking === null) return { offered, means: `${capitalised}.` }
  const { askMinor, currency, choices } = asking
  const worked = `${moneyText(askMinor, currency)} if it worked`
  return { offered, means: `${capitalised}; ${worked} and was cleaned, looks grade ${choices.grade}.` }
}

const askingGrounds = (asking: AskingView | null): readonly string[] => {
  if (asking === null) return []
  const { sale, currency, own, seen, choices, completenessShare, restsOn } = asking
  const band = `${moneyText(sale.lowMinor, currency)} to ${moneyText(sale.highMinor, currency)}`
  return [
    `The price that brings most: ${moneyText(asking.askMinor, currency)}. Machines like it in this state fetch ${band}, nine in ten.`,
    `Own sales that count: ${own}. Prices seen that count: ${seen}.`,
    `Reckoned as grade ${choices.grade}, ${gradeFacts[choices.grade].name}${completenessShare < 1 ? `; what is missing leaves ${Math.round(completenessShare * 100)} %` : ''}.`,
    ...restsOn.map((text) => (/[.!?]$/.test(text) ? text : `${text}.`)),
  ]
}

const sparesGrounds = (job: Job, currency: Currency): readonly string[] => {
  const { minor, setAt } = sparesPriceOf(job)
  const { low, high } = job.blueprint.worth.sparesMinor
  return [
    setAt === null
      ? `As it stands, for spares or repair, its kind fetches ${moneyText(low, currency)} to ${moneyText(high, currency)}.`
      : `Reckoned with ${moneyText(minor, currency)} for spares or repair since ${dayText(setAt)}.`,
  ]
}
