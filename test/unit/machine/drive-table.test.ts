import { describe, expect, it } from 'vitest'
import type { Blueprint, GradedCheck } from '../../../src/blueprint/schema.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { solveAc, type NetworkElement } from '../../../src/engines/network/index.ts'
import { runningElement, type SetUp } from '../../../src/machine/circuit.ts'
import { driveTable } from '../../../src/machine/drive-table.ts'

/** The same question put to the AC solver with phasors: motors that get 60 % of their working current, and a trip at eight times the whole. */
const byPhasors = (blueprint: Blueprint, setUp: SetUp, fault: number | null) => {
  const { plate } = blueprint
  const currents = (faults: readonly number[]) => {
    const effects = new Map(
      faults.flatMap((f) => blueprint.faults[f].electrical.map((e) => [e.element, e.becomes] as const)),
    )
    const elements = blueprint.circuit.flatMap((element): NetworkElement[] => {
      const running = runningElement(element, setUp, blueprint, plate, effects.get(element.id) ?? null)
      return running === null ? [] : [running]
    })
    const source = {
      kind: 'voltage-source',
      id: 'mains',
      from: blueprint.supply.line,
      to: blueprint.supply.neutral,
      voltageV: plate.voltageV,
      phaseRad: 0,
    } as const
    const solved = solveAc({ format: 'thrum-network-1', elements: [source, ...elements] }, plate.frequencyHz)
    return solved.kind === 'solved'
      ? (id: string) => Math.hypot(solved.current[id]?.re ?? 0, solved.current[id]?.im ?? 0)
      : null
  }
  const work = currents([])!
  const now = currents(fault === null ? [] : [fault])
  if (now === null || now('mains') > (8 * plate.powerW) / plate.voltageV) return { driven: [], trips: true }
  const motors = blueprint.circuit.filter((element) => element.kind === 'motor' && work(element.id) > 1e-9)
  return { driven: motors.map(({ id }) => id).filter((id) => now(id) >= 0.6 * work(id)), trips: false }
}

describe.each(blueprints.map((blueprint) => [blueprint.id, blueprint] as const))(
  'what the mains would do in %s',
  (_id, blueprint) => {
    const states = [[], ...blueprint.faults.map((_, f) => [f])]
    const drive = driveTable(blueprint, blueprint.plate, states)
    const runs = blueprint.checks.filter(
      (check): check is GradedCheck => check.kind !== 'meter' && check.driven !== undefined,
    )

    it('adding impedances by size decides as adding them by phasors does, for every single fault and every run check', () => {
      let deadOnes = 0
      // Checks with the same controls ask the same question.
      const settings = new Map(runs.map((check) => [JSON.stringify(check.controls), check]))
      for (const check of settings.values()) {
        states.forEach((state, s) => {
          const { driven, trips } = drive(check.controls, s)
          const phasors = byPhasors(blueprint, { controls: check.controls, unplug: [] }, state[0] ?? null)
          expect({
            at: `${check.id} ${blueprint.faults[state[0] ?? -1]?.id ?? 'sound'}`,
            driven: [...driven],
            trips,
          }).toEqual({
            at: `${check.id} ${blueprint.faults[state[0] ?? -1]?.id ?? 'sound'}`,
            ...phasors,
          })
          if (driven.size === 0) deadOnes++
        })
      }
      expect(deadOnes).toBeGreaterThan(settings.size)
    })

    it('a sound machine drives what each run check needs', () => {
      for (const check of runs) expect([...drive(check.controls, 0).driven]).toContain(check.driven!.element)
    })
  },
)
