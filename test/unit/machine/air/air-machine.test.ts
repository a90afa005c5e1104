import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../../src/base/result.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { checkAirFit } from '../../../../src/engines/airflow/index.ts'
import { airExplanations, severalId, soundId } from '../../../../src/machine/air/air-explanations.ts'
import { suspectsInAir } from '../../../../src/machine/air/air-evidence.ts'
import { airFitOf, removedBy, tapsOf, wayOf } from '../../../../src/machine/air/air-fit.ts'
import { airMachineOf } from '../../../../src/machine/air/air-machine.ts'
import { solveSetUp } from '../../../../src/machine/air/air-network.ts'
import { machineModel } from '../../../../src/machine/model.ts'
import { hole, sealed } from '../../../support/gauge.ts'
import { tinyBlueprint } from '../../../support/tiny-blueprint.ts'

const blueprintOf = (id: string) => blueprints.find((one) => one.id === id)!
const machineOf = (id: string) => valueOf(airMachineOf(blueprintOf(id), blueprintOf(id).plate))
const suctionPa = (id: string, way: string, opening = sealed, figures = {}): number => {
  const machine = machineOf(id)
  const answer = solveSetUp(machine, { way, opening, out: [] }, figures)
  return answer.kind === 'solved' ? -answer.pressurePa[wayOf(machine, way).node] : NaN
}

describe('the air of each blueprint', () => {
  it.each(blueprints)('$id: every way in leads through the fan to the room', (blueprint) => {
    const machine = valueOf(airMachineOf(blueprint, blueprint.plate))
    expect(machine.paths.ways.length).toBeGreaterThan(0)
    for (const { way } of machine.paths.ways) {
      const sealedPa = suctionPa(blueprint.id, way.id)
      // A sound machine without a leak gives at every way in what its fan gives sealed: no flow, no loss.
      expect(sealedPa).toBeGreaterThan(0.95 * machine.kind.class.sealedPa[0] * 0.6)
      expect(sealedPa).toBeLessThan(machine.kind.class.sealedPa[1])
      const openPa = suctionPa(blueprint.id, way.id, hole(30))
      expect(openPa).toBeGreaterThan(0)
      expect(openPa).toBeLessThan(sealedPa)
    }
  })

  it.each(blueprints)('$id: each fault that does something to the air stands behind one explanation', (blueprint) => {
    const machine = valueOf(airMachineOf(blueprint, blueprint.plate))
    const named = airExplanations(machine, false).flatMap(({ faults }) => faults)
    expect(named.toSorted()).toEqual(
      blueprint.faults.flatMap(({ id, air }) => (air === undefined ? [] : [id])).toSorted(),
    )
    expect(named.length).toBeGreaterThan(5)
  })

  it.each(blueprints)('$id: makes a fit that the airflow engine takes', (blueprint) => {
    const machine = valueOf(airMachineOf(blueprint, blueprint.plate))
    const fit = airFitOf(machine, blueprint.plate.voltageV, [], { [soundId]: 1 })
    expect(checkAirFit(JSON.parse(JSON.stringify(fit))).kind).toBe('ok')
  })

  it.each(blueprints)('$id: what a suspect shows adds up to its chance to run', (blueprint) => {
    const model = machineModel(blueprint, blueprint.plate)
    const roles = suspectsInAir(model, valueOf(airMachineOf(blueprint, blueprint.plate)))
    expect(roles[0]).toEqual([{ explanation: soundId, chance: expect.closeTo(1, 1) as number }])
    for (const looks of roles) {
      const total = looks.reduce((sum, { chance }) => sum + chance, 0)
      expect(total).toBeLessThan(1 + 1e-9)
    }
    const two = model.sets.findIndex(
      (set) =>
        set.length === 2 && set.every((f) => blueprint.faults[f].air?.does === 'blocks') && differs(blueprint, set),
    )
    if (two >= 0) expect(roles[two].map(({ explanation }) => explanation)).toEqual([severalId])
  })

  const differs = (blueprint: (typeof blueprints)[number], [a, b]: readonly number[]): boolean => {
    const [one, other] = [blueprint.faults[a].air, blueprint.faults[b].air]
    return one?.does === 'blocks' && other?.does === 'blocks' && one.part !== other.part
  }
})

describe('a bagged cylinder', () => {
  const machine = machineOf('bagged-cylinder')

  it('loses less at the inlet than at the end of its hose', () => {
    expect(suctionPa('bagged-cylinder', 'inlet', hole(26))).toBeGreaterThan(
      suctionPa('bagged-cylinder', 'hose-end', hole(26)),
    )
  })

  it('has no leak of the hose where the hose is off', () => {
    const [byHose, atInlet] = ['hose-end', 'inlet'].map((id) => removedBy(machine, wayOf(machine, id), []))
    expect(byHose).not.toContain('leak after hose')
    expect(atInlet).toEqual(expect.arrayContaining(['hose', 'leak after hose', 'open before hose']))
    expect(atInlet).not.toContain('leak before pre-motor-filter')
  })

  it('can be tapped before each part up to the fan, but for the first, where the rig is', () => {
    expect(tapsOf(wayOf(machine, 'hose-end'), machine.paths).map(({ part }) => part)).toEqual([
      'bag',
      'pre-motor-filter',
      'motor-fan',
    ])
  })

  it('draws through an empty frame when its bag is left out', () => {
    const at = (out: readonly string[]): number => {
      const answer = solveSetUp(machine, { way: 'inlet', opening: hole(30), out: [...out] }, { bag: 20 })
      return answer.kind === 'solved' ? answer.airflowM3PerS['opening'] : NaN
    }
    expect(at(['bag'])).toBeGreaterThan(at([]))
  })

  it('says that a blueprint without an air path has none', () => {
    expect(airMachineOf(tinyBlueprint, tinyBlueprint.plate)).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'no-air-ways', what: 'This blueprint does not say where a gauge rig can be fitted' }],
    })
  })
})

describe('an upright with a flap', () => {
  const machine = machineOf('bagless-upright')

  it('sends the air by the hose or by the neck, never by both', () => {
    expect(wayOf(machine, 'hose-end').parts).not.toContain('duct')
    expect(wayOf(machine, 'neck').parts).not.toContain('hose')
    expect(removedBy(machine, wayOf(machine, 'neck'), [])).toContain('hose')
    expect(removedBy(machine, wayOf(machine, 'hose-end'), [])).toEqual(expect.arrayContaining(['lower-hose', 'duct']))
  })

  it('leaks at a stuck flap whichever way the air goes', () => {
    for (const way of ['hose-end', 'neck', 'inlet']) {
      expect(removedBy(machine, wayOf(machine, way), [])).not.toContain('open after changeover-flap')
    }
  })
})
