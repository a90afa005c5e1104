import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkAir } from '../../../src/blueprint/check-air.ts'
import { adaptBlueprint } from '../../../src/blueprint/adapt.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { airMachineOf } from '../../../src/machine/index.ts'

const cylinder = blueprints.find(({ id }) => id === 'bagged-cylinder')!
const wrong = (over: Partial<Blueprint>): readonly string[] => checkAir({ ...cylinder, ...over }).map(problemText)
const withPart = (id: string, air: Blueprint['parts'][number]['air']): Pick<Blueprint, 'parts'> => ({
  parts: cylinder.parts.map((part) => (part.id === id ? { ...part, air } : part)),
})

describe('the air of a blueprint', () => {
  it.each(blueprints)('$id has no mistake in it', (blueprint) => {
    expect(checkAir(blueprint)).toEqual([])
  })

  it('names what is not on the path, with what is', () => {
    const [way] = cylinder.airWays
    expect(wrong({ airWays: [{ ...way, from: 'handle' }] })).toEqual([
      'airWays.hose-end: “handle” is not a part of the air path. Use one of floor-head, wand, hose-grip, hose, bag, pre-motor-filter, motor-seal, motor-fan, exhaust-filter, or add it to airPath.',
    ])
  })

  it('wants a loss where something blocks, one fan, and ways that begin before it', () => {
    expect(wrong(withPart('bag', undefined))[0]).toMatch(
      /^faults\.bag-full\.air: “bag” has no loss that it could add to/,
    )
    expect(wrong(withPart('motor-fan', undefined))).toEqual([
      'airPath: No part of the air path is the fan. Give just one part of the air path an “air” of the kind fan.',
    ])
    expect(wrong(withPart('motor-seal', { kind: 'fan' }))[0]).toMatch(/The air path has 2 fans/)
    const [way] = cylinder.airWays
    expect(wrong({ airWays: [{ ...way, from: 'exhaust-filter' }] })[0]).toMatch(
      /begins at “exhaust-filter”, after the fan/,
    )
  })

  it('goes without the parts of a machine that has none of them', () => {
    const adapted = adaptBlueprint(cylinder, [{ kind: 'part-absent', part: 'hose' }])
    if (adapted.kind === 'refused') throw new Error(adapted.problems.map(problemText).join(' '))
    const blueprint = adapted.value
    expect(blueprint.airWays.map(({ id }) => id)).toEqual(['inlet'])
    expect(checkAir(blueprint)).toEqual([])
    expect(airMachineOf(blueprint, blueprint.plate).kind).toBe('ok')
  })
})
