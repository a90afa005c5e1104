import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { canReveal } from '../../../src/blueprint/sight.ts'
import { meterSpec } from '../../../src/facts/meters.ts'
import { faultShows, machineModel } from '../../../src/machine/index.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const meter = meterSpec('budget-multimeter')
const upright = blueprintById('bagged-upright-two-motors')!
const showsOf = (blueprint: typeof upright) => {
  const all = faultShows(machineModel(blueprint, blueprint.plate), meter)
  return (fault: string) => all.find((one) => one.fault === fault)!.checks
}

describe('which checks show a fault', () => {
  const tiny = showsOf(tinyBlueprint)
  it('are those whose reading the circuit changes, with what they then read', () => {
    const found = tiny('switch-open').map(({ check, text, soundText }) => [check, text, soundText])
    expect(found).toContainEqual(['pins-on', 'open', expect.stringMatching(/Ω$/)])
    expect(found.map(([check]) => check)).not.toContain('flex-line')
    expect(tiny('motor-leaks').map(({ check }) => check)).toContain('insulation')
  })
  it('make it as sure as Bayes’ rule says, one fault at a time', () => {
    // Four faults alike at first; three of them open the way from pin to pin, for sure, and the fourth leaves it closed.
    const model = machineModel(tinyBlueprint, tinyBlueprint.plate)
    const single = (index: number) => model.prior[model.sets.findIndex((set) => set.length === 1 && set[0] === index)]
    const expected = single(1) / (single(0) + single(1) + single(2))
    expect(tiny('switch-open').find(({ check }) => check === 'pins-on')!.sure).toBeCloseTo(expected, 1)
    expect(tiny('motor-worn').find(({ check }) => check === 'motor-winding')!.sure).toBeGreaterThan(0.95)
  })
  it('are never runs where the fault bars running', () => {
    for (const blueprint of [tinyBlueprint, upright]) {
      const shows = showsOf(blueprint)
      for (const { id } of blueprint.faults.filter(({ danger }) => danger !== undefined))
        for (const { check } of shows(id))
          expect(['meter', 'look']).toContain(blueprint.checks.find((one) => one.id === check)!.kind)
    }
  })
})

describe('on an upright', () => {
  const shows = showsOf(upright)
  const meterIds = upright.checks.filter(({ kind }) => kind === 'meter').map(({ id }) => id)
  it('a reading far off that moves the part is among them', () => {
    const fault = upright.faults.find(
      ({ comesAndGoes, part }) => comesAndGoes !== undefined && part === 'flex-plug-end',
    )!
    const [from, to] = ['red', 'black'] as const
    const far = upright.checks.filter(
      (check) =>
        check.kind === 'meter' &&
        check.moving.includes(fault.part) &&
        [check[from], check[to]].every((point) => point.startsWith('plug.')),
    )
    expect(far.length).toBeGreaterThan(0)
    for (const { id } of far)
      expect(shows(fault.id).find(({ check }) => check === id)!.text).toMatch(/^jumps when moved/)
  })
  it('each could reveal its fault by the paths of the circuit too, which are followed without a number', () => {
    for (const fault of upright.faults)
      for (const { check } of shows(fault.id))
        expect([
          fault.id,
          check,
          canReveal(
            upright,
            upright.checks.find(({ id }) => id === check)!,
            fault,
          ),
        ]).toEqual([fault.id, check, true])
  })
  it('a look that names the fault and nothing else makes it sure; the surest comes first', () => {
    expect(shows('plug-fuse-wrong')[0]).toMatchObject({ check: 'look-plug' })
    expect(shows('plug-fuse-wrong')[0].sure).toBeGreaterThan(0.95)
    for (const { id } of upright.faults) {
      const worth = shows(id).map(({ sure, comes }) => sure * comes)
      expect(worth).toEqual(worth.toSorted((a, b) => b - a))
    }
  })
  it('mechanical faults are not shown by the meter', () => {
    for (const { id } of upright.faults.filter(({ electrical }) => electrical.length === 0))
      expect(shows(id).filter(({ check }) => meterIds.includes(check))).toEqual([])
  })
})
