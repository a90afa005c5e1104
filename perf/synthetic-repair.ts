import { seededRandom, type Random } from '../src/base/random.ts'
import { valueOf } from '../src/base/result.ts'
import { checkPlanProblem, type PlanProblem } from '../src/engines/plan/index.ts'
import { syntheticChecks } from './synthetic-checks.ts'
import { gateCount, type FaultKind, type SyntheticFault, type SyntheticMachine } from './synthetic-machine.ts'
import { syntheticExits, syntheticRepairs } from './synthetic-repairs.ts'

type SyntheticSize = { readonly parts: number; readonly seed: number }

const hourMinor = 800
/** Parts behind one cover; one cluster more stands in the open. */
const partsPerCover = 4
/** Chance that a cover is behind another one. */
const nestedShare = 0.6
const kinds: readonly FaultKind[] = ['open', 'poor', 'unsafe']
/** Shares of the kinds among faults, and how often each makes a machine that is said to be dead. */
const kindWeights = [0.5, 0.35, 0.15]
const deadIf: Readonly<Record<FaultKind, number>> = { open: 0.95, poor: 0.1, unsafe: 0.2 }
/** Faults that a machine of any size has on average, before the complaint. */
const faultsPerMachine = 0.5
/** A sound machine that is said to be dead, as odds beside those of its faults. */
const nothingOdds = 0.01
/** Pairs of faults told apart, by fault: about what a whole machine's problem has. */
const pairsPerFault = 0.4

/**
 * An invented repair problem of a given number of parts. Seeded: the same size gives the same problem.
 *
 * Each part has one to three faults, open, poor or unsafe, with odds that spread over more than tenfold; suspects are nothing, every
 * fault alone and the likeliest pairs, after a complaint of a dead machine. Parts are behind covers, four to one, and some
 * covers are behind others. Meter checks split chains of up to 25 parts by halves down to one part, with a few per cent of
 * noise; most parts can be looked at; a new part mends all its faults, and half of the faults have a cheaper mend that is
 * less sure. Four safety gates give marks that a run check needs, and that repairs take away; only a run lets it be sold as
 * working. Exits: working, spares, parts, scrap.
 */
export const syntheticRepair = (size: SyntheticSize): PlanProblem => {
  const random = seededRandom(size.seed)
  const faults = makeFaults(size.parts, random)
  const sets = suspectSets(faults)
  const covers = makeCovers(Math.ceil(size.parts / partsPerCover) - 1, random)
  const behind = Array.from({ length: size.parts }, (_, p) => Math.floor(p / partsPerCover) - 1)
  const machine: SyntheticMachine = { faults, sets, covers, behind }
  const odds = sets.map((set) => (set.length === 0 ? nothingOdds : set.reduce((product, f) => product * faults[f].odds, 1))) // prettier-ignore
  const total = odds.reduce((sum, x) => sum + x, 0)
  const checks = syntheticChecks(machine, random)
  return valueOf(
    checkPlanProblem({
      format: 'thrum-plan-1',
      hourMinor,
      faults: faults.map(({ id }) => id),
      suspects: sets.map((set, s) => ({
        id: `s${s}`,
        faults: set.map((f) => faults[f].id),
        probability: odds[s] / total,
      })),
      covers,
      checks: checks.map(({ check }) => check),
      repairs: syntheticRepairs(machine, checks, random),
      exits: syntheticExits(machine, random),
    }),
  )
}

const makeFaults = (parts: number, random: Random): readonly SyntheticFault[] => {
  const drawn = Array.from({ length: parts }, (_, part) =>
    Array.from({ length: 1 + Math.floor(3 * random.uniform()) }, (_unused, i) => {
      const kind = kinds[random.index(kindWeights)]
      const gate = Math.floor(gateCount * random.uniform())
      return { id: `part${part}-${kind}${i}`, part, kind, gate, rate: Math.exp(random.normal()) }
    }),
  ).flat()
  const total = drawn.reduce((sum, { rate }) => sum + rate, 0)
  return drawn.map(({ rate, ...fault }) => ({
    ...fault,
    odds: ((faultsPerMachine * rate) / total) * deadIf[fault.kind],
  }))
}

/** Nothing, every fault alone, and the likeliest pairs: closed under repair. */
const suspectSets = (faults: readonly SyntheticFault[]): readonly (readonly number[])[] => {
  const pairs = faults.flatMap((a, i) =>
    faults.slice(i + 1).map((b, j) => ({ set: [i, i + 1 + j], odds: a.odds * b.odds })),
  )
  const likeliest = pairs.sort((a, b) => b.odds - a.odds).slice(0, Math.round(pairsPerFault * faults.length))
  return [[], ...faults.map((_, f) => [f]), ...likeliest.map(({ set }) => set)]
}

const makeCovers = (count: number, random: Random): PlanProblem['covers'] =>
  Array.from({ length: count }, (_, i) => ({
    id: `cover${i}`,
    openMin: 0.5 + 7 * random.uniform(),
    closeMin: 0.5 + 8 * random.uniform(),
    after: i > 0 && random.uniform() < nestedShare ? [`cover${Math.floor(i * random.uniform())}`] : [],
  }))
