import type { Kernel } from './kernel.ts'
import { proofCosts, shownMarks, type ShownMarks } from './proof-bound.ts'
import { closingMin, type RepairRule, type Rules, type Situation } from './rules.ts'

type Way = { readonly repair: number; readonly to: number }

/** Exits that need the same marks. */
type Group = {
  readonly exits: readonly number[]
  readonly needs: Int32Array
  /** At least what it costs to earn the marks of `needs` picked out as bits. */
  readonly proofCost: (earned: number) => number
}

type Bound = {
  readonly rules: Rules
  readonly kernel: Kernel
  /** By suspect, the repairs that change it, with the suspect left. */
  readonly ways: readonly (readonly Way[])[]
  readonly shown: ShownMarks
  readonly groups: readonly Group[]
  /** Marks that every repair still open takes away. */
  readonly takenByAll: ReadonlySet<number>
  /** Least cost of a repair, made only so that checks are worth repeating. */
  readonly leastRepairMinor: number
  readonly repairsLeft: number
  /** Covers off along the path walked, and the repairs made on it, in order. */
  readonly covers: Situation
  readonly used: number[]
  readonly relaxed: Float64Array
  /** Work space, one per group. */
  readonly options: readonly Option[]
}

/**
 * Repairs per suspect up to which every order of them is walked, and the share of the belief that is worth it. Beyond either,
 * a looser bound that allows repeats.
 */
const walkedRepairs = 3
const walkedShare = 0.99

/**
 * An upper bound of the expected money of any policy: the mean over suspects of what one who knew the suspect, and who saw
 * whether each repair worked, could expect. Why it is one stands in docs/plan-engine.md.
 */
export const upperBoundOf = (rules: Rules, kernel: Kernel): number => {
  const bound = boundOf(rules, kernel)
  const order = Int32Array.from(kernel.belief.keys()).sort((a, b) => kernel.belief[b] - kernel.belief[a] || a - b)
  let total = windfall(rules)
  let seen = 0
  for (const s of order) {
    if (kernel.belief[s] === 0) break
    const loosely = seen > walkedShare || bound.ways[s].length > walkedRepairs
    total += kernel.belief[s] * (loosely ? relaxedFrom(bound, s) : walk(bound, s))
    seen += kernel.belief[s]
  }
  return total
}

/**
 * The same bound by suspect: its mean over any belief bounds what can be earned from the situation that `rules` starts in.
 */
export const boundsBySuspect = (rules: Rules, kernel: Kernel): Float64Array => {
  const bound = boundOf(rules, kernel)
  const extra = windfall(rules)
  return Float64Array.from(
    bound.ways,
    (ways, s) => extra + (ways.length > walkedRepairs ? relaxedFrom(bound, s) : walk(bound, s)),
  )
}

const boundOf = (rules: Rules, kernel: Kernel): Bound => {
  const open = [...rules.repairs.keys()].filter((repair) => rules.start[rules.repairAt + repair] === 0)
  const groups = groupsOf(rules)
  const marks = [...Array(rules.checkAt).keys()].slice(rules.coverCount)
  return {
    rules,
    kernel,
    ways: waysOf(kernel, rules, open),
    shown: shownMarks(rules, kernel),
    groups,
    options: groups.map(() => ({ first: 0, again: 0, worth: 0 })),
    takenByAll: new Set(marks.filter((place) => open.every((repair) => rules.repairs[repair].takes.includes(place)))),
    leastRepairMinor: Math.min(...open.map((repair) => atLeastNothing(rules, rules.repairs[repair]))),
    repairsLeft: open.length,
    covers: rules.start.slice(),
    used: [],
    relaxed: new Float64Array(kernel.size).fill(NaN),
  }
}

const atLeastNothing = (rules: Rules, rule: RepairRule): number =>
  Math.max(0, rule.costMinor + rule.minutes * rules.minorPerMin)

/** Money that moves could bring in by costing less than nothing: each repair once, each check as often as it may be, and again after each repair. */
const windfall = (rules: Rules): number => {
  const gain = (rule: { readonly costMinor: number; readonly minutes: number }): number =>
    Math.max(0, -(rule.costMinor + rule.minutes * rules.minorPerMin))
  const repairs = rules.repairs.reduce((sum, rule) => sum + gain(rule), 0)
  const times = 1 + rules.repairs.length
  return rules.checks.reduce((sum, rule) => sum + times * rule.times * gain(rule), repairs)
}

const waysOf = (kernel: Kernel, rules: Rules, open: readonly number[]): readonly (readonly Way[])[] => {
  const ways: Way[][] = Array.from({ length: kernel.size }, () => [])
  for (const repair of open) {
    const { from, to } = kernel.transitions[repair]
    if (rules.repairs[repair].success > 0) from.forEach((s, i) => ways[s].push({ repair, to: to[i] }))
  }
  return ways
}

const groupsOf = (rules: Rules): readonly Group[] => {
  const groups = new Map<string, { exits: number[]; needs: Int32Array }>()
  rules.exits.forEach((rule, exit) => {
    const needs = Int32Array.from(new Set(rule.needs)).sort()
    const group = groups.get(needs.join(' '))
    if (group === undefined) groups.set(needs.join(' '), { exits: [exit], needs })
    else group.exits.push(exit)
  })
  return [...groups.values()].map((group) => ({ ...group, proofCost: proofCosts(rules, group.needs) }))
}

/** Every order of the repairs that change the suspect, each once, covers shared along the way. */
const walk = (bound: Bound, suspect: number): number => {
  const { rules, used, covers } = bound
  let onward = -Infinity
  for (const { repair, to } of bound.ways[suspect]) {
    if (used.includes(repair)) continue
    const rule = rules.repairs[repair]
    const opened = rule.opens.filter((cover) => covers[cover] === 0)
    let minutes = 0
    for (const cover of opened) {
      minutes += rules.openMin[cover]
      covers[cover] = 1
    }
    used.push(repair)
    const mended = rule.success * walk(bound, to)
    const not = rule.success < 1 ? (1 - rule.success) * walk(bound, suspect) : 0
    used.pop()
    for (const cover of opened) covers[cover] = 0
    onward = Math.max(onward, mended + not - atLeastNothing(rules, rule) - minutes * rules.minorPerMin)
  }
  return settled(bound, suspect, onward, rules.minorPerMin * closingMin(rules, covers), chanceWalking)
}

/** Covers free, repairs repeated until they work, and a proof that can come out well does. */
const relaxedFrom = (bound: Bound, suspect: number): number => {
  if (!Number.isNaN(bound.relaxed[suspect])) return bound.relaxed[suspect]
  let onward = -Infinity
  for (const { repair, to } of bound.ways[suspect]) {
    const rule = bound.rules.repairs[repair]
    onward = Math.max(onward, relaxedFrom(bound, to) - atLeastNothing(bound.rules, rule) / rule.success)
  }
  bound.relaxed[suspect] = settled(bound, suspect, onward, 0, chanceRelaxed)
  return bound.relaxed[suspect]
}

/** How likely a mark is to be had at a point: at the first try, at each further try, and whether it must be earned by a check. */
type Chance = { readonly first: number; readonly again: number; readonly earned: boolean }
type ChanceOf = (bound: Bound, suspect: number, place: number) => Chance

const certain: Chance = { first: 1, again: 1, earned: false }
const likely: Chance = { first: 1, again: 1, earned: true }

/** The best of going on and leaving, where an exit whose marks must be earned counts only with the chance of earning them. */
const settled = (bound: Bound, suspect: number, onward: number, closingMinor: number, chanceOf: ChanceOf): number => {
  const { groups, options } = bound
  let sure = onward
  for (let g = 0; g < groups.length; g++) {
    weighGroup(bound, groups[g], options[g], suspect, closingMinor, chanceOf)
    if (options[g].first === 1) sure = Math.max(sure, options[g].worth)
  }
  let first = 0
  let again = -bound.leastRepairMinor
  let most = 0
  for (const option of options) {
    const gain = option.first + option.again > 0 ? option.worth - sure : 0
    if (gain <= 0) continue
    first += option.first * gain
    again += option.again * gain
    most = Math.max(most, gain)
  }
  const tries = bound.repairsLeft - bound.used.length
  const more = tries > 0 && again > 0 ? tries * again : 0
  return sure + Math.min(most, first + more)
}

/** What leaving by a group of exits is worth at most, and how likely the hardest of its marks is to be had. */
type Option = { first: number; again: number; worth: number }

const weighGroup = (
  bound: Bound,
  group: Group,
  option: Option,
  suspect: number,
  closingMinor: number,
  chanceOf: ChanceOf,
): void => {
  option.first = option.again = 1
  let earned = 0
  for (let i = 0; i < group.needs.length; i++) {
    const chance = chanceOf(bound, suspect, group.needs[i])
    if (chance.earned && i < countedNeeds) earned |= 1 << i
    if (chance.first + chance.again >= option.first + option.again) continue
    option.first = chance.first
    option.again = chance.again
  }
  option.worth = leaving(bound, group, suspect, closingMinor) - group.proofCost(earned)
}

/** Needs are counted as bits; those beyond are taken to be had for nothing, which only loosens the bound. */
const countedNeeds = 30

const leaving = (bound: Bound, group: Group, suspect: number, closingMinor: number): number => {
  let best = -Infinity
  for (const exit of group.exits) {
    const closing = bound.rules.exits[exit].allCoversOn ? closingMinor : 0
    best = Math.max(best, bound.kernel.payoff[exit][suspect] - closing)
  }
  return best
}

const chanceWalking: ChanceOf = ({ rules, used, shown }, suspect, place) => {
  const taken = used.some((repair) => rules.repairs[repair].takes.includes(place))
  if (rules.start[place] !== 0 && !taken) return certain
  const last = used.at(-1)
  if (last !== undefined && !rules.repairs[last].takes.includes(place)) return likely
  const again = shown.ever(place, suspect)
  return { first: last === undefined ? shown.now(place, suspect) : again, again, earned: true }
}

const chanceRelaxed: ChanceOf = ({ rules, shown, takenByAll }, suspect, place) => {
  if (rules.start[place] !== 0) return certain
  const possible = takenByAll.has(place) ? Number(shown.ever(place, suspect) > 0) : 1
  return { first: possible, again: possible, earned: true }
}
