import type { Currency } from '../base/money.ts'
import type { ExitId, MachineView } from '../machine/view.ts'

/** What a machine in hand has for the next hour: work that brings money, or an exit that it is ready for. */
export type HourOffer =
  | {
      readonly kind: 'carry-on'
      /** What carrying on brings above leaving it as it stands, own time paid for, per hour; minor units. */
      readonly minorPerHour: number
    }
  | { readonly kind: 'ready'; readonly exit: ExitId; readonly expectedMinor: number }

/** Plans shorter than this are rated as if they took so long: a move of seconds is no hourly wage. */
const leastMin = 1

/** What a view offers for the next hour: (carried on − as it stands) over the expected hours, or its exit. */
export const hourOffer = ({ next, worth }: Pick<MachineView, 'next' | 'worth'>): HourOffer =>
  next.kind === 'exit'
    ? { kind: 'ready', exit: next.exit, expectedMinor: next.expectedMinor }
    : {
        kind: 'carry-on',
        minorPerHour: ((worth.carryOnMinor - worth.asItStandsMinor) * 60) / Math.max(leastMin, worth.expectedMin),
      }

/** A machine with its offer; null while it is not known, or cannot be. */
export type Offered = { readonly id: string; readonly currency: Currency; readonly offer: HourOffer | null }

/** Machine ids, each list best first. */
export type BenchOrder = {
  readonly carryOn: readonly string[]
  readonly ready: readonly string[]
  readonly unknown: readonly string[]
}

/**
 * Orders a bench for the next hour: what brings most an hour first; what is ready to go by what it fetches. Amounts of
 * different currencies are not comparable, so the currency that most machines have comes first. Ties keep their order.
 */
export const benchOrder = (machines: readonly Offered[]): BenchOrder => {
  const count = (currency: Currency): number => machines.filter((one) => one.currency === currency).length
  const sorted = machines.toSorted(
    (a, b) =>
      count(b.currency) - count(a.currency) ||
      a.currency.localeCompare(b.currency) ||
      moneyIn(b.offer) - moneyIn(a.offer),
  )
  const ids = (kind: HourOffer['kind'] | undefined): readonly string[] =>
    sorted.filter(({ offer }) => offer?.kind === kind).map(({ id }) => id)
  return { carryOn: ids('carry-on'), ready: ids('ready'), unknown: ids(undefined) }
}

const moneyIn = (offer: HourOffer | null): number => {
  if (offer === null) return 0
  return offer.kind === 'carry-on' ? offer.minorPerHour : offer.expectedMinor
}
