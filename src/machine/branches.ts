import { moneyText, type Currency } from '../base/money.ts'
import type { Onward, PossibleResult, Stop } from './unfold.ts'
import type { ExitId } from './view.ts'

/** A result with what is said once it is in; `onward` is null while that is worked out. */
export type Leaf = { readonly result: PossibleResult; readonly onward: Onward | null; readonly failure: string | null }

/** Results that lead to the same next move, the likeliest first. */
export type Branch = {
  readonly key: string
  readonly leaves: readonly Leaf[]
  readonly text: string
  readonly probability: number
  readonly name: string | null
  readonly isExit: boolean
  /** Expected money from there on, over these results; null while it is worked out. */
  readonly expectedMinor: number | null
  readonly failure: string | null
}

/** Leaves put together by what comes next, in the order of each branch's likeliest result. */
export const branchesOf = (leaves: readonly Leaf[]): readonly Branch[] => {
  const groups = new Map<string, Leaf[]>()
  for (const leaf of leaves) {
    const key = leaf.onward === null ? `result ${leaf.result.id}` : keyOf(leaf.onward)
    groups.set(key, [...(groups.get(key) ?? []), leaf])
  }
  return [...groups].map(([key, group]) => branchOf(key, group))
}

const keyOf = ({ move, stop, name }: Onward): string =>
  stop === null ? `${move?.kind} ${move?.id ?? name}` : `exit ${stop.exit}`

/** Leaves that share what comes next, as one branch. */
export const branchOf = (key: string, leaves: readonly Leaf[]): Branch => {
  const [{ onward, failure }] = leaves
  const probability = leaves.reduce((sum, { result }) => sum + result.probability, 0)
  const money = leaves.reduce((sum, { result, onward: to }) => sum + result.probability * (to?.expectedMinor ?? 0), 0)
  return {
    key,
    leaves,
    text: resultsText(leaves.map(({ result }) => result.text)),
    probability,
    name: onward?.name ?? null,
    isExit: onward?.stop !== null && onward !== null,
    expectedMinor: onward === null ? null : money / probability,
    failure,
  }
}

const reads = 'reads '

/** Results in one phrase: `reads open or 4 to 13 Ω or jumps when moved`. Numbers and open come first, behind one “reads”. */
export const resultsText = (texts: readonly string[]): string => {
  const read = texts.filter((text) => text.startsWith(reads)).map((text) => text.slice(reads.length))
  const other = texts.filter((text) => !text.startsWith(reads))
  return [...(read.length === 0 ? [] : [reads + read.join(' or ')]), ...other].join(' or ')
}

const exitWork: Readonly<Record<ExitId, string>> = {
  'sell-working': 'Selling it working',
  'sell-for-spares': 'Selling it for spares or repair',
  'break-for-parts': 'Breaking it for parts',
  scrap: 'Scrapping it',
}

/**
 * The results that are a reason to stop, in words, or that none is; nothing is said of none before all are known.
 * @param lessLikely probability of the results that were not looked at
 */
export const stopRules = (leaves: readonly Leaf[], lessLikely: number, currency: Currency): readonly string[] => {
  const rules = branchesOf(leaves).filter(({ isExit }) => isExit)
  if (rules.length > 0) return rules.map((branch) => stopRule(branch, currency))
  const isRepair = leaves.some(({ result }) => result.result === null)
  if (leaves.length === 0 || isRepair || leaves.some(({ onward }) => onward === null)) return []
  return [
    lessLikely > 0 ? 'None of these results is a reason to stop.' : 'No result of this check is a reason to stop.',
  ]
}

const stopRule = ({ leaves, text }: Branch, currency: Currency): string => {
  const stops = leaves.flatMap(({ onward }) => (onward?.stop ? [onward.stop] : []))
  const verb = stops[0].exit === 'sell-working' ? 'it is done' : 'stop'
  return `${conditionOf(leaves, text)}: ${verb}. ${becauseOf(stops, currency)}`
}

/** Meter results are verbs; grades are names, and shown as such. */
const conditionOf = ([{ result }]: readonly Leaf[], text: string): string => {
  if (result.result === null) return 'Once it is done'
  return result.result.kind === 'grade' ? `If it shows “${text}”` : `If it ${text}`
}

const becauseOf = (stops: readonly Stop[], currency: Currency): string => {
  const [{ exit }] = stops
  const more = stops.flatMap(({ moreMinor }) => (moreMinor === null ? [] : [moreMinor]))
  if (more.length === 0) return `${exitWork[exit]} is all that is left.`
  const least = Math.min(...more)
  const much = moneyText(least, currency)
  if (Math.round(least) < 0) return 'Carrying on would bring more on average, but loses money too often.'
  if (Math.round(Math.max(...more)) === 0) return `${exitWork[exit]} is worth as much as carrying on.`
  const atLeast = Math.round(Math.max(...more)) === Math.round(least) ? '' : 'at least '
  return `${exitWork[exit]} is worth ${atLeast}${much} more than carrying on.`
}
