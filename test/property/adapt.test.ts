import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { adaptBlueprint } from '../../src/blueprint/adapt.ts'
import type { Edit } from '../../src/blueprint/adapt-edits.ts'
import { soundBlueprint } from '../../src/bench/blueprints.ts'
import { lookAlikes } from '../../src/machine/index.ts'
import { checkBlueprint } from '../../src/blueprint/check.ts'
import { blueprints } from '../../src/blueprint/library.ts'
import type { Blueprint } from '../../src/blueprint/schema.ts'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'
import { times } from '../support/depth.ts'

const anyBlueprint = fc.constantFrom(...blueprints, tinyBlueprint)
const oneOf = <T>(items: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...items)
const idOf = (items: readonly { readonly id: string }[]): fc.Arbitrary<string> => oneOf(items.map(({ id }) => id))

/** An edit of this part. */
const partEdit = (blueprint: Blueprint, part: string): fc.Arbitrary<Edit> =>
  fc.oneof(
    fc.constant<Edit>({ kind: 'part-absent', part }),
    idOf(blueprint.covers).map((behind): Edit => ({ kind: 'part-moved', part, behind })),
    fc.constant<Edit>({ kind: 'part-moved', part, behind: null }),
    fc.constant<Edit>({ kind: 'renamed', what: 'part', id: part, name: 'Odd thing' }),
    fc.constant<Edit>({ kind: 'part-note', part, text: 'Glued in' }),
  )

describe('adapting any blueprint', () => {
  it('with no edit gives the same blueprint', () => {
    for (const blueprint of [...blueprints, tinyBlueprint]) {
      expect(adaptBlueprint(blueprint, [])).toEqual({ kind: 'ok', value: blueprint })
    }
  })

  it('without any one of its parts gives a valid blueprint or says why not and what to do', () => {
    const withoutOne = anyBlueprint.chain((blueprint) => fc.tuple(fc.constant(blueprint), idOf(blueprint.parts)))
    fc.assert(
      fc.property(withoutOne, ([blueprint, part]) => {
        const result = adaptBlueprint(blueprint, [{ kind: 'part-absent', part }])
        if (result.kind === 'refused') {
          expect(result.problems.length).toBeGreaterThan(0)
          for (const { what, mend } of result.problems) expect([what, mend]).not.toContain('')
          return
        }
        expect(checkBlueprint(result.value)).toEqual(result)
        expect(result.value.parts.map(({ id }) => id)).not.toContain(part)
        // Nothing of it is left under any name: not in the circuit, the faults, the repairs, the moves or the air path.
        const { circuit, faults, repairs, airPath, checks } = result.value
        expect([...circuit, ...faults, ...repairs].map((one) => one.part)).not.toContain(part)
        expect(airPath).not.toContain(part)
        expect(checks.flatMap((check) => (check.kind === 'meter' ? check.moving : []))).not.toContain(part)
      }),
      { numRuns: times(25) },
    )
  })

  it('without a part, and told to be sound, can be read by the engines', () => {
    const withoutOne = anyBlueprint.chain((blueprint) => fc.tuple(fc.constant(blueprint), idOf(blueprint.parts)))
    fc.assert(
      fc.property(withoutOne, ([blueprint, part]) => {
        const result = soundBlueprint(adaptBlueprint(blueprint, [{ kind: 'part-absent', part }]))
        if (result.kind === 'refused') return
        expect(() => lookAlikes(result.value)).not.toThrow()
      }),
      { numRuns: times(12) },
    )
  })

  it('says the same whichever of two edits of different parts is made first', () => {
    const twoEdits = anyBlueprint.chain((blueprint) =>
      fc
        .tuple(idOf(blueprint.parts), idOf(blueprint.parts))
        .filter(([a, b]) => a !== b)
        .chain(([a, b]) => fc.tuple(fc.constant(blueprint), partEdit(blueprint, a), partEdit(blueprint, b))),
    )
    fc.assert(
      fc.property(twoEdits, ([blueprint, one, other]) => {
        const forward = adaptBlueprint(blueprint, [one, other])
        const backward = adaptBlueprint(blueprint, [other, one])
        if (forward.kind === 'refused') expect(backward.kind).toBe('refused')
        else expect(backward).toEqual(forward)
      }),
      { numRuns: times(25) },
    )
  })
})
