import { betaQuantile } from './beta.ts'

/** The grounds for one fault's rate. */
export type RateGrounds = {
  /** Records of the open repair data that name the fault's component; need not be whole. 0 when there is none. */
  readonly componentCount: number
  /** Records that name any component; 0 leaves the open data out. */
  readonly componentTotal: number
  /** Share of the component's cases that are this fault, 0..1. */
  readonly componentShare: number
  /** Cases in a hundred machines bought as faulty, by the trade's judgement, 0..100. */
  readonly perHundred: number
  /** What an open record counts for beside a machine of one's own, 0..1. */
  readonly weightOpen: number
  /** What the trade's judgement counts for, 0..1: at 1 it stands for fifty machines. */
  readonly weightTrade: number
}

/** A fault's rate, 0..1, with the ends of its 90 % interval. */
export type FittedRate = { readonly rate: number; readonly low: number; readonly high: number }

/** The trade's figure per hundred counts as half as many cases in half a hundred machines. */
const tradeMachines = 50
const intervalTail = 0.05

/**
 * Rate of a fault as the mean of a Beta distribution, with its 5 % and 95 % points. Two sources add their counts:
 * the trade's judgement of w per hundred counts as w/2 cases among 50 machines; the open data counts each of its cases
 * as `weightOpen` of one, because most of its machines are cylinders with a cord reel and not what a bench buys.
 * A fault that neither source has ever met has rate 0. Throws on a number outside its range, or when both sources are left out.
 */
export const fitRate = (grounds: RateGrounds): FittedRate => {
  checkGrounds(grounds)
  const { componentCount, componentTotal, componentShare, perHundred, weightOpen, weightTrade } = grounds
  const openCases = weightOpen * componentCount * componentShare
  const tradeCases = (weightTrade * tradeMachines * perHundred) / 100
  const machines = weightOpen * componentTotal + weightTrade * tradeMachines
  if (machines === 0) throw new Error('a rate needs the open data or the trade’s judgement')
  return intervalOf(openCases + tradeCases, machines)
}

const intervalOf = (cases: number, machines: number): FittedRate => {
  const rest = machines - cases
  const rate = cases / machines
  if (cases === 0 || rest <= 0) return { rate, low: rate, high: rate }
  return { rate, low: betaQuantile(intervalTail, cases, rest), high: betaQuantile(1 - intervalTail, cases, rest) }
}

const checkGrounds = (grounds: RateGrounds): void => {
  const { componentCount, componentTotal, componentShare, perHundred, weightOpen, weightTrade } = grounds
  const areShares = [componentShare, perHundred / 100, weightOpen, weightTrade].every((x) => x >= 0 && x <= 1)
  const areCounts = componentCount >= 0 && componentTotal >= componentCount
  if (!areShares || !areCounts) throw new Error(`grounds of a rate out of range: ${JSON.stringify(grounds)}`)
}
