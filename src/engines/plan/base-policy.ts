import type { BaseChoice, BaseWork } from './base-work.ts'
import { dot, multiply } from './dot.ts'
import { proofRoundOf, repeatableSteps, roundPayoff, wantedSteps, type ProofRound } from './proof-round.ts'
import { checkIsOpen, closingMin, holds, makeCheck, makeRepair, mark, repairIsOpen } from './rules.ts'
import type { Situation } from './rules.ts'
import type { Step } from './step.ts'
import { exitPolicy, type Policy } from './policy.ts'
import { leastCostMinor, type Target } from './targets.ts'

/** Repairs in a row without a better place to stop before a sequence is given up, and the number of repairs where that begins. */
const patience = 3
const fewRepairs = 8
const negligibleMass = 1e-15
/** One more than the largest set of proof steps: two such sets make one key. */
const stepSets = 2 ** 24

/**
 * Expected money of the best of a handful of simple policies from a belief and a situation: stop at the best exit now, or
 * repair in the order of gain per cost, proving after each repair, out at the first proof that holds, until stopping is best.
 * Each is a policy that can be carried out, and its expectation is exact, so the value is a lower bound of the optimum.
 * @returns the sum over the belief; `work.choice` and `work.order` have the policy
 */
export const baseValue = (work: BaseWork, belief: Float64Array, mass: number, situation: Situation): number => {
  work.steps++
  work.best = -Infinity
  begin(work, belief, mass, situation)
  considerStopping(work, -1, false, 0)
  work.run.firstFallback = work.run.fallback
  for (let target = 0; target < work.targets.length; target++) {
    if (dot(belief, work.targets[target].most) <= work.best) continue
    weighRepairs(work, work.targets[target], belief)
    begin(work, belief, mass, situation)
    if (wantedSteps(work.targets[target], situation) !== 0) {
      if (prove(work, target)) {
        considerStopping(work, target, true, 0)
        repairOn(work, target, true)
      }
      begin(work, belief, mass, situation)
    }
    repairOn(work, target, false)
  }
  return work.best
}

/**
 * Expected money of a policy that `baseValue` chose on another kernel of the same problem: its target, its repairs in its
 * order. It stops where stopping is best here.
 * @returns the sum over the belief
 */
export const followBase = (
  work: BaseWork,
  from: BaseWork,
  belief: Float64Array,
  mass: number,
  situation: Situation,
): number => {
  const { target, proveFirst, repairs } = from.choice
  work.best = -Infinity
  begin(work, belief, mass, situation)
  considerStopping(work, -1, false, 0)
  work.run.firstFallback = work.run.fallback
  if (target === -1) return work.best
  if (proveFirst) {
    prove(work, target)
    considerStopping(work, target, true, 0)
  }
  for (let made = 0; made < repairs; made++) {
    work.trial[made] = from.order[made]
    repairNow(work, work.targets[target], from.order[made])
    prove(work, target)
    considerStopping(work, target, proveFirst, made + 1)
  }
  return work.best
}

/** The policy that `baseValue` chose on `from`, step by step, from the situation it began in. */
export const basePolicy = (
  work: BaseWork,
  from: BaseWork,
  belief: Float64Array,
  mass: number,
  start: Situation,
): Policy => {
  followBase(work, from, belief, mass, start)
  return chosenPolicy(work, work.choice, work.order, belief, mass, start, 0)
}

/**
 * The policy that `baseValue` chose on this same work, from the belief and the situation it chose it for.
 * @param order its repairs
 * @param leastMass what is left of the belief below which the rest of the repairs is left out
 */
export const chosenPolicy = (
  work: BaseWork,
  { target, proveFirst, repairs }: BaseChoice,
  order: Int32Array,
  belief: Float64Array,
  mass: number,
  start: Situation,
  leastMass: number,
): Policy => {
  begin(work, belief, mass, start)
  bestExit(work)
  work.run.firstFallback = work.run.fallback
  const links: ((then: Policy) => Policy)[] = []
  if (proveFirst) links.push(...proofLinks(work, target))
  for (let made = 0; made < repairs && work.run.mass >= leastMass; made++) {
    if (made > 0 || proveFirst) bestExit(work)
    const step: Step = { kind: 'repair', index: order[made] }
    repairNow(work, work.targets[target], order[made])
    links.push((then) => ({ kind: 'step', step, next: [then] }))
    links.push(...proofLinks(work, target))
  }
  return links.reduceRight<Policy>((then, link) => link(then), exitPolicy(bestExit(work)))
}

/** The steps of a round of proof, made as a whole; what fails the last one goes on. */
const proofLinks = (work: BaseWork, place: number): ((then: Policy) => Policy)[] => {
  const target = work.targets[place]
  const wanted = wantedSteps(target, work.situation)
  if (wanted === 0) return []
  const { steps, again } = roundFor(work, place, wanted)
  const { fallback } = work.run
  if (!prove(work, place)) return []
  const out = exitPolicy(fallback)
  return [
    (then) =>
      steps.reduceRight<Policy>((onPass, k, i) => {
        const { check, passing, again: repeats } = target.steps[k]
        const onFail = i === steps.length - 1 ? then : out
        const made = (failed: Policy): Policy => ({
          kind: 'step',
          step: { kind: 'check', index: check },
          next: passing.map((pass, outcome) => (pass ? onPass : repeats[outcome] ? failed : onFail)),
        })
        return made(again[i] ? made(onFail) : onFail)
      }, exitPolicy(target.exit)),
  ]
}

/** Sets a run off. */
const begin = (work: BaseWork, belief: Float64Array, mass: number, from: Situation): void => {
  work.belief.set(belief)
  work.situation.set(from)
  work.gains.set(work.firstGains)
  const { run } = work
  run.value = run.costMinor = 0
  run.mass = mass
  run.fallback = run.firstFallback
}

/** Repairs and proves until nothing helps, or nothing could, or stopping has long been better; notes the best place to stop. */
const repairOn = (work: BaseWork, target: number, proveFirst: boolean): void => {
  const { run } = work
  const { most } = work.targets[target]
  let idle = 0
  let going = true
  const patient = work.rules.repairs.length <= fewRepairs
  for (let made = 0; going && (patient || idle < patience) && run.mass > negligibleMass;) {
    if (run.value + dot(work.belief, most) - run.mass * run.costMinor <= work.best) return
    const repair = nextRepair(work, work.targets[target])
    if (repair === -1) return
    repairNow(work, work.targets[target], repair)
    work.trial[made++] = repair
    going = prove(work, target)
    idle = considerStopping(work, target, proveFirst, made) ? 0 : idle + 1
  }
}

/** Notes the policy that stops here, if it is the best so far. */
const considerStopping = (work: BaseWork, target: number, proveFirst: boolean, repairs: number): boolean => {
  const { run, choice, rules } = work
  const exit = bestExit(work)
  const payoff = work.kernel.payoff[exit]
  const closing = rules.exits[exit].allCoversOn ? closingMin(rules, work.situation) : 0
  const spent = run.costMinor + rules.minorPerMin * closing
  const value = run.value + dot(work.belief, payoff) - run.mass * spent
  if (value <= work.best) return false
  work.best = value
  choice.target = target
  choice.proveFirst = proveFirst
  choice.repairs = repairs
  for (let i = 0; i < repairs; i++) work.order[i] = work.trial[i]
  return true
}

/** The exit with most expected money of those that can be taken; notes the best that needs no mark as the fallback. */
const bestExit = (work: BaseWork): number => {
  const { rules, kernel, situation, stops, run } = work
  const closing = run.mass * rules.minorPerMin * closingMin(rules, situation)
  let best = -1
  let most = -Infinity
  let mostFree = -Infinity
  for (let i = 0; i < stops.length; i++) {
    const exit = stops[i]
    const { needs, allCoversOn } = rules.exits[exit]
    if (!holds(situation, needs)) continue
    const worth = dot(work.belief, kernel.payoff[exit]) - (allCoversOn ? closing : 0)
    if (worth > most) {
      most = worth
      best = exit
    }
    if (needs.length === 0 && worth > mostFree) {
      mostFree = worth
      run.fallback = exit
    }
  }
  return best
}

/** Sets `gains` to what each repair leads towards the target from the belief, none of it made yet. */
const weighRepairs = (work: BaseWork, target: Target, belief: Float64Array): void => {
  const { firstGains } = work
  for (let j = 0; j < target.repairs.length; j++) firstGains[j] = gainOf(target, belief, j)
}

const gainOf = (target: Target, belief: Float64Array, place: number): number => {
  const { starts, from, credit } = target
  const end = starts[place + 1]
  let gain = 0
  for (let i = starts[place]; i < end; i++) gain += belief[from[i]] * credit[i]
  return gain
}

/**
 * The repair that leads furthest towards the target per cost, counting the proof after it; -1 when none leads there.
 * `gains` holds at least the gain of each repair, so only those that might still be best are weighed again.
 */
const nextRepair = (work: BaseWork, target: Target): number => {
  const { rules, situation, gains, indexes } = work
  const { repairs, perCost } = target
  const wanted = wantedSteps(target, situation)
  const closing = closingMin(rules, situation)
  for (let j = 0; j < repairs.length; j++) {
    indexes[j] = repairIsOpen(rules, situation, repairs[j]) ? gains[j] * perCost[j] : 0
  }
  let best = -1
  let most = 0
  // The likeliest first; few of the others can then still beat it.
  for (let turn = -1; turn < repairs.length; turn++) {
    const j = turn === -1 ? greatest(indexes, repairs.length) : turn
    if (!(indexes[j] > most)) continue
    gains[j] = gainOf(target, work.belief, j)
    const cost = roundCost(work, target, repairs[j], wanted | target.reproof[j], closing)
    const index = gains[j] / Math.max(cost, leastCostMinor)
    indexes[j] = 0
    if (index <= most) continue
    most = index
    best = repairs[j]
  }
  return best
}

const greatest = (values: Float64Array, count: number): number => {
  let at = 0
  for (let j = 1; j < count; j++) if (values[j] > values[at]) at = j
  return at
}

/** About what a repair and the proof after it cost. Only the order of repairs depends on it. */
const roundCost = (work: BaseWork, target: Target, repair: number, wanted: number, closing: number): number => {
  const { rules, situation } = work
  const rule = rules.repairs[repair]
  let minutes = rule.minutes
  let cost = rule.costMinor
  let closes = false
  for (let k = 0; k < target.steps.length; k++) {
    if ((wanted & (1 << k)) === 0) continue
    const check = rules.checks[target.steps[k].check]
    minutes += check.minutes
    cost += check.costMinor
    closes ||= check.allCoversOn
  }
  for (let i = 0; i < rule.opens.length; i++) {
    const cover = rule.opens[i]
    if (situation[cover] === 0) minutes += rules.openMin[cover] + (closes ? rules.closeMin[cover] : 0)
  }
  return cost + rules.minorPerMin * (closes ? minutes + closing : minutes)
}

/** Repairs with all that is in play; adds to `gains` what the suspects that come up may gain next. */
const repairNow = (work: BaseWork, target: Target, repair: number): void => {
  const { rules, situation, belief, gains } = work
  const { costMinor, success } = rules.repairs[repair]
  pay(work, makeRepair(rules, situation, repair), costMinor)
  const { from, to } = work.kernel.transitions[repair]
  const { waysAt, ways, wayCredit } = target
  for (let i = 0; i < from.length; i++) {
    const mended = success * belief[from[i]]
    belief[to[i]] += mended
    belief[from[i]] -= mended
    for (let k = waysAt[to[i]]; k < waysAt[to[i] + 1]; k++) gains[ways[k]] += mended * wayCredit[k]
  }
}

/**
 * Makes the checks the target's exit still wants. What passes the last one leaves by the exit, what fails an earlier one
 * leaves by the fallback, what fails the last one stays in play. False when a check cannot be made.
 */
const prove = (work: BaseWork, place: number): boolean => {
  const { rules, situation, run, kernel, belief } = work
  const target = work.targets[place]
  const wanted = wantedSteps(target, situation)
  if (wanted === 0) return true
  const round = roundFor(work, place, wanted)
  if (!canProve(work, target, round)) return false
  run.value += dot(belief, roundPayoff(kernel, round, target.exit, run.fallback))
  for (let i = 0; i < round.steps.length; i++) {
    const step = target.steps[round.steps[i]]
    pay(work, makeCheck(rules, situation, step.check), rules.checks[step.check].costMinor)
    if (round.again[i]) makeCheck(rules, situation, step.check)
    const last = i === round.steps.length - 1
    if (last) settle(work, round.passes, target.exit)
    else settle(work, round.fails[i], run.fallback)
    mark(situation, last ? step.failTakes : step.passTakes, 0)
    mark(situation, last ? step.failGives : step.passGives, 1)
  }
  run.mass = multiply(belief, belief, round.stays)
  return true
}

const roundFor = (work: BaseWork, place: number, wanted: number): ProofRound => {
  const again = repeatableSteps(work.rules, work.targets[place], work.situation) & wanted
  const key = again * stepSets + wanted
  const known = work.rounds[place].get(key)
  if (known !== undefined) return known
  const round = proofRoundOf(work.rules, work.kernel, work.targets[place], wanted, again)
  work.rounds[place].set(key, round)
  return round
}

/** Whether every step of the round can be made: not made already, and the marks it needs held or given by an earlier step. */
const canProve = (work: BaseWork, target: Target, round: ProofRound): boolean => {
  const { rules, trialSituation, situation } = work
  trialSituation.set(situation)
  for (let i = 0; i < round.steps.length; i++) {
    const step = target.steps[round.steps[i]]
    if (!checkIsOpen(rules, trialSituation, step.check)) return false
    mark(trialSituation, step.passTakes, 0)
    mark(trialSituation, step.passGives, 1)
  }
  return true
}

/** Books the cost of the part of the belief that leaves by an exit now; its payoff is booked by the round. */
const settle = (work: BaseWork, share: Float64Array, exit: number): void => {
  const { run, rules, belief } = work
  const closing = rules.exits[exit].allCoversOn ? closingMin(rules, work.situation) : 0
  const spent = run.costMinor + rules.minorPerMin * closing
  const mass = dot(belief, share)
  run.value -= mass * spent
}

const pay = (work: BaseWork, minutes: number, costMinor: number): void => {
  work.run.costMinor += costMinor + work.rules.minorPerMin * minutes
}
