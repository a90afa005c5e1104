import type { Random } from '../src/base/random.ts'
import type { PlanProblemInput } from '../src/engines/plan/index.ts'
import { coversOf, gateMarks, workingMark, type SeeingCheck } from './synthetic-checks.ts'
import type { SyntheticMachine } from './synthetic-machine.ts'

type Repair = NonNullable<PlanProblemInput['repairs']>[number]
type Exit = PlanProblemInput['exits'][number]

const mendedShare = 0.5
const breakCostMinor = 1500

/** A new part for each part, and for half of the faults a mend of that fault alone. It renews the checks that see its part. */
export const syntheticRepairs = (
  machine: SyntheticMachine,
  checks: readonly SeeingCheck[],
  random: Random,
): readonly Repair[] => {
  const common = (part: number) => ({
    coversOff: coversOf(machine, [part]),
    takes: [workingMark, ...gateMarks],
    renews: checks.filter(({ from, to }) => from <= part && part < to).map(({ check }) => check.id),
    breakCostMinor,
  })
  const newParts = machine.behind.map((_, part) => ({
    ...common(part),
    id: `new part ${part}`,
    minutes: 5 + 25 * random.uniform(),
    costMinor: Math.round(30 * Math.exp(4.5 * random.uniform())),
    removes: machine.faults.filter((fault) => fault.part === part).map(({ id }) => id),
    success: 0.97,
    breakRisk: 0.01,
  }))
  const mends = machine.faults
    .filter(() => random.uniform() < mendedShare)
    .map(({ id, part }) => ({
      ...common(part),
      id: `mend ${id}`,
      minutes: 5 + 20 * random.uniform(),
      costMinor: Math.round(150 * random.uniform()),
      removes: [id],
      success: 0.75 + 0.2 * random.uniform(),
      breakRisk: 0.04,
    }))
  return [...newParts, ...mends]
}

/**
 * Exits with payoffs in pence of the size that src/machine/payoff.ts gives for machines worth mending: some £55 to £80 working,
 * a loss when it comes back with a fault left in it, £15 for spares, £15 to £30 in parts, less what is faulty.
 */
export const syntheticExits = (machine: SyntheticMachine, random: Random): readonly Exit[] => {
  const working = Math.round(5500 + 2500 * random.uniform())
  const parts = Math.round(1500 + 1500 * random.uniform())
  const partWorth = machine.behind.map(() => Math.round(600 * random.uniform() ** 3))
  const lost = (set: readonly number[]): number =>
    [...new Set(set.map((f) => machine.faults[f].part))].reduce((sum, part) => sum + partWorth[part], 0)
  const { sets } = machine
  return [
    { id: 'working', payoffMinor: sets.map((set) => (set.length === 0 ? working : -1250)), needs: [workingMark] },
    { id: 'spares', payoffMinor: sets.map(() => 1480) },
    { id: 'parts', payoffMinor: sets.map((set) => parts - lost(set)), allCoversOn: false },
    { id: 'scrap', payoffMinor: sets.map(() => -130), allCoversOn: false },
  ]
}
