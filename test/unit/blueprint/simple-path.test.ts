import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { editDistance, nearest } from '../../../src/base/nearest.ts'
import { onSimplePath, type Edge } from '../../../src/blueprint/simple-path.ts'

/** The definition, by walking every path that passes no point twice. */
const byWalking = (edge: Edge, others: readonly Edge[], start: string, end: string): boolean => {
  const all = [edge, ...others]
  const walk = (at: string, been: readonly string[], over: boolean): boolean => {
    if (at === end) return over
    return all.some((step, i) => {
      const next = step[0] === at ? step[1] : step[1] === at ? step[0] : null
      return next !== null && !been.includes(next) && walk(next, [...been, next], over || i === 0)
    })
  }
  return walk(start, [start], false)
}

describe('onSimplePath', () => {
  const series: readonly Edge[] = [
    ['a', 'b'],
    ['b', 'c'],
    ['c', 'd'],
  ]

  it('sees what is in series and in parallel, not what hangs off one point', () => {
    expect(
      onSimplePath(
        ['b', 'c'],
        [
          ['a', 'b'],
          ['c', 'd'],
        ],
        'a',
        'd',
      ),
    ).toBe(true)
    expect(onSimplePath(['b', 'd'], series, 'a', 'd')).toBe(true)
    expect(onSimplePath(['b', 'x'], series, 'a', 'd')).toBe(false)
    expect(onSimplePath(['x', 'y'], series, 'a', 'd')).toBe(false)
  })

  it('agrees with walking every path, on random circuits of up to six points', () => {
    const point = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f')
    const edge = fc.tuple(point, point).filter(([one, other]) => one !== other)
    let seen = 0
    fc.assert(
      fc.property(edge, fc.array(edge, { maxLength: 9 }), edge, (one, others, [start, end]) => {
        const truth = byWalking(one, others, start, end)
        if (truth) seen++
        return onSimplePath(one, others, start, end) === truth
      }),
      { seed: 7, numRuns: 3000 },
    )
    expect(seen).toBeGreaterThan(300)
  })
})

describe('nearest', () => {
  // The textbook pair for Levenshtein's distance; from memory.
  it('counts letters put in, taken out or changed', () => {
    expect(editDistance('kitten', 'sitting')).toBe(3)
    expect(editDistance('', 'abc')).toBe(3)
    expect(editDistance('flaw', 'lawn')).toBe(2)
  })

  it('offers the closest name, or none when nothing is close', () => {
    expect(nearest('plug.lien', ['plug.line', 'plug.neutral'])).toBe('plug.line')
    expect(nearest('attic', ['plug.line', 'plug.neutral'])).toBeNull()
    expect(nearest('attic', [])).toBeNull()
  })
})
