import { beforeAll, describe, expect, it } from 'vitest'
import { mixSeed } from '../../src/base/mix-seed.ts'
import { seededRandom } from '../../src/base/random.ts'
import { valueOf } from '../../src/base/result.ts'
import { blueprints } from '../../src/blueprint/library.ts'
import { explainAir } from '../../src/engines/airflow/index.ts'
import { suspectsInAir, weightsOf } from '../../src/machine/air/air-evidence.ts'
import { airExplanations } from '../../src/machine/air/air-explanations.ts'
import { airFitOf } from '../../src/machine/air/air-fit.ts'
import { airMachineOf } from '../../src/machine/air/air-machine.ts'
import { hiddenFigures, readFrom } from '../../src/machine/air/virtual-gauge.ts'
import { complaintPrior } from '../../src/machine/suspects.ts'
import { machineModel } from '../../src/machine/model.ts'
import { hole, sealed, suctionAt } from '../support/gauge.ts'

const seed = 20261125
const machines = 60

/**
 * Machines drawn from the priors of the complaint “weak suction”, read with six plates at two ways in. Stated probabilities must come true as often as they say:
 * that is what a probability is, whatever the model. Standard errors by the binomial law.
 */
describe.each(['bagged-cylinder', 'bagless-upright'])('air of virtual machines: %s', (id) => {
  const blueprint = blueprints.find((one) => one.id === id)!
  const machine = valueOf(airMachineOf(blueprint, blueprint.plate))
  const model = machineModel(blueprint, blueprint.plate)
  const roles = suspectsInAir(model, machine)
  const raw = complaintPrior(model, ['weak-suction'])
  const total = raw.reduce((sum, p, s) => sum + p * runs(s), 0)
  function runs(s: number): number {
    return roles[s].reduce((sum, { chance }) => sum + chance, 0)
  }
  const prior = raw.map((p, s) => (p * runs(s)) / total)
  const weights = weightsOf(roles, raw)
  const explanations = airExplanations(machine, true)

  /** Which explanation the hidden figures are of, drawn as the virtual gauge draws them. */
  const truthOf = (suspect: number, own: number): string => {
    const shown = model.sets[suspect].flatMap((f) => {
      const { id: fault, air } = blueprint.faults[f]
      const shows = air !== undefined && seededRandom(mixSeed(own, `shows ${fault}`)).uniform() < air.share
      return shows ? [explanations.find(({ faults }) => faults.includes(fault))!.id] : []
    })
    const [first, ...others] = new Set(shown)
    return first === undefined ? 'sound' : others.length > 0 ? 'several' : first
  }

  const setUps = [
    suctionAt(sealed, 1),
    suctionAt(hole(13), 1),
    suctionAt(hole(19), 1),
    suctionAt(hole(30), 1),
    suctionAt(sealed, 1, { way: 'inlet' }),
    suctionAt(hole(19), 1, { way: 'inlet' }),
  ].map(({ read: _read, ...setUp }) => setUp)

  let cases: readonly ReturnType<typeof caseOf>[] = []
  beforeAll(() => {
    cases = Array.from({ length: machines }, (_, n) => caseOf(n))
  })

  const caseOf = (n: number) => {
    const own = mixSeed(seed, `${id} ${n}`)
    const random = seededRandom(own)
    const suspect = random.index(Float64Array.from(prior))
    const figures = hiddenFigures(machine, model, suspect, own)
    const readings = setUps.flatMap((setUp, i) => {
      const reading = readFrom(machine, figures, setUp, random)
      return reading === null ? [] : [{ note: `g${i}`, reading }]
    })
    const answer = explainAir(airFitOf(machine, blueprint.plate.voltageV, readings, weights))
    const of = (wanted: string): number => answer.explanations.find((one) => one.id === wanted)?.probability ?? 0
    return { truth: truthOf(suspect, own), leading: answer.explanations[0], of }
  }

  it('the leading explanation is right as often as it says', () => {
    const said = cases.reduce((sum, { leading }) => sum + leading.probability, 0) / machines
    const right = cases.filter(({ truth, leading }) => truth === leading.id).length / machines
    const error = Math.sqrt(cases.reduce((sum, { leading: { probability: p } }) => sum + p * (1 - p), 0)) / machines
    expect(Math.abs(right - said)).toBeLessThan(3 * error)
  })

  it('the readings tell more of the truth than the complaint alone', () => {
    const sum = Object.values(weights).reduce((all, one) => all + one, 0)
    const score = (p: number): number => Math.log(Math.max(p, 1e-6))
    const gains = cases.map(({ truth, of }) => score(of(truth)) - score((weights[truth] ?? 0) / sum))
    const mean = gains.reduce((all, one) => all + one, 0) / machines
    const spread = Math.sqrt(gains.reduce((all, one) => all + (one - mean) ** 2, 0) / (machines - 1) / machines)
    expect(mean).toBeGreaterThan(3 * spread)
  })
})
