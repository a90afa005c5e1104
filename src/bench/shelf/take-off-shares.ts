import { valueOf } from '../../base/result.ts'
import { shareCost } from '../../engines/money/index.ts'
import type { Job } from '../../machine/job.ts'
import { partPriceOf, sparesPriceOf } from '../../machine/prices.ts'

/** The parts that go, each with what it fetches where that is not the plan's price, and its share where somebody set it. */
export type SharesAsked = {
  readonly taken: readonly {
    readonly part: string
    readonly fetchesMinor?: number | undefined
    readonly costMinor?: number | undefined
  }[]
  /** Given when the machine is broken for parts, so that the parts take the whole cost. */
  readonly breaks?: object | undefined
}

/**
 * What each part takes with it, whole minor units: what is set for some, and of the rest by what they fetch, so that breaking
 * shares out the whole cost. A part taken off a machine that stays takes its share beside what the rest would fetch for spares.
 * @param costMinor what the machine stands at
 */
export const takeOffShares = ({ taken, breaks }: SharesAsked, job: Job, costMinor: number): readonly number[] => {
  const open = taken.filter((one) => one.costMinor === undefined)
  const setMinor = taken.reduce((sum, one) => sum + (one.costMinor ?? 0), 0)
  const weights = open.map((one) => one.fetchesMinor ?? fetchesOf(job, one.part))
  const rest = breaks === undefined ? [Math.round(sparesPriceOf(job).minor)] : []
  const all = [...weights, ...rest]
  const shares = all.length === 0 ? [] : valueOf(shareCost(Math.max(0, costMinor - setMinor), all))
  return taken.map((one) => one.costMinor ?? shares[open.indexOf(one)] ?? 0)
}

const fetchesOf = (job: Job, id: string): number => {
  const part = job.blueprint.parts.find((one) => one.id === id)
  return part === undefined ? 0 : Math.round(partPriceOf(job, part)?.minor ?? 0)
}
