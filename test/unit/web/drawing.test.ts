import { describe, expect, it } from 'vitest'
import {
  crosses,
  isLevel,
  lengthOf,
  liesOn,
  runsOf,
  samePlace,
  sharedLength,
  type Place,
} from '../../../src/machine/drawing/grid.ts'
import { placeNumbers } from '../../../src/machine/drawing/labels.ts'
import { clusters, halves, layOut, usualGap } from '../../../src/machine/drawing/layout.ts'
import { sidesOf } from '../../../src/machine/drawing/potential.ts'
import { routeAll } from '../../../src/machine/drawing/route.ts'
import { fit } from '../../../src/machine/drawing/scale.ts'
import { tintStrength } from '../../../src/web/drawing/tint.ts'
import { smallBlueprint } from './blueprint.ts'

const place = (x: number, y: number): Place => ({ x, y })
const ends = (id: string, from: Place, to: Place, hasSymbol = false) => ({ id, from, to, hasSymbol })

describe('grid', () => {
  it('knows what lies on a run, its ends included', () => {
    const run = { a: place(0, 0), b: place(4, 0) }
    expect([place(0, 0), place(2, 0), place(4, 0)].every((one) => liesOn(one, run))).toBe(true)
    expect([place(5, 0), place(2, 1)].some((one) => liesOn(one, run))).toBe(false)
  })
  it('measures what two runs share, in either direction', () => {
    expect(sharedLength({ a: place(0, 0), b: place(4, 0) }, { a: place(6, 0), b: place(3, 0) })).toBe(1)
    expect(sharedLength({ a: place(0, 0), b: place(4, 0) }, { a: place(0, 1), b: place(4, 1) })).toBe(0)
  })
  it('tells a crossing from a joint', () => {
    const level = { a: place(0, 2), b: place(4, 2) }
    expect(crosses(level, { a: place(2, 0), b: place(2, 4) })).toBe(true)
    expect(crosses(level, { a: place(2, 2), b: place(2, 4) })).toBe(false)
  })
})

describe('routeAll', () => {
  const wayOf = (routed: ReturnType<typeof routeAll>, id: string): readonly Place[] =>
    routed.find((one) => one.id === id)?.way ?? []

  it('goes straight where nothing is in the way', () =>
    expect(wayOf(routeAll([ends('w', place(0, 0), place(4, 0))], [place(0, 0), place(4, 0)], 1), 'w')).toEqual([
      place(0, 0),
      place(4, 0),
    ]))

  it('goes round a point that it does not belong to', () => {
    const way = wayOf(routeAll([ends('w', place(0, 0), place(4, 0))], [place(0, 0), place(2, 0), place(4, 0)], 1), 'w')
    expect(runsOf(way).some((run) => liesOn(place(2, 0), run))).toBe(false)
    expect(samePlace(way.at(-1) ?? place(-1, -1), place(4, 0))).toBe(true)
  })

  it('keeps two between the same points apart', () => {
    const two = routeAll(
      [ends('a', place(0, 0), place(0, 6), true), ends('b', place(0, 0), place(0, 6), true)],
      [place(0, 0), place(0, 6)],
      1,
    )
    const shared = runsOf(wayOf(two, 'a')).flatMap((run) =>
      runsOf(wayOf(two, 'b')).map((other) => sharedLength(run, other)),
    )
    expect(Math.max(...shared)).toBe(0)
  })
})

describe('layOut', () => {
  const layout = layOut(smallBlueprint)

  it('joins each element to its two points by level and upright runs only', () => {
    for (const { element, way } of layout.elements) {
      const at = (id: string): Place => {
        const [x, y] = smallBlueprint.points.find((point) => point.id === id)?.at ?? [NaN, NaN]
        return place(x, y)
      }
      expect(way[0]).toEqual(at(element.from))
      expect(way.at(-1)).toEqual(at(element.to))
      expect(runsOf(way).every((run) => isLevel(run) || run.a.x === run.b.x)).toBe(true)
    }
    expect(layout.elements).toHaveLength(smallBlueprint.circuit.length)
  })

  it('cuts a way into halves that together are as long as the whole', () => {
    const total = (way: readonly Place[]): number => runsOf(way).reduce((sum, run) => sum + lengthOf(run), 0)
    for (const drawn of layout.elements) {
      const [first, second] = halves(drawn)
      expect(total(first) + total(second)).toBeCloseTo(total(drawn.way), 9)
      expect(first.at(-1)).toEqual(second[0])
    }
  })

  it('outlines each cover round the points behind it', () => {
    expect(layout.covers.map(({ cover }) => cover)).toEqual(['shell', 'motor-cover'])
    expect(layout.covers[1]).toMatchObject({ low: place(4, 4), high: place(4, 4) })
  })

  it('numbers parts, not elements', () => {
    const numbers = layout.elements.filter(({ element }) => element.part === 'flex').map(({ number }) => number)
    expect(new Set(numbers).size).toBe(1)
    expect(layout.parts[(numbers[0] ?? 0) - 1]).toBe('flex')
  })
})

describe('clusters', () => {
  it('joins through neighbours and parts what is far', () => {
    const groups = clusters([place(0, 0), place(9, 0), place(2, 0), place(4, 0)], 2)
    expect(groups.map((group) => group.length).sort()).toEqual([1, 3])
  })
})

describe('fit', () => {
  const layout = layOut(smallBlueprint)
  const gap = usualGap(smallBlueprint.points.map(({ at: [x, y] }) => place(x, y)))

  it('keeps every point inside', () => {
    const scale = fit(layout, 328, gap)
    for (const { way } of layout.elements) {
      for (const { x, y } of way.map(scale.at)) {
        expect(x).toBeGreaterThanOrEqual(0)
        expect(x).toBeLessThanOrEqual(scale.width)
        expect(y).toBeGreaterThanOrEqual(0)
        expect(y).toBeLessThanOrEqual(scale.height)
      }
    }
  })

  it('puts no two part numbers on one another', () => {
    const scale = fit(layout, 328, gap)
    const numbers = placeNumbers(layout, scale)
    const clash = numbers.filter((one) =>
      numbers.some(
        (other) => other !== one && Math.abs(one.at.x - other.at.x) < 5 && Math.abs(one.at.y - other.at.y) < 9,
      ),
    )
    expect(clash).toEqual([])
    expect(numbers).toHaveLength(layout.elements.filter(({ element }) => element.kind !== 'stray').length)
  })
})

describe('sidesOf', () => {
  // IEC 60445: line conductors brown, the neutral conductor blue (from memory); a load lies between the two.
  it('follows line and neutral up to the load', () => {
    const sides = sidesOf(smallBlueprint)
    expect(['pin.line', 'fuse.out', 'switch.out'].map((id) => sides.get(id))).toEqual(['line', 'line', 'line'])
    expect(['pin.neutral', 'motor.b'].map((id) => sides.get(id))).toEqual(['neutral', 'neutral'])
  })
})

describe('tintStrength', () => {
  it('shades the likelier part more, and an unsuspected one not at all', () => {
    const tints = { motor: 0.6, switch: 0.3, flex: 0.001 }
    expect(tintStrength(tints, 'motor')).toBe(1)
    expect(tintStrength(tints, 'switch')).toBeCloseTo(0.5, 9)
    expect(tintStrength(tints, 'flex')).toBe(0)
    expect(tintStrength(tints, 'unknown')).toBe(0)
  })
  it('does not shade fully a leader that is hardly suspected', () =>
    expect(tintStrength({ motor: 0.05 }, 'motor')).toBeLessThan(0.5))
})
