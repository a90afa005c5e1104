import type { Blueprint, Fault, Repair } from '../../blueprint/schema.ts'
import { openingOrder } from '../../engines/plan/index.ts'
import type { Job } from '../job.ts'
import type { MachineModel } from '../model.ts'
import type { JobPlan } from '../planning/plan-problem.ts'
import type { BuyingFaultView } from './buying-view.ts'

const shownFaults = 3

/** The likeliest faults with what each would mean. `moneyMinor`: what the plan brings by suspect; `paidMinor`: price and travel. */
export const likelyFaults = (
  model: MachineModel,
  job: Job,
  { kept }: JobPlan,
  probability: ArrayLike<number>,
  moneyMinor: Float64Array,
  paidMinor: number,
): readonly BuyingFaultView[] => {
  const { faults } = model.blueprint
  const chances = new Float64Array(faults.length)
  model.sets.forEach((set, s) => set.forEach((f) => (chances[f] += probability[s])))
  const alone = (f: number): number => kept.findIndex((s) => model.sets[s].length === 1 && model.sets[s][0] === f)
  return [...faults.keys()]
    .toSorted((a, b) => chances[b] - chances[a] || a - b)
    .slice(0, shownFaults)
    .map((f) => ({
      id: faults[f].id,
      name: faults[f].name,
      probability: chances[f],
      mend: mendOf(model.blueprint, faults[f], job.hourMinor),
      profitMinor: moneyMinor[alone(f)] - paidMinor,
    }))
}

/** The way of repair that costs least in parts and time for each time that it works. */
const mendOf = (blueprint: Blueprint, fault: Fault, hourMinor: number): BuyingFaultView['mend'] => {
  const ways = blueprint.repairs
    .filter(({ removes }) => removes.includes(fault.id))
    .flatMap((repair) => repair.options.map((option) => wayOf(blueprint, repair, option)))
    .map((way) => ({ way, each: (way.costMinor + (way.minutes * hourMinor) / 60) / Math.max(way.success, 0.01) }))
    .toSorted((a, b) => a.each - b.each)
  return ways.at(0)?.way ?? null
}

const wayOf = (
  blueprint: Blueprint,
  repair: Repair,
  { name, minutes, costMinor, success }: Repair['options'][number],
): NonNullable<BuyingFaultView['mend']> => {
  const behind = blueprint.parts.find(({ id }) => id === repair.part)?.behind
  const wanted = [...repair.coversOff, ...(behind === undefined ? [] : [behind])]
  const off = openingOrder(blueprint.covers, wanted)
  const coverMin = blueprint.covers
    .filter(({ id }) => off.includes(id))
    .reduce((sum, { openMin, closeMin }) => sum + openMin + closeMin, 0)
  return {
    name: repair.name,
    optionName: name,
    costMinor: Math.round((costMinor.low + costMinor.high) / 2),
    minutes: minutes + coverMin,
    success,
  }
}
