import type { PlanProblemInput } from '../../../src/engines/plan/index.ts'
import { truthFile } from '../../support/truth-case.ts'

/** The car that won't start as plan problems, worked out from the figures of its network. Source: student-car/origin.md. */

const components = ['battery', 'oil', 'tank', 'fuelLine', 'starter'] as const
type Component = (typeof components)[number]
/** What the network's leak stands for: it will not start, and none of the components is why. */
const unknown = 'unknown'
type Sign = 'lights' | 'oilLight' | 'dipstick'

type Network = Readonly<
  Record<
    | 'fanBelt'
    | 'alternator'
    | 'chargingLeak'
    | 'batteryOld'
    | 'deadIfOld'
    | 'deadIfNotOld'
    | 'noOil'
    | 'tankEmpty'
    | 'fuelLineBlocked'
    | 'starterBroken'
    | 'startLeak'
    | 'lightsOkIfFlat'
    | 'lightsOkIfNotFlat'
    | 'oilLightIfFlat'
    | 'oilLightIfNoOil'
    | 'oilLightIfOil'
    | 'dipstickOkIfNoOil'
    | 'dipstickOkIfOil',
    number
  >
>

type Run = {
  readonly faultsAtOnce: number
  readonly observe: Readonly<Partial<Record<Component, number>>>
  readonly signs: Readonly<Partial<Record<Sign, number>>>
  readonly repair: Readonly<Partial<Record<Component, number>>>
  /** What can be observed may be repaired only once it was seen to be faulty. */
  readonly repairAfterObservationOnly: boolean
}

type Input = { readonly network: Network; readonly service: number; readonly runs: Readonly<Record<string, Run>> }

const { network, service, runs } = truthFile<Input>('plan/student-car/input.json')

/** The chance that at least one of several independent things is so. */
const anyOf = (...chances: readonly number[]): number => 1 - chances.reduce((none, chance) => none * (1 - chance), 1)

const dead = network.batteryOld * network.deadIfOld + (1 - network.batteryOld) * network.deadIfNotOld

const prior: Readonly<Record<Component, number>> = {
  battery: anyOf(dead, network.alternator, network.fanBelt, network.chargingLeak),
  oil: network.noOil,
  tank: network.tankEmpty,
  fuelLine: network.fuelLineBlocked,
  starter: network.starterBroken,
}

/** The sets of faults, and with what weight each is there and the car does not start. The mended car has none. */
const weights = (faultsAtOnce: number): readonly (readonly [faults: readonly string[], weight: number])[] => {
  const sets = components.reduce<Component[][]>((all, part) => [...all, ...all.map((set) => [...set, part])], [[]])
  const chance = (set: readonly string[]): number =>
    components.reduce((product, part) => product * (set.includes(part) ? prior[part] : 1 - prior[part]), 1)
  const faulty = sets.filter((set) => set.length > 0 && set.length <= faultsAtOnce)
  return [[[], 0], [[unknown], network.startLeak * chance([])], ...faulty.map((set) => [set, chance(set)] as const)]
}

const signIsOn: Readonly<Record<Sign, (faults: readonly string[]) => number>> = {
  lights: (faults) => (faults.includes('battery') ? network.lightsOkIfFlat : network.lightsOkIfNotFlat),
  oilLight: (faults) => {
    if (faults.includes('battery')) return network.oilLightIfFlat
    return faults.includes('oil') ? network.oilLightIfNoOil : network.oilLightIfOil
  },
  dipstick: (faults) => (faults.includes('oil') ? network.dipstickOkIfNoOil : network.dipstickOkIfOil),
}

/**
 * One run of the source as a plan problem; expected cost is negative money. Trying to start costs nothing and shows the mended
 * car for certain. A repair always works; so does the service, which can be called at any time. Observations and signs are made
 * once: only trying to start is renewed by a repair.
 */
export const studentCar = (name: string): PlanProblemInput => {
  const run = runs[name]
  const all = weights(run.faultsAtOnce)
  const total = all.reduce((sum, [, weight]) => sum + weight, 0)
  const check = (
    id: string,
    costMinor: number,
    yes: string,
    no: string,
    chance: (faults: readonly string[]) => number,
  ) => ({
    id,
    minutes: 0,
    costMinor,
    renewedByRepair: false,
    outcomes: [
      { id: yes, gives: [`${id}-${yes}`] },
      { id: no, gives: [] },
    ],
    likelihood: all.map(([faults]) => [chance(faults), 1 - chance(faults)]),
  })
  const asksFirst = (part: string): boolean => run.repairAfterObservationOnly && part in run.observe
  return {
    format: 'thrum-plan-1',
    hourMinor: 0,
    faults: [unknown, ...components],
    suspects: all.map(([faults, weight]) => ({
      id: faults.join('+') || 'starts',
      faults: [...faults],
      probability: weight / total,
    })),
    checks: [
      { ...check('try', 0, 'starts', 'does-not', (faults) => (faults.length === 0 ? 1 : 0)), renewedByRepair: true },
      ...Object.entries(run.observe).map(([part, cost]) =>
        check(`observe-${part}`, cost, 'faulty', 'sound', (faults) => (faults.includes(part) ? 1 : 0)),
      ),
      ...Object.entries(run.signs).map(([sign, cost]) => check(sign, cost, 'on', 'off', signIsOn[sign as Sign])),
    ],
    repairs: Object.entries(run.repair).map(([part, costMinor]) => ({
      id: part,
      minutes: 0,
      costMinor,
      removes: [part],
      success: 1,
      needs: asksFirst(part) ? [`observe-${part}-faulty`] : [],
      takes: ['try-starts'],
    })),
    exits: [
      { id: 'drive', needs: ['try-starts'], payoffMinor: all.map(() => 0) },
      { id: 'service', payoffMinor: all.map(() => -service) },
    ],
  }
}
